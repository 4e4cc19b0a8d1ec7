/**
 * Lightest sizes under which no run is judged worse: against every combination of sizes judged in full, against a
 * general-purpose solver, and by hand.
 */
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { isRefusal } from '../../../src/core/outcome';
import { parseSize } from '../../../src/core/size';
import { chooseLeast } from '../../../src/core/lightest/choose';
import { lighten, type Lightened } from '../../../src/sheets/lighten';
import { worsened } from '../../../src/sheets/no-worse';
import { branchesOf, sizingTreeOf } from '../../../src/sheets/sizing-branches';
import { stationOfSizes } from '../../../src/sheets/size-options';
import { stationValues } from '../../../src/sheets/station-values';
import type { StationContent } from '../../../src/sheets/station/content';
import { DEMO } from '../../../src/sheets/station/demo';
import { loadSolver, solved } from '../../core/lightest/integer-program';
import { ordinaryStation } from '../../oracle/ordinary-stations';
import { samples } from '../../samples';
import { copperOf, leastCopper, TARGET, tree, VOLTS } from '../schedule/least-copper';

const KEEP = { mayChangeTyped: false };
const CHANGE = { mayChangeTyped: true };

const SLOW_MS = 900_000;

function withOwnSizes(content: StationContent, sizes: readonly (string | undefined)[]) {
  return {
    ...content,
    runs: content.runs.map((run, at) => {
      const size = sizes[at];
      return size === undefined ? run : { ...run, ownSize: size };
    }),
  };
}

/** Nothing typed of the wires: the schedule suggests them all. */
function suggested(content: StationContent): StationContent {
  return {
    ...content,
    runs: content.runs.map((run) =>
      Object.fromEntries(Object.entries(run).filter(([key]) => key !== 'ownSize')),
    ),
  };
}

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

function spreadOf(shares: readonly number[]): string {
  const sorted = [...shares].sort((a, b) => a - b);
  const at = (part: number) => percent(sorted[Math.floor(part * (sorted.length - 1))]!);
  return `${at(0)} to ${at(1)}, median ${at(0.5)}, upper quarter from ${at(0.75)}`;
}

/** Whether a run that may get another size feeds one. */
function hasTree({ runs }: StationContent, left: Lightened['left']): boolean {
  const kept = new Set(left.flatMap((branch) => branch.runs));
  return runs.some(
    ({ fedFrom }, at) => !kept.has(at) && runs.some(({ run: name }) => name === fedFrom),
  );
}

const RUN = fc.record({
  feeder: fc.nat(99),
  peak: fc.integer({ min: 1, max: 14 }),
  isWatts: fc.nat(3).map((nth) => nth === 0),
  isLoaded: fc.boolean(),
  length: fc.integer({ min: 2, max: 30 }),
  leastShare: fc.constantFrom(undefined, undefined, 0.85, 0.92),
  atOnce: fc.constantFrom(undefined, undefined, undefined, 0.5),
  fused: fc.constantFrom(undefined, undefined, 'no'),
});

const SMALL = fc
  .record({
    runs: fc.array(RUN, { minLength: 2, maxLength: 3 }),
    volts: fc.constantFrom(12, 12.6),
    target: fc.constantFrom(0.03, 0.06),
    counts: fc.constantFrom('to the load', 'to the load', 'in each run'),
    supply: fc.constantFrom({}, { chemistry: 'LiFePO4', ampHours: 60, milliohms: 10 }),
  })
  .map(({ runs, volts, target, counts, supply }): StationContent => {
    const feeders = runs.map(({ feeder }, at) => (at === 0 ? undefined : feeder % at));
    return {
      title: 'Small',
      rules: { unit: 'ft', volts, target, counts, series: 'AWG' },
      supply,
      runs: runs.map((run, at) => {
        const feeder = feeders[at];
        const isLoad = run.isLoaded || !feeders.includes(at);
        return {
          run: `Run ${at + 1}`,
          length: run.length,
          ...(feeder === undefined ? {} : { fedFrom: `Run ${feeder + 1}` }),
          ...(isLoad ? { peak: run.isWatts ? run.peak * 10 : run.peak } : {}),
          ...(isLoad && run.isWatts ? { kind: 'W' } : {}),
          ...(isLoad && run.leastShare !== undefined
            ? { leastVolts: Number((volts * run.leastShare).toFixed(1)) }
            : {}),
          ...(isLoad && run.atOnce !== undefined ? { atOnce: run.atOnce } : {}),
          ...(run.fused === undefined || feeder === undefined ? {} : { fused: run.fused }),
        };
      }),
    };
  });

