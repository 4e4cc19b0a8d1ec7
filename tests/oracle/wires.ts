/** The wire of a run: what would be suggested, what is used, and what that wire may carry. */
import { ampacity } from '../../src/core/ampacity';
import { runOhms } from '../../src/core/drop';
import { fuseFor } from '../../src/core/fuse';
import { chooseGauge, type RunDemand } from '../../src/core/gauge';
import { parseSize, type ConductorSize } from '../../src/core/size';
import { figure, from, NO_ANSWER, type Figure } from './figures';
import type { House } from './house';
import type { Run } from './runs';

export interface Wire {
  readonly suggested: ConductorSize | typeof NO_ANSWER;
  readonly setBy: Figure<string>;
  readonly size: ConductorSize | typeof NO_ANSWER;
  readonly ohms: Figure;
  readonly ampacityA: Figure;
  /** The smallest standard fuse between load and ampacity, whether or not the run has one. */
  readonly fittingA: Figure;
}

export function demandOf(run: Run, house: House, amps: number): RunDemand {
  return {
    amps,
    volts: run.volts,
    maxDrop: run.target,
    lengthM: run.lengthM,
    material: house.material,
    tempC: house.tempC,
    jointMilliohms: run.jointMilliohms,
    insulationC: house.insulationC,
    ambientC: house.ambientC,
    conductors: house.conductors,
    installed: house.installed,
    continuous: house.continuous,
  };
}

export function wireOf(run: Run, house: House, amps: number): Wire {
  const demand = demandOf(run, house, amps);
  const chosen = figure(chooseGauge(demand, house.series));
  const suggested = from(chosen, ({ size }) => size);
  const size = run.ownSize === undefined ? suggested : figure(parseSize(run.ownSize));
  const ampacityA = size === NO_ANSWER ? NO_ANSWER : figure(ampacity(size, demand));
  return {
    suggested,
    setBy: from(chosen, ({ limit }) => limit),
    size,
    ohms: from(size, (of) => runOhms(of, demand)),
    ampacityA,
    fittingA:
      ampacityA === NO_ANSWER ? NO_ANSWER : figure(fuseFor(amps, ampacityA, house.continuous)),
  };
}
