/** Lists of runs for tests of feeders: arbitrary ones for properties, and regular ones of any size. */
import fc from 'fast-check';
import { buildFeederTree, SOURCE } from '../../src/core/feeder-tree';
import { feedAmps, feedVolts, type LoadKind } from '../../src/core/feeders';
import type { Outcome } from '../../src/core/outcome';

export interface TestRun {
  readonly name: string;
  readonly fedFrom: string;
  readonly load: number;
  readonly kind: LoadKind;
  readonly ohms: number;
}

/**
 * Trees of up to `most` runs in mixed order. Loads are up to 60 W or 5 A, ohms up to `mostOhms` and 0 now and then, so
 * that from 12 V short trees serve everything, and long ones come near to collapse or beyond it.
 */
export function listOfRuns(
  most: number,
  mostOhms: number,
  kinds: readonly LoadKind[] = ['A', 'W'],
): fc.Arbitrary<readonly TestRun[]> {
  /** Even over its range, so that heavy loads and long runs are no rarity. */
  const upTo = (most: number) =>
    fc.integer({ min: 1, max: 1000 }).map((thousandths) => (thousandths / 1000) * most);
  const run = fc.record({
    feeder: fc.integer({ min: 0, max: 999 }).map((thousandths) => thousandths / 1000),
    kind: fc.constantFrom(...kinds),
    amps: fc.oneof({ weight: 4, arbitrary: upTo(5) }, fc.constant(0)),
    ohms: fc.oneof({ weight: 9, arbitrary: upTo(mostOhms) }, fc.constant(0)),
  });

  return fc.array(run, { minLength: 1, maxLength: most, size: 'max' }).chain((runs) => {
    const listed = runs.map(({ feeder, kind, amps, ohms }, index): TestRun => {
      const above = Math.floor(feeder * (index + 1)) - 1;
      return {
        name: `run ${index}`,
        fedFrom: above < 0 ? SOURCE : `run ${above}`,
        load: kind === 'W' ? 12 * amps : amps,
        kind,
        ohms,
      };
    });
    return fc.shuffledSubarray(listed, { minLength: listed.length });
  });
}

function treeOf(runs: readonly TestRun[]) {
  return buildFeederTree(
    runs.map(({ name }) => name),
    runs.map(({ fedFrom }) => fedFrom),
  );
}

/** Volts by row. */
export function voltsOf(sourceVolts: number, runs: readonly TestRun[]): Outcome<number>[] {
  return feedVolts(treeOf(runs), sourceVolts, {
    loads: Float64Array.from(runs, ({ load }) => load),
    kinds: runs.map(({ kind }) => kind),
    ohms: Float64Array.from(runs, ({ ohms }) => ohms),
  });
}

/** Amps by row, each load taken as amps. */
export function ampsOf(runs: readonly TestRun[]): Outcome<number>[] {
  return feedAmps(
    treeOf(runs),
    Float64Array.from(runs, ({ load }) => load),
  );
}

export const SHAPES = {
  /** Every run feeds the next. */
  chain: (index: number) => (index === 0 ? SOURCE : `run ${index - 1}`),
  /** One run feeds all the others. */
  fan: (index: number) => (index === 0 ? SOURCE : 'run 0'),
  /** Every run is fed from the source. */
  star: () => SOURCE,
  /** Every run feeds two more. */
  'in twos': (index: number) => (index === 0 ? SOURCE : `run ${(index - 1) >> 1}`),
} as const;
export type Shape = keyof typeof SHAPES;

/**
 * A tree of a shape and size with mixed loads. `stress` is about the share of the source's 12 V that the loads would
 * lose at their nominal currents on the way to the worst placed of them.
 */
export function regularRuns(shape: Shape, count: number, stress: number): TestRun[] {
  const watts = 1;
  const amps = watts / 12;
  const worstDropPerOhm =
    amps *
    {
      chain: (count * (count + 1)) / 2,
      fan: count,
      star: 1,
      'in twos': 2 * count,
    }[shape];
  return Array.from({ length: count }, (_, index) => ({
    name: `run ${index}`,
    fedFrom: SHAPES[shape](index),
    load: index % 2 === 0 ? watts : amps,
    kind: index % 2 === 0 ? ('W' as const) : ('A' as const),
    ohms: (stress * 12) / worstDropPerOhm,
  }));
}