/** The least metal of all combinations of sizes that carry their runs, each judged in full. */
function leastByTrying(content: StationContent): number {
  const station = stationOfSizes(content);
  const open = content.runs.map((_, run) => {
    const inUse = station.inUse(run);
    if (inUse === undefined) return [];
    return [inUse, ...station.carrying(run).filter(({ name }) => name !== inUse.name)];
  });
  let least = Infinity;
  const tryFrom = (run: number, kg: number, names: readonly string[]) => {
    if (kg >= least) return;
    if (run === open.length) {
      const values = stationValues(withOwnSizes(content, names));
      if (worsened(station.values, values).length === 0) least = kg;
      return;
    }
    for (const size of open[run]!) tryFrom(run + 1, kg + size.kg, [...names, size.name]);
  };
  tryFrom(0, 0, []);
  return least;
}

describe('of small trees', () => {
  const { count, ofAll } = samples({ all: 60, usual: 14 });
  it(
    'no combination of sizes is lighter by more than is said, and mostly none is lighter',
    () => {
      let [exact, saving] = [0, 0];
      for (const content of fc.sample(SMALL, { seed: 1126, numRuns: count })) {
        const found = lighten(content, KEEP);
        if (found.left.length > 0) continue;
        const least = leastByTrying(content);
        const told = JSON.stringify([content, found.changes]);
        expect(found.then.kg, told).toBeGreaterThanOrEqual(least * (1 - 1e-9));
        // What is lost now by a load that fails may not grow, which the words alone do not ask.
        expect(found.then.kg / (1 + found.mostAboveBest), told).toBeLessThanOrEqual(
          found.now.kg * (1 + 1e-9),
        );
        const isJudgedWell = stationValues(content).runs.every(({ level }) => Number(level) >= 4);
        if (isJudgedWell) {
          expect(found.then.kg / (1 + found.mostAboveBest), told).toBeLessThanOrEqual(
            least * (1 + 1e-9),
          );
          if (found.then.kg <= least * (1 + 1e-9)) exact += 1;
        }
        if (found.changes.length > 0) saving += 1;
      }
      expect(exact).toBeGreaterThanOrEqual(ofAll(12));
      expect(saving).toBeGreaterThan(0);
    },
    SLOW_MS,
  );

  it('where a lamp asks for more volts, a load in watts beside it draws less than it is sized for', () => {
    // At the 9 V that it works from the set draws 5.6 A; the lamp leaves it 11 V, and so 4.5 A.
    const content: StationContent = {
      title: 'Watts',
      rules: { unit: 'ft', volts: 12, target: 0.3, series: 'AWG', fuseLimit: 'none' },
      supply: { chemistry: 'lead-acid', milliohms: 20 },
      runs: [
        { run: 'Trunk', length: 6, unfused: 0.1 },
        { run: 'Set', fedFrom: 'Trunk', length: 2, peak: 50, kind: 'W', leastVolts: 9 },
        { run: 'Lamp', fedFrom: 'Trunk', length: 4, peak: 3, leastVolts: 11 },
      ],
    };
    const found = lighten(content, KEEP);
    const least = leastByTrying(content);
    expect(found.then.kg).toBeGreaterThan(least * 1.1);
    expect(found.then.kg / (1 + found.mostAboveBest)).toBeLessThanOrEqual(least);
  });
});

