/** Whatever a person may type into our sheets comes back from a written workbook, and from one that is open. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Parameter } from '../../src/functions/parameter';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';
import { RUN_KEYS } from '../../src/lists/headings';
import { readRuns } from '../../src/lists/read-runs';
import { PROTECTION_TYPED } from '../../src/lists/rules';
import { stationOf } from '../../src/lists/grids';
import { scheduleSheets } from '../../src/sheets/new-schedule';
import { PROTECTION_CELLS } from '../../src/sheets/protection/cells';
import { PROTECTION_COLUMNS } from '../../src/sheets/protection/columns';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import type { StationContent } from '../../src/sheets/station/content';
import { HOUSE_RULES, RULE_KEYS } from '../../src/sheets/station/house-rules';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { FUSE_ENTRY_KEYS } from '../../src/sheets/station/protection-keys';
import { SUPPLY_KEYS } from '../../src/sheets/station/supply-keys';
import { SOURCE_STATIONS } from '../sheets/source-stations';
import { SUPPLY_CELLS } from '../../src/sheets/supply/cells';
import { fileGrids } from './file-grids';

const FREE = { sheets: new Set<string>(), names: new Set<string>() };
const SHEET = 'Run schedule';

type Typed = string | number;

/** What may stand in a cell: its choices, or numbers within and beyond its bounds, or a text that is neither. */
function entryFor(
  parameter: Pick<Parameter, 'choices' | 'name'> | undefined,
  choices?: readonly string[],
): fc.Arbitrary<Typed> {
  const known = choices ?? parameter?.choices;
  if (known !== undefined) return fc.constantFrom(...known);
  if (parameter === undefined) return fc.constantFrom('Relay set', 'a "b" & <c>', '=1+1', '-12');
  if (parameter.name === 'size') return fc.constantFrom('10 AWG', '1/0 AWG', '6 mm2');
  return fc.oneof(
    { arbitrary: fc.constantFrom(0.5, 1, 2, 12.25, 300, -1, 0.003), weight: 9 },
    { arbitrary: fc.constant('not known'), weight: 1 },
  );
}

/** Some of these keys, each with what may stand in its cell. */
function someOf<Key extends string, Entry extends Typed = Typed>(
  keys: readonly Key[],
  entry: (key: Key) => fc.Arbitrary<Entry>,
): fc.Arbitrary<Partial<Record<Key, Entry>>> {
  const all = Object.fromEntries(keys.map((key) => [key, entry(key)])) as Record<
    Key,
    fc.Arbitrary<Entry>
  >;
  return fc.record(all, { requiredKeys: [] });
}

const TYPED_SUPPLY = SUPPLY_KEYS.filter((key) => SUPPLY_CELLS[key].kind !== 'computed');
/** What is said of one battery and one panel, and of a source among others. */
const OF_ONE = TYPED_SUPPLY.filter((key) => key !== 'name' && key !== 'kind');

const run = someOf(
  RUN_KEYS.filter((key) => key !== 'run' && key !== 'fedFrom' && key !== 'kind'),
  (key) => entryFor(SCHEDULE_COLUMNS[key].parameter, SCHEDULE_COLUMNS[key].choices),
) as fc.Arbitrary<ScheduleRun>;
const fuse = someOf(FUSE_ENTRY_KEYS, (key) => entryFor(PROTECTION_COLUMNS[key].parameter));

/** Entries of the last run that has some end the list of fuses. */
function trimmed<Entries extends object>(fuses: readonly Entries[]): readonly Entries[] {
  return fuses.slice(0, fuses.findLastIndex((one) => Object.keys(one).length > 0) + 1);
}

const station: fc.Arbitrary<StationContent> = fc
  .record({
    rows: fc.array(fc.tuple(run, fuse), { minLength: 1, maxLength: 6 }),
    rules: someOf(RULE_KEYS, (key) => entryFor(HOUSE_RULES[key].parameter)),
    supply: someOf(OF_ONE, (key) => entryFor(SUPPLY_CELLS[key].parameter)),
    cells: someOf(PROTECTION_TYPED, (key) => entryFor(PROTECTION_CELLS[key].parameter)),
  })
  .map(({ rows, rules, supply, cells }) => {
    const fuses = trimmed(rows.map(([, entries]) => entries));
    return {
      title: 'Whatever is typed',
      rules: { unit: 'ft', ...rules },
      supply,
      protection: { ...cells, ...(fuses.length === 0 ? {} : { fuses }) },
      duty: [],
      runs: rows.map(([typed], index) => ({
        run: `Run ${index + 1}`,
        ...(index === 0 ? {} : { fedFrom: index % 3 === 0 ? 'panel' : 'Run 1' }),
        ...typed,
        // What draws watts stands in one cell with its unit.
        ...(typeof typed.peak === 'number' && index % 2 === 1 && { kind: 'W' }),
      })),
    };
  });

/** The values among what stands in the cells of a new sheet; formulas are not typed. */
function valuesOf<Key extends string>(keys: readonly Key[], initial: (key: Key) => unknown) {
  const values: Partial<Record<Key, Typed>> = {};
  for (const key of keys) {
    const value = initial(key);
    if (typeof value === 'number' || typeof value === 'string') values[key] = value;
  }
  return values;
}

/** A content with the values of a new sheet: they come back too, as typed. */
function withInitial(content: StationContent): StationContent {
  const rules = valuesOf(RULE_KEYS, (key) => HOUSE_RULES[key].initial({} as never));
  const cells = valuesOf(PROTECTION_TYPED, (key) => PROTECTION_CELLS[key].initial);
  return {
    ...content,
    rules: { ...rules, ...content.rules },
    protection: { ...cells, ...content.protection },
  };
}

