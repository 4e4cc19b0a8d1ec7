/**
 * The formulas of a copy that needs no add-in beside those that call our functions: both evaluated, every computed cell
 * of every station compared, errors by their kind. That the evaluation is a spreadsheet's is LibreOffice's to say, in
 * tests/workbook.
 */
import { describe, expect, it } from 'vitest';
import { INSTALLATIONS } from '../../../src/core/ampacity';
import { LENGTH_UNITS } from '../../../src/core/length';
import { SERIES } from '../../../src/core/size';
import { FUSE_TYPES } from '../../../src/core/tables/iso-8820-types';
import { MATERIALS } from '../../../src/core/tables/materials';
import { CHEMISTRIES } from '../../../src/core/tables/resting-volts';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { area } from '../../../src/sheets/plan/area';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import { readStationValues, stationValues } from '../../../src/sheets/station-values';
import type { StationContent } from '../../../src/sheets/station/content';
import { DEMO } from '../../../src/sheets/station/demo';
import { RULE_KEYS, type RuleKey } from '../../../src/sheets/station/house-rules';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { PANEL_KEYS, type SupplyKey } from '../../../src/sheets/station/supply-keys';
import { WORD } from '../../../src/sheets/station/verdicts';
import { SETTLED_V } from '../../../src/sheets/without-add-in/references';
import { generatedStations } from '../generated-stations';
import { protectionStations } from '../protection-stations';
import { SOURCE_STATIONS } from '../source-stations';
import { TYPED_RUNS } from '../typed-quantities';
import {
  compareStations,
  summary,
  toldDifferences,
  total,
  type StationComparison,
} from '../station-differences';

const names = scheduleNames();

/** What the copy says that its last round still moved, in volts. */
function leftUndone(plans: readonly SheetPlan[], read: ReturnType<typeof calculate>): number {
  const workings = plans.find(({ name }) => name === names.workingsSheet)!;
  const label = workings.blocks.find(({ cells }) => cells?.[0]?.includes('Last round moved, V'))!;
  const column = label.cells![0]!.indexOf('Last round moved, V') + 1;
  const volts = read.at(names.workingsSheet, label.area.row, label.area.column + column);
  expect(volts).toBeTypeOf('number');
  return volts as number;
}

function compareCopy(content: StationContent, plans: readonly SheetPlan[]): StationComparison {
  const read = calculate(plans);
  const copied = readStationValues(read, content, names);
  const voltsMissing = Math.min(SETTLED_V, leftUndone(plans, read));
  return compareStations(content, stationValues(content), copied, voltsMissing);
}

function compared(content: StationContent): StationComparison {
  return compareCopy(content, sharedCopy(content, { rows: content.runs.length + 2 }).plans);
}

function expectNone(of: string, comparison: StationComparison): void {
  console.info(summary(`Formulas without the add-in, ${of}`, comparison));
  expect(toldDifferences(comparison.differences)).toEqual([]);
}

/** Whatever is set aside, no run that the functions object to is ok in the copy. */
function expectOnTheSafeSide({ setAside }: StationComparison): void {
  for (const { where, key, row, ours, theirs } of setAside) {
    if (row !== undefined && key === 'verdict' && ours !== WORD.ok) {
      expect(theirs, where).not.toBe(WORD.ok);
    }
  }
}

describe('formulas without the add-in come to what the functions answer', () => {
  it('for the demonstration', () => {
    expectNone('demonstration', compared(DEMO));
  });

  it('for loads and lengths as people type them', () => {
    expectNone('typed quantities', compared({ title: 'Typed', runs: TYPED_RUNS }));
  });

  it('for a thousand generated runs of every kind', () => {
    const stations = generatedStations({ stations: 20, rows: 50, watts: false });
    const comparison = total(stations.map(compared));
    expectNone('1,000 generated runs', comparison);
    expect(comparison.setAside.length).toBeLessThan(comparison.compared / 500);
    expectOnTheSafeSide(comparison);
  });

  it('for loads of steady power, but for what the copy says it leaves undone', () => {
    const stations = generatedStations({ stations: 4, rows: 60, watts: true });
    expectNone('loads in watts', total(stations.map(compared)));
  });

  it('for several sources of every kind', () => {
    expectNone('several sources', total(SOURCE_STATIONS.map(compared)));
  });

  it('for fuses of every kind that fail in every way', () => {
    const stations = Object.values(protectionStations());
    expectNone('protection', total(stations.map(compared)));
    const rows = stations.flatMap((content) => stationValues(content).protection.rows);
    for (const key of [
      'fuseTooSlow',
      'faultTooWeak',
      'mayNotBreak',
      'tooHot',
      'notJudged',
    ] as const) {
      const met = rows.filter(({ wrong }) => String(wrong).includes(WORD[key]));
      expect(met.length, WORD[key]).toBeGreaterThan(0);
    }
    expect(new Set(rows.map(({ guardedFrom }) => guardedFrom)).size).toBeGreaterThan(9);
    const types = new Set(rows.map(({ fuseType }) => fuseType));
    for (const { name } of FUSE_TYPES) expect(types).toContain(name);
  });
});