describe('of ordinary stations', () => {
  let solver: Awaited<ReturnType<typeof loadSolver>>;
  beforeAll(async () => {
    solver = await loadSolver();
  });

  it(
    'a general-purpose solver finds no less in what a branch asks',
    () => {
      let compared = 0;
      for (let seed = 1; seed <= 25; seed += 1) {
        const content = suggested(ordinaryStation(seed));
        const station = stationOfSizes(content);
        const joints = (run: number) => station.values.runs[run]!.jointOhms as number;
        for (const branch of branchesOf(station, content, () => true).branches) {
          if (branch.runs.length < 3) continue;
          const { tree } = sizingTreeOf(branch, branch.careful, 'metal', joints);
          const choice = chooseLeast(tree)!;
          const least = solved(solver, tree, true);
          // The solver's own tolerance for what a variable is whole by.
          expect(choice.cost, `seed ${seed}`).toBeLessThanOrEqual(least * (1 + 1e-6) + 1e-9);
          expect(choice.atLeast, `seed ${seed}`).toBeLessThanOrEqual(least * (1 + 1e-6) + 1e-9);
          compared += 1;
        }
      }
      expect(compared).toBeGreaterThan(15);
    },
    SLOW_MS,
  );

  it(
    'no run is judged worse, and the loom is never heavier; what is saved is printed',
    () => {
      const { count, ofAll } = samples({ all: 400, usual: 50 });
      const saved: number[] = [];
      const ofTrees: number[] = [];
      let [now, then, proved, ruledOut] = [0, 0, 0, 0];
      for (let seed = 1; seed <= count; seed += 1) {
        const content = suggested(ordinaryStation(seed));
        const found = lighten(content, KEEP);
        expect(worsened(stationValues(content), found.values), `seed ${seed}`).toEqual([]);
        expect(found.then.kg, `seed ${seed}`).toBeLessThanOrEqual(found.now.kg * (1 + 1e-9));
        if (found.left.flatMap(({ runs }) => runs).length === content.runs.length) continue;
        if (found.now.kg === 0) continue;
        const share = 1 - found.then.kg / found.now.kg;
        saved.push(share);
        if (hasTree(content, found.left)) ofTrees.push(share);
        now += found.now.kg;
        then += found.then.kg;
        if (found.mostAboveBest === 0) proved += 1;
        if (found.ruledOut.length > 0) ruledOut += 1;
      }
      const demo = lighten(suggested({ ...DEMO, wireList: {} }), KEEP);
      console.log(
        `Lightest loom against the suggested one: metal saved in ${saved.length} of ${count} random stations ${spreadOf(saved)}; in the ${ofTrees.length} where a run feeds another that may change ${spreadOf(ofTrees)}; of all metal ${percent(1 - then / now)}. Proved the least: ${proved}. Sizes ruled out by a verdict in ${ruledOut}. In the demonstration ${percent(1 - demo.then.kg / demo.now.kg)} of ${demo.now.kg.toFixed(2)} kg, at most ${percent(demo.mostAboveBest)} above the least.`,
      );
      expect(saved.filter((share) => share > 0.001).length).toBeGreaterThanOrEqual(ofAll(90));
      expect(ruledOut).toBeGreaterThan(0);
    },
    SLOW_MS,
  );
});