const typedOf = ({
  runs,
  rules,
  supply,
  sources,
  protection,
  duty,
}: Omit<StationContent, 'title'>) => ({
  runs,
  rules,
  // A file without sources of their own says nothing of one battery rather than nothing at all.
  supply: supply ?? {},
  sources,
  protection,
  duty,
});

/** Every key at once, so that none is missed by chance. */
const ALL: StationContent = {
  title: 'All of it',
  rules: {
    unit: 'm',
    volts: 24,
    target: 0.02,
    series: 'mm2',
    material: 'tinned copper',
    tempC: 45,
    insulationC: 90,
    installed: 'air',
    ambientC: 35,
    conductors: 4,
    duty: 'bursts',
    counts: 'in each run',
    joints: 2.5,
    returns: 'chassis',
    chassis: 4,
    fuseLimit: 'none',
  },
  supply: {
    chemistry: 'LiFePO4',
    ampHours: 100,
    cells: 8,
    milliohms: 5,
    batteryShortAmps: 3000,
    lowCharge: 0.3,
    usable: 0.6,
    peukert: 1.05,
    fullRest: 27,
    lowRest: 25.5,
    chargingVolts: 29,
    parallel: 2,
    eachBreaks: 900,
    packAmps: 80,
    batteryColdestC: -5,
    mainFuse: 150,
    mainFuseKind: 'high-breaking',
    mainFuseBreaks: 10000,
    mainFuseVolts: 58,
    mainCable: '1/0 AWG',
    panelVolts: 33,
    panelTarget: 0.015,
  },
  protection: {
    startC: 80,
    limitC: 200,
    fuseKind: 'bolt-in',
    weakTimes: 3,
    surgeS: 0.8,
    fuses: [{}, { kind: 'your own', breaks: 5000, ratedVolts: 80, i2t: 900 }, { ratedVolts: 58 }],
  },
  duty: [{ load: 'Radio', amps: [4, 0.4, 0.1], shares: [0.1, 0.2, 0.7] }],
  runs: [
    { run: 'Trunk', length: 4, unfused: 0.15 },
    {
      run: 'Inverter',
      fedFrom: 'Trunk',
      peak: 400,
      kind: 'W',
      length: 1.5,
      efficiency: 0.9,
      atOnce: 0.5,
    },
    {
      run: 'Radio',
      fedFrom: 'Trunk',
      peak: 20,
      length: 3,
      atOnce: 0,
      leastVolts: 21,
      joints: 4,
      surge: 35,
      returns: 7,
      endsAt: 'battery',
      endFused: 'yes',
    },
    { run: 'Lamp', peak: 2, length: 3, returns: 'wire', endFused: 'no' },
  ],
};

describe('what is typed into our sheets', { timeout: 120_000 }, () => {
  it('names every rule and entry in the example of all', () => {
    expect(Object.keys(ALL.rules!).sort()).toEqual([...RULE_KEYS].sort());
    const fuses = (ALL.protection?.fuses ?? []).flatMap((entries) => Object.keys(entries));
    expect(new Set(fuses)).toEqual(new Set(FUSE_ENTRY_KEYS));
    const battery = TYPED_SUPPLY.filter((key) => SUPPLY_CELLS[key].section === 'Battery');
    expect(Object.keys(ALL.supply!)).toEqual(expect.arrayContaining(battery));
  });

  it('comes back from a copy that needs no add-in, and from that copy while it is open', async () => {
    const bytes = await sharedFile(ALL, { rows: 12 });
    const report = await readRuns(bytes, 'shared.xlsx');
    expect(typedOf(report)).toEqual(typedOf(withInitial(ALL)));
    expect(report.problems).toEqual([]);
    const open = stationOf(await fileGrids(bytes), SHEET);
    expect(open).toEqual(withInitial(ALL));
  });

  it('comes back from any workbook of ours', async () => {
    await fc.assert(
      fc.asyncProperty(station, async (content) => {
        const bytes = await writeWorkbook(scheduleSheets(content, 'cells', FREE));
        const expected = withInitial(content);
        const report = await readRuns(bytes, 'written.xlsx');
        expect(typedOf(report)).toEqual(typedOf(expected));
        expect(stationOf(await fileGrids(bytes), SHEET)).toEqual(expected);
      }),
      { numRuns: 12, seed: 20_261_125 },
    );
  });

  it.each(SOURCE_STATIONS)('comes back of every source: $title', async (content) => {
    const bytes = await writeWorkbook(scheduleSheets(content, 'cells', FREE));
    const expected = withInitial(content);
    const report = await readRuns(bytes, 'written.xlsx');
    expect(typedOf(report)).toMatchObject(typedOf(expected));
    expect(stationOf(await fileGrids(bytes), SHEET)).toMatchObject(expected);
  });

  it('keeps each fuse with its run where rows between them are empty', async () => {
    const content: StationContent = {
      title: 'Gaps',
      runs: [{ run: 'One', peak: 5, length: 3 }, {}, {}, { run: 'Four', peak: 6, length: 3 }],
      protection: { fuses: [{}, {}, {}, { kind: 'high-breaking' }] },
    };
    const bytes = await writeWorkbook(scheduleSheets(content, 'cells', FREE));
    const report = await readRuns(bytes, 'gaps.xlsx');
    expect(report.runs.map(({ run: name }) => name)).toEqual(['One', 'Four']);
    expect(report.protection.fuses).toEqual([{}, { kind: 'high-breaking' }]);
  });
});
