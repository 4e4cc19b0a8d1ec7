/** Short circuits at both ends of a run, how soon its fuse opens, how long its wire bears it, and its everyday heat. */
import { conductorTempC } from '../../src/core/conductor-temp';
import { faultAmps } from '../../src/core/fault';
import { fuseSeconds, leastOpeningAmps } from '../../src/core/fuse-time';
import { atMost } from '../../src/core/limits';
import { isRefusal } from '../../src/core/outcome';
import type { ConductorSize } from '../../src/core/size';
import { assumedFuseType } from '../../src/core/tables/iso-8820-types';
import { withstandSeconds } from '../../src/core/withstand';
import type { BatteryFigures } from './battery';
import { figure, NO_ANSWER, type Figure } from './figures';
import type { Protector } from './fuses';
import type { House } from './house';
import { isOnBattery, pathOf, rootOf, type Run } from './runs';

/** At one end; what does not apply is left out. */
export interface End {
  readonly faultA: Figure;
  readonly opensS?: Figure;
  readonly bearsS?: Figure;
}

export interface Faults {
  readonly near: End;
  readonly far: End;
  readonly isWeak: boolean;
  readonly isSlow: boolean;
  readonly isUnbroken: boolean;
}

/** Ohms of runs in a row, one after the other. */
function seriesOhms(path: readonly Run[], ohms: readonly Figure[]): Figure {
  let sum = 0;
  for (const { row } of path) {
    const of = ohms[row]!;
    if (of === NO_ANSWER) return NO_ANSWER;
    sum += of;
  }
  return sum;
}

function endOf(
  pathOhms: Figure,
  sourceVolts: number,
  battery: BatteryFigures,
  size: ConductorSize,
  house: House,
  fuse: Protector | undefined,
): End {
  const faultA =
    pathOhms === NO_ANSWER
      ? NO_ANSWER
      : figure(faultAmps(sourceVolts, battery.milliohms, pathOhms));
  if (faultA === NO_ANSWER) return { faultA };
  return {
    faultA,
    bearsS: figure(withstandSeconds(size, faultA, house)),
    ...(fuse === undefined ? {} : { opensS: figure(fuseSeconds(fuse.ratingA, faultA)) }),
  };
}

/** The fuse may take longer than the wire bears. */
function isTooSlow({ opensS, bearsS }: End): boolean {
  return typeof opensS === 'number' && typeof bearsS === 'number' && !atMost(opensS, bearsS);
}

/** For a run on the battery or on a source of other volts. */
export function faultsOf(
  run: Run,
  house: House,
  battery: BatteryFigures,
  ohms: readonly Figure[],
  size: ConductorSize,
  fuse: Protector | undefined,
): Faults {
  const sourceVolts = isOnBattery(run, house) ? battery.fullRest : rootOf(run).volts;
  const [, ...above] = pathOf(run);
  const end = (path: readonly Run[]) =>
    endOf(seriesOhms(path, ohms), sourceVolts, battery, size, house, fuse);
  const near = end(above);
  const far = end(pathOf(run));
  const leastA = fuse === undefined ? NO_ANSWER : leastOpeningAmps(fuse.ratingA);
  return {
    near,
    far,
    isWeak:
      typeof leastA === 'number' && typeof far.faultA === 'number' && !atMost(leastA, far.faultA),
    isSlow: isTooSlow(near) || isTooSlow(far),
    isUnbroken:
      fuse !== undefined &&
      typeof near.faultA === 'number' &&
      !atMost(near.faultA, assumedFuseType(fuse.ratingA).breakingA),
  };
}

export interface Heat {
  readonly steadyC: Figure;
  readonly isTooHot: boolean;
}

/** One conductor alone in still air at the peak current. */
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