/** Every house rule with other values: each of its choices, or a number. */
const OTHER_RULES: Readonly<Record<RuleKey, readonly (string | number)[]>> = {
  unit: LENGTH_UNITS.filter((unit) => unit !== 'ft'),
  volts: [11.8],
  target: [0.05],
  series: SERIES.filter((series) => series !== 'AWG'),
  material: MATERIALS.filter((material) => material !== 'copper'),
  tempC: [60],
  insulationC: [60, 90],
  installed: INSTALLATIONS.filter((installed) => installed !== 'cable'),
  ambientC: [45],
  conductors: [9],
  duty: ['bursts'],
  counts: ['in each run'],
  joints: [0, 12],
  returns: ['chassis'],
  chassis: [7.5],
  fuseLimit: ['none'],
};

const OTHER_SUPPLY: readonly (readonly [SupplyKey, string | number])[] = [
  ...CHEMISTRIES.filter((chemistry) => chemistry !== 'lead-acid').map(
    (chemistry) => ['chemistry', chemistry] as const,
  ),
  ['ampHours', 40],
  ['lowCharge', 0.5],
  ['milliohms', 20],
  ['cells', 12],
  ['panelVolts', 34],
  ['coldestC', -30],
  ['sunHours', 5],
];

/** The demonstration, a run that would take a size that is not kept in stock, and one that returns through a chassis. */
const STEERED: StationContent = {
  ...DEMO,
  runs: [
    ...DEMO.runs,
    { run: 'Odd size', peak: 60, length: 14 },
    { run: 'Through the body', peak: 10, length: 14, returns: 'chassis' },
  ],
};

/** The battery stands in the first of the columns, the panel in the second. */
const placeOf = (key: SupplyKey) => (PANEL_KEYS.some((panelKey) => panelKey === key) ? 1 : 0);

describe('a cell that is typed over in a copy steers it', () => {
  const original = sharedCopy(STEERED, { rows: STEERED.runs.length }).plans;
  const before = stationValues(STEERED);

  interface Change {
    readonly told: string;
    readonly name: string;
    /** How many cells right of the first of that name. */
    readonly right?: number;
    readonly value: string | number;
    readonly content: StationContent;
  }
  const changes: readonly Change[] = [
    ...RULE_KEYS.flatMap((key) =>
      OTHER_RULES[key].map((value) => ({
        told: `${key} ${value}`,
        name: names.rule[key],
        value,
        content: { ...STEERED, rules: { ...STEERED.rules, [key]: value } },
      })),
    ),
    ...OTHER_SUPPLY.map(([key, value]) => ({
      told: `${key} ${value}`,
      name: names.supply[key],
      right: placeOf(key),
      value,
      content: {
        ...STEERED,
        sources: (STEERED.sources ?? []).map((source, place) =>
          place === placeOf(key) ? { ...source, [key]: value } : source,
        ),
      },
    })),
  ];

  /** The written sheets with a value typed into a named cell. */
  function typedOver({ name, right = 0, value }: Change): readonly SheetPlan[] {
    return original.map((plan) => {
      const named = plan.names.find((one) => one.name === name);
      return named === undefined
        ? plan
        : {
            ...plan,
            blocks: [
              ...plan.blocks,
              { area: area(named.area.row, named.area.column + right), cells: [[value]] },
            ],
          };
    });
  }

  it.each(changes.map((change) => [change.told, change] as const))('%s', (_, change) => {
    const comparison = compareCopy(change.content, typedOver(change));
    expect(toldDifferences(comparison.differences)).toEqual([]);
    expectOnTheSafeSide(comparison);
    const { runs, supply } = stationValues(change.content);
    expect({ runs, supply }).not.toEqual({ runs: before.runs, supply: before.supply });
  });
});