describe('of trees that their drop decides', () => {
  const { count, ofAll } = samples({ all: 400, usual: 80 });
  it(
    'the copper is the least that trying every wire finds, unless a verdict asks for more',
    () => {
      const saved: number[] = [];
      let [exact, served] = [0, 0];
      for (const runs of fc.sample(tree, { seed: 20_271, numRuns: count })) {
        const content: StationContent = {
          title: 'Tree',
          rules: { unit: 'm', volts: VOLTS, target: TARGET },
          supply: { chemistry: 'lead-acid', ampHours: 200 },
          runs: runs.map(({ feeder, load, lengthM }, at) => ({
            run: `Run ${at + 1}`,
            ...(feeder >= 0 && { fedFrom: `Run ${feeder + 1}` }),
            ...(load > 0 && { peak: load }),
            length: lengthM,
          })),
        };
        const found = lighten(content, KEEP);
        // What has no wire by its shares gets one wherever there is any.
        if (found.left.length > 0) {
          expect(leastCopper(runs), JSON.stringify(runs)).toBeUndefined();
          continue;
        }
        if (found.served.length > 0) served += 1;
        const sizes = runs.flatMap((_, at) => {
          const size = parseSize(String(found.values.runs[at]!.size));
          return isRefusal(size) ? [] : [size];
        });
        const copper = copperOf(runs, sizes);
        const least = leastCopper(runs)!;
        const told = JSON.stringify(runs);
        expect(copper, told).toBeGreaterThanOrEqual(least * (1 - 1e-9));
        if (found.ruledOut.length === 0)
          expect(copper, told).toBeLessThanOrEqual(least * (1 + 1e-9));
        expect(found.then.kg / (1 + found.mostAboveBest), told).toBeCloseTo(
          (found.then.kg * least) / copper,
          6,
        );
        if (copper <= least * (1 + 1e-9)) exact += 1;
        if (found.served.length === 0) saved.push(1 - found.then.kg / found.now.kg);
      }
      console.log(
        `Lightest loom of ${saved.length} of ${count} trees: metal saved against the suggested one ${spreadOf(saved)}; ${exact} are the least that there is. ${served} of them had runs for which no wire was suggested.`,
      );
      expect(exact).toBeGreaterThanOrEqual(ofAll(300));
      expect(saved.filter((share) => share > 0.001).length).toBeGreaterThanOrEqual(ofAll(100));
      expect(served).toBeGreaterThan(0);
    },
    SLOW_MS,
  );
});

describe('a branch in which no wire was suggested', () => {
  // Of 0.36 V a trunk of half a metre gets a share of 0.13, and loses that much in its joints alone.
  const BLOCK: StationContent = {
    title: 'Block',
    rules: { unit: 'm', volts: 12, target: 0.03, fuseLimit: 'none' },
    supply: { chemistry: 'lead-acid', ampHours: 200, milliohms: 40 },
    runs: [
      { run: 'Trunk', length: 0.5, peak: 15, unfused: 0.1 },
      { run: 'Rack', fedFrom: 'Trunk', length: 5.1 },
      { run: 'Set', fedFrom: 'Rack', length: 0.6, peak: 12 },
      { run: 'Pump', fedFrom: 'Rack', length: 7.4, peak: 14 },
    ],
  };
  const verdictsOf = (content: StationContent) =>
    stationValues(content).runs.map(({ verdict }) => String(verdict));

  it('is served by sizes that are chosen together, and judged with them', () => {
    expect(verdictsOf(BLOCK)[0]).toBe('no wire of this series is thick enough');
    const found = lighten(BLOCK, KEEP);
    expect(found.left).toEqual([]);
    expect(found.served.map(({ called }) => called)).toEqual(['Trunk', 'Rack', 'Set', 'Pump']);
    expect(found.now.kg).toBe(0);
    expect(found.typed.map(({ run }) => run)).toEqual([0, 1, 2, 3]);
    const sized = withOwnSizes(
      BLOCK,
      found.typed.map(({ size }) => size),
    );
    const { runs } = stationValues(sized);
    for (const { judged, pathDrop } of runs) {
      expect(judged).toBe(1);
      expect(pathDrop).toBeLessThanOrEqual(0.03 * (1 + 1e-9));
    }
    expect(verdictsOf(sized).join()).not.toMatch(/drop over target|thick enough|too few volts/);
  });

  it('tells what else is wrong with its runs, which could not be seen before', () => {
    // With so little inside the battery a blade fuse cannot break a short.
    const strong = { ...BLOCK, supply: { ...BLOCK.supply, milliohms: 1 } };
    const [trunk] = lighten(strong, KEEP).served;
    expect(trunk).toEqual({ called: 'Trunk', words: ['fuse may not interrupt this fault'] });
  });

  it('is left where no sizes serve it, or where a wire is typed that cannot be read', () => {
    const far = BLOCK.runs.map((run) => (run.run === 'Pump' ? { ...run, length: 40 } : run));
    const none = lighten({ ...BLOCK, runs: far }, KEEP);
    expect([none.changes, none.typed, none.served]).toEqual([[], [], []]);
    expect(none.left.map(({ why }) => why)).toEqual([
      'Trunk: no wire of this series is thick enough',
    ]);
    expect(none.mostAboveBest).toBe(0);
    const unread = lighten(withOwnSizes(BLOCK, [undefined, 'thick']), CHANGE);
    expect([unread.changes, unread.left.length]).toEqual([[], 1]);
  });

  it('keeps a wire in it that a person chose, unless it may change', () => {
    const typed = withOwnSizes(BLOCK, [undefined, undefined, '4 AWG']);
    const kept = lighten(typed, KEEP);
    expect(kept.typed.find(({ run }) => run === 2)?.size).toBe('4 AWG');
    const changed = lighten(typed, CHANGE);
    expect(changed.typed.find(({ run }) => run === 2)?.size).not.toBe('4 AWG');
    expect(changed.then.kg).toBeLessThan(kept.then.kg);
  });

  it('gives a load its least volts with the battery low, and is left where no wire can', () => {
    const asking = (leastVolts: number) => ({
      ...BLOCK,
      runs: BLOCK.runs.map((run) => (run.run === 'Set' ? { ...run, leastVolts } : run)),
    });
    // Low it rests at some 11.9 V, and 41 A lose 1.6 V inside it.
    const served = lighten(asking(9.5), KEEP);
    expect(served.served).toHaveLength(4);
    expect(served.values.runs[2]!.lowVolts).toBeGreaterThanOrEqual(9.5);
    expect(lighten(asking(10.5), KEEP).left).toHaveLength(1);
  });
});

