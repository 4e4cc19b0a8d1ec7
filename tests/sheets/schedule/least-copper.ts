/** Random trees of one target, and the least copper that serves them, found by trying every wire. */
import fc from 'fast-check';
import { ampacity, type Conditions } from '../../../src/core/ampacity';
import { ohmsPerM } from '../../../src/core/conductor';
import { fuseFor } from '../../../src/core/fuse';
import { fuseLimitA } from '../../../src/core/fuse-limit';
import { isRefusal } from '../../../src/core/outcome';
import { SERIES_SIZES, sizeAreaMm2, type ConductorSize } from '../../../src/core/size';

export const VOLTS = 12;
export const TARGET = 0.03;
/** Of a new sheet. */
const CONDITIONS: Conditions & { readonly material: 'copper' } = {
  insulationC: 75,
  ambientC: 30,
  conductors: 2,
  installed: 'cable',
  material: 'copper',
};
const TEMP_C = 30;
export const JOINT_OHMS = 0.003;

export interface TreeRun {
  /** Place of its feeder; -1 hangs on the source. */
  readonly feeder: number;
  /** Amps of its own load, 0 for none. */
  readonly load: number;
  readonly lengthM: number;
}
export type Tree = readonly TreeRun[];

const run = fc.record({
  pick: fc.nat(999),
  load: fc.integer({ min: 1, max: 15 }),
  isLoaded: fc.boolean(),
  lengthM: fc.integer({ min: 5, max: 80 }).map((tenths) => tenths / 10),
});

export const tree: fc.Arbitrary<Tree> = fc
  .array(run, { minLength: 2, maxLength: 5 })
  .map((drawn) => {
    const feeders = drawn.map(({ pick }, at) => (at === 0 ? -1 : pick % at));
    return drawn.map(({ load, isLoaded, lengthM }, at): TreeRun => {
      const feedsNone = !feeders.includes(at);
      return { feeder: feeders[at]!, load: feedsNone || isLoaded ? load : 0, lengthM };
    });
  });

function pathOf(runs: Tree, at: number): readonly number[] {
  return at < 0 ? [] : [...pathOf(runs, runs[at]!.feeder), at];
}

export function ampsOf(runs: Tree): readonly number[] {
  const amps = runs.map(() => 0);
  for (const [at, { load }] of runs.entries()) for (const on of pathOf(runs, at)) amps[on]! += load;
  return amps;
}

export function copperOf(runs: Tree, sizes: readonly ConductorSize[]): number {
  return runs.reduce((sum, { lengthM }, at) => sum + lengthM * sizeAreaMm2(sizes[at]!), 0);
}

const ohmsOf = (lengthM: number, size: ConductorSize) =>
  2 * lengthM * ohmsPerM(size, CONDITIONS.material, TEMP_C) + JOINT_OHMS;

/** Volts lost from the source to each run's far end, by Ohm's law alone. */
export function lostVolts(runs: Tree, sizes: readonly ConductorSize[]): readonly number[] {
  const amps = ampsOf(runs);
  return runs.map((_, at) =>
    pathOf(runs, at).reduce(
      (sum, on) => sum + amps[on]! * ohmsOf(runs[on]!.lengthM, sizes[on]!),
      0,
    ),
  );
}

/** The sizes that carry a run's current and may have its fuse, thinnest first. */
function serving(amps: number): readonly ConductorSize[] {
  return SERIES_SIZES.AWG.filter((size) => {
    const ampacityA = ampacity(size, CONDITIONS);
    if (isRefusal(ampacityA) || amps > ampacityA) return false;
    const limitA = fuseLimitA('NFPA 70 240.4(D)', size, CONDITIONS.material);
    return !isRefusal(fuseFor(amps, ampacityA, true, limitA));
  });
}

/** Every combination of sizes, but for those that already use more copper or lose more volts than is allowed. */
export function leastCopper(runs: Tree): number | undefined {
  const amps = ampsOf(runs);
  const choices = amps.map(serving);
  let least = Infinity;
  const lost: number[] = [];
  const most = VOLTS * TARGET * (1 + 1e-12);
  const place = (at: number, copper: number) => {
    if (copper >= least) return;
    const here = runs[at];
    if (here === undefined) {
      least = copper;
      return;
    }
    for (const size of choices[at]!) {
      lost[at] =
        (here.feeder < 0 ? 0 : lost[here.feeder]!) + amps[at]! * ohmsOf(here.lengthM, size);
      if (lost[at] <= most) place(at + 1, copper + here.lengthM * sizeAreaMm2(size));
    }
  };
  place(0, 0);
  return least === Infinity ? undefined : least;
}
