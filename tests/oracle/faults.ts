/** Short circuits at both ends of a run, how soon its fuse opens, how long its wire bears it, and its everyday heat. */
import { conductorTempC } from '../../src/core/conductor-temp';
import { faultAmps } from '../../src/core/fault';
import { estimatedOpeningSeconds, fuseSeconds, leastOpeningAmps } from '../../src/core/fuse-time';
import { atMost } from '../../src/core/limits';
import { isRefusal } from '../../src/core/outcome';
import type { ConductorSize } from '../../src/core/size';
import { MATERIAL_CONSTANTS } from '../../src/core/tables/materials';
import { withstandSeconds } from '../../src/core/withstand';
import type { BatteryFigures } from './battery';
import { figure, NO_ANSWER, type Figure } from './figures';
import type { Protector } from './fuses';
import type { House } from './house';
import { isOnBattery, pathOf, rootOf, type Run } from './runs';
import type { Wire } from './wires';

/** At one end; what does not apply is left out. */
export interface End {
  readonly faultA: Figure;
  readonly opensS?: Figure;
  /** The least that it takes by a maker's I2t, where no times are published. */
  readonly leastS?: number;
  readonly bearsS?: Figure;
}

export interface Faults {
  readonly near: End;
  readonly far: End;
  readonly isWeak: boolean;
  readonly isSlowFar: boolean;
  readonly isSlowNear: boolean;
}

/** Ohms of runs in a row, the wire so many times as great as at its usual temperature. */
function seriesOhms(path: readonly Run[], wires: readonly Wire[], warm: number): Figure {
  let sum = 0;
  for (const { row, jointMilliohms } of path) {
    const { wireOhms } = wires[row]!;
    if (wireOhms === NO_ANSWER) return NO_ANSWER;
    sum += wireOhms * warm + jointMilliohms / 1000;
  }
  return sum;
}

/** A fuse that opens so soon has no time to lose heat. */
const SOON_S = 0.1;

/** A maker's I2t counts beyond the last published point, or by itself where the fuse opens soon. */
function opensWithin({ isBlade, ratingA, makersI2t }: Protector, faultA: number): Figure {
  if (isBlade) return figure(fuseSeconds(ratingA, faultA, makersI2t));
  if (makersI2t === undefined) return NO_ANSWER;
  const seconds = estimatedOpeningSeconds(makersI2t, faultA);
  return seconds <= SOON_S ? seconds : NO_ANSWER;
}

/** The fuse may take longer than the wire bears. */
function isTooSlow({ opensS, leastS, bearsS }: End): boolean {
  const knownS = typeof opensS === 'number' ? opensS : leastS;
  return knownS !== undefined && typeof bearsS === 'number' && !atMost(knownS, bearsS);
}

/** For a run on the battery or on a source of other volts, of which nothing more is known than the battery's milliohms. */
export function faultsOf(
  run: Run,
  house: House,
  battery: BatteryFigures,
  wires: readonly Wire[],
  size: ConductorSize,
  fuse: Protector | undefined,
): Faults {
  const ownVolts = rootOf(run).volts;
  const onBattery = isOnBattery(run, house);
  const strong = onBattery
    ? { volts: battery.fullRest, milliohms: (1000 * battery.fullRest) / battery.breakAmps }
    : { volts: ownVolts, milliohms: battery.milliohms };
  const weak = {
    volts: onBattery ? battery.lowRest : ownVolts,
    milliohms: battery.milliohms * house.weakTimes,
  };
  const { perKelvin } = MATERIAL_CONSTANTS[house.material];
  const warmth = (tempC: number) => 1 + perKelvin * (tempC - 20);
  const end = (
    source: { readonly volts: number; readonly milliohms: number },
    ohms: Figure,
  ): End => {
    const faultA =
      ohms === NO_ANSWER ? NO_ANSWER : figure(faultAmps(source.volts, source.milliohms, ohms));
    if (faultA === NO_ANSWER) return { faultA };
    return {
      faultA,
      bearsS: figure(withstandSeconds(size, faultA, house)),
      ...(fuse === undefined ? {} : { opensS: opensWithin(fuse, faultA) }),
      ...(fuse?.isBlade === false &&
        fuse.makersI2t !== undefined && {
          leastS: estimatedOpeningSeconds(fuse.makersI2t, faultA),
        }),
    };
  };
  const [, ...above] = pathOf(run);
  const warmPath = seriesOhms(pathOf(run), wires, warmth(house.startC) / warmth(house.tempC));
  const near: End =
    warmPath === NO_ANSWER ? { faultA: NO_ANSWER } : end(strong, seriesOhms(above, wires, 1));
  const far = end(weak, warmPath);
  const leastA = fuse?.isBlade ? leastOpeningAmps(fuse.ratingA) : NO_ANSWER;
  return {
    near,
    far,
    isWeak:
      typeof leastA === 'number' && typeof far.faultA === 'number' && !atMost(leastA, far.faultA),
    isSlowFar: isTooSlow(far),
    isSlowNear: isTooSlow(near),
  };
}

export interface Heat {
  readonly steadyC: Figure;
  readonly isTooHot: boolean;
}

/** One conductor alone in still air at the most current. */
export function heatOf(size: ConductorSize, house: House, amps: number): Heat {
  const steadyC = conductorTempC(amps, {
    size,
    material: house.material,
    ambientC: house.ambientC,
    insulationMm: undefined,
  });
  return {
    steadyC: figure(steadyC),
    isTooHot: isRefusal(steadyC) || !atMost(steadyC, house.insulationC),
  };
}