/** A trunk that feeds two lamps, of which the short one leaves room that the suggestion does not use. */
const HUT: StationContent = {
  title: 'Hut',
  rules: { unit: 'm', volts: 12, target: 0.05 },
  supply: { chemistry: 'LiFePO4', ampHours: 100, milliohms: 5 },
  runs: [
    { run: 'Trunk', length: 3, unfused: 0.1 },
    { run: 'Radio', fedFrom: 'Trunk', peak: 10, length: 5 },
    { run: 'Lamp', fedFrom: 'Trunk', peak: 1, length: 1 },
  ],
};

describe('sizes that a person typed', () => {
  const typed = withOwnSizes(HUT, [undefined, undefined, '4 AWG']);

  it('stay unless they may change', () => {
    const kept = lighten(typed, KEEP);
    expect(kept.changes.map(({ called }) => called)).not.toContain('Lamp');
    const changed = lighten(typed, CHANGE);
    const lamp = changed.changes.find(({ called }) => called === 'Lamp');
    expect(lamp?.now?.name).toBe('4 AWG');
    expect(lamp?.then.name).toBe('18 AWG');
    expect(changed.then.kg).toBeLessThan(kept.then.kg);
  });

  it('are typed for all runs of a branch in which one changes, and judged so', () => {
    const { typed: sizes, values } = lighten(typed, CHANGE);
    expect(sizes.map(({ run }) => run)).toEqual([0, 1, 2]);
    const again = stationValues(
      withOwnSizes(
        typed,
        sizes.map(({ size }) => size),
      ),
    );
    expect(again.runs.map(({ verdict }) => verdict)).toEqual(
      values.runs.map(({ verdict }) => verdict),
    );
  });

  it('are the lightest once they were taken: a second look finds nothing', () => {
    const first = lighten(typed, CHANGE);
    const then = withOwnSizes(
      typed,
      first.typed.map(({ size }) => size),
    );
    const second = lighten(then, CHANGE);
    expect(second.changes).toEqual([]);
    expect(second.typed).toEqual([]);
    expect(second.now.kg).toBeCloseTo(first.then.kg, 9);
  });
});

describe('what the verdict rules out', () => {
  it('is taken back, run by run, and named with what would have been said', () => {
    const found = lighten(DEMO, CHANGE);
    expect(found.ruledOut).toContainEqual({
      called: 'Van feed',
      size: '2 AWG',
      words: 'Van set B: too few volts while a load starts',
    });
    expect(found.changes.map(({ called }) => called)).not.toContain('Van feed');
    expect(found.changes.map(({ called }) => called)).toContain('Bench lamp');
    expect(found.mostAboveBest).toBeGreaterThan(0);
    expect(worsened(stationValues(DEMO), found.values)).toEqual([]);
  });

  it('is nothing where the sizes in use are the least', () => {
    const found = lighten(DEMO, KEEP);
    expect([found.changes, found.typed, found.mostAboveBest]).toEqual([[], [], 0]);
  });
});

it('counts what its own battery loses inside for a load that is never on with the others', () => {
  // 20 A through 50 milliohms are 1 V, of the 1.5 V from 12.0 V low to the 10.5 V that it works with.
  const content: StationContent = {
    title: 'Winch',
    rules: { unit: 'm', volts: 12, target: 0.3, fuseLimit: 'none' },
    sources: [
      { name: 'Hut', kind: 'battery', chemistry: 'lead-acid', milliohms: 20 },
      { name: 'Van', kind: 'battery', chemistry: 'lead-acid', milliohms: 50 },
    ],
    runs: [
      {
        ...{ run: 'Winch', fedFrom: 'Van', peak: 20, atOnce: 0, length: 4, unfused: 0.1 },
        ...{ leastVolts: 10.5, ownSize: '2 AWG' },
      },
    ],
  };
  const { changes, ruledOut, mostAboveBest } = lighten(content, CHANGE);
  expect(changes).toHaveLength(1);
  // None was tried that leaves it too few volts.
  expect([ruledOut, mostAboveBest]).toEqual([[], 0]);
});

describe('a branch that cannot be judged', () => {
  it('keeps its sizes and is named; the others are looked at', () => {
    const found = lighten(
      {
        ...withOwnSizes(HUT, [undefined, undefined, '4 AWG']),
        runs: [
          ...withOwnSizes(HUT, [undefined, undefined, '4 AWG']).runs,
          { run: 'Far', peak: 5 },
          { run: 'Beyond', fedFrom: 'Far', peak: 5, length: 3, ownSize: '2 AWG' },
        ],
      },
      CHANGE,
    );
    expect(found.left).toEqual([{ runs: [3, 4], why: 'Far: length missing' }]);
    expect(found.changes.map(({ called }) => called)).toContain('Lamp');
    expect(found.changes.map(({ called }) => called)).not.toContain('Beyond');
  });
});

describe('prices', () => {
  const priced = (prices: readonly (readonly [string, number])[]): StationContent => ({
    ...withOwnSizes(HUT, ['6 AWG', '8 AWG', '14 AWG']),
    wireList: { prices: prices.map(([size, price]) => ({ size, price })) },
  });

  it('count where all wires in use have one: what is cheap is taken though it is heavy', () => {
    const found = lighten(
      priced([
        ['6 AWG', 3],
        ['8 AWG', 9],
        ['14 AWG', 8],
        ['12 AWG', 2],
      ]),
      CHANGE,
    );
    expect(found.aim).toBe('money');
    expect(found.changes.map(({ called, then }) => `${called} ${then.name}`)).toEqual([
      'Trunk 12 AWG',
      'Radio 6 AWG',
      'Lamp 12 AWG',
    ]);
    // Both conductors: 2 x (3 m x 3 + 5 m x 9 + 1 m x 8), and then 2 x (3 x 2 + 5 x 3 + 1 x 2).
    expect(found.now.cost).toBeCloseTo(124, 9);
    expect(found.then.cost).toBeCloseTo(46, 9);
  });

  it('do not where one is missing, which is said; metal counts then', () => {
    const found = lighten(priced([['6 AWG', 3]]), CHANGE);
    expect(found.aim).toBe('metal');
    expect(found.whyMetal).toBe('the Wire list has no price of 8 AWG, which Radio has now');
  });
});
