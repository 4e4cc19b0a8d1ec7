/** The Supply sheet: the battery and panel behind a schedule, and what its loads take out of them day by day. */
import * as supply from '../../functions/parameters/supply';
import { area, areaAddress, type Area } from '../plan/area';
import { CAUTIONS, PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { call } from '../plan/formula';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import { HEADING_STYLE, PALETTE } from '../plan/palette';
import type { Block, CellContent, EntryPlan, SheetPlan } from '../plan/plan';
import { columnReferences, type Layout } from '../schedule/layout';
import { SUPPLY_CELLS, SUPPLY_KEYS, type SupplyKey, type SupplyReferences } from './cells';
import { formulaOf } from '../evaluate';
import type { DutyLoad, SupplyValues } from '../station/supply';
import type { DutyValues, SupplyResult } from '../supply-values';
import type { ResultCell } from '../../functions/cell';

const SECTIONS = ['Battery', 'Panel', 'Days'] as const;
const SECTION_TITLES: Readonly<Record<(typeof SECTIONS)[number], string>> = {
  Battery: 'Battery',
  Panel: 'Solar panel',
  Days: 'Day by day',
};
const COLUMN = { label: 0, value: 1, note: 2 } as const;
const FIRST_ROW = 2;

/** Headings of the duty table, by which a reader finds it again. */
export const DUTY_HEADINGS = [
  'Load',
  'Sending, A',
  'Receiving, A',
  'Standing by, A',
  'Share sending',
  'Share receiving',
  'Share standing by',
  'Mean current',
  'Heating current',
  'Drawn a day',
] as const;
export const DUTY = {
  load: 0,
  amps: 1,
  shares: 4,
  states: 3,
  mean: 7,
  heating: 8,
  daily: 9,
} as const;
const DUTY_LEAST_ROWS = 10;
const DUTY_SPARE_ROWS = 3;

/** Formulas of a duty row; a workbook that needs no add-in brings its own. */
export interface DutyFormulas {
  mean(amps: string, shares: string): string;
  heating(amps: string, shares: string): string;
}

const DUTY_FORMULAS: DutyFormulas = {
  mean: (amps, shares) => call('DUTY_AMPS', amps, shares),
  heating: (amps, shares) => call('HEATING_AMPS', amps, shares),
};

/** Formulas of the Supply sheet's cells that replace the usual ones. */
export type SupplyFormulas = Readonly<
  Partial<Record<SupplyKey, (references: SupplyReferences) => string>>
>;

/** What a workbook without the add-in brings: its formulas, and the values that they come to. */
export interface SupplyVariant {
  readonly cells?: SupplyFormulas;
  readonly duty?: DutyFormulas;
  readonly values?: SupplyResult;
}

export interface SupplyContent {
  readonly supply?: SupplyValues;
  readonly duty?: readonly DutyLoad[];
}

/** Zero-based rows of the sections and their cells, from the order of the table. */
const ROWS = (() => {
  const titles = new Map<(typeof SECTIONS)[number], number>();
  const cells = new Map<SupplyKey, number>();
  let row = FIRST_ROW;
  for (const section of SECTIONS) {
    titles.set(section, row++);
    for (const key of SUPPLY_KEYS) {
      if (SUPPLY_CELLS[key].section === section) cells.set(key, row++);
    }
    row += 1;
  }
  return { titles, cells, dutyTitle: row, dutyHeader: row + 1, dutyFirst: row + 2 };
})();

function supplyArea(key: SupplyKey): Area {
  return area(ROWS.cells.get(key)!, COLUMN.value);
}

function cellBlocks(
  key: SupplyKey,
  references: SupplyReferences,
  typed: SupplyValues,
  { cells, values }: SupplyVariant,
): Block[] {
  const { label, note, kind, style, initial, formula } = SUPPLY_CELLS[key];
  const row = ROWS.cells.get(key)!;
  const computed = (cells?.[key] ?? formula)?.(references);
  const content: CellContent =
    typed[key] ??
    (computed === undefined ? (initial ?? null) : formulaOf(computed, values?.cells[key]));
  return [
    { area: area(row, COLUMN.label), cells: [[label]] },
    {
      area: area(row, COLUMN.value),
      cells: [[content]],
      style: {
        border: 'all',
        ...style,
        align: 'left',
        ...(kind === 'computed' ? { bold: true } : { fill: PALETTE.input }),
      },
    },
    {
      area: area(row, COLUMN.note),
      cells: [[note]],
      style: { italic: true, fontColour: PALETTE.quietText },
    },
  ];
}

function dutyRow(
  duty: DutyLoad | undefined,
  row: number,
  formulas: DutyFormulas,
  values: DutyValues | undefined,
): CellContent[] {
  const amps = areaAddress(area(row, DUTY.amps, 1, DUTY.states));
  const shares = areaAddress(area(row, DUTY.shares, 1, DUTY.states));
  const name = areaAddress(area(row, DUTY.load));
  const mean = areaAddress(area(row, DUTY.mean));
  const whenNamed = (formula: string, value: ResultCell | undefined) =>
    formulaOf(`IF(${name}="","",${formula})`, value);
  const three = (of: readonly (number | null)[] | undefined) =>
    Array.from({ length: DUTY.states }, (_, index) => of?.[index] ?? null);
  return [
    duty?.load ?? null,
    ...three(duty?.amps),
    ...three(duty?.shares),
    whenNamed(formulas.mean(amps, shares), values?.mean),
    whenNamed(formulas.heating(amps, shares), values?.heating),
    whenNamed(`24*${mean}`, values?.daily),
  ];
}

function dutyBlocks(
  duty: readonly DutyLoad[],
  rows: number,
  { duty: formulas = DUTY_FORMULAS, values }: SupplyVariant,
): Block[] {
  const first = ROWS.dutyFirst;
  const cells = Array.from({ length: rows }, (_, index) =>
    dutyRow(duty[index], first + index, formulas, values?.duty[index]),
  );
  const columns = (from: number, count: number, style: Block['style']): Block => ({
    area: area(first, from, rows, count),
    style: { border: 'all', ...style },
  });
  return [
    {
      area: area(ROWS.dutyTitle, 0),
      cells: [['How each load spends its time (the rest it is off)']],
      style: { bold: true, fontColour: PALETTE.title },
    },
    {
      area: area(ROWS.dutyHeader, 0, 1, DUTY_HEADINGS.length),
      cells: [DUTY_HEADINGS],
      style: HEADING_STYLE,
    },
    { area: area(first, 0, rows, DUTY_HEADINGS.length), cells },
    columns(DUTY.load, 1, { fill: PALETTE.input, numberFormat: '@' }),
    columns(DUTY.amps, DUTY.states, { fill: PALETTE.input, numberFormat: '0.0# "A"' }),
    columns(DUTY.shares, DUTY.states, { fill: PALETTE.input, numberFormat: '0 %' }),
    columns(DUTY.mean, 2, { numberFormat: '0.00 "A"', bold: true }),
    columns(DUTY.daily, 1, { numberFormat: '0.0 "Ah"', bold: true }),
  ];
}

function entries(rows: number): EntryPlan[] {
  const typed = SUPPLY_KEYS.filter((key) => SUPPLY_CELLS[key].kind !== 'computed');
  return [
    ...typed.map((key) => {
      const { label, note, parameter } = SUPPLY_CELLS[key];
      return entry(supplyArea(key), { title: label, sentences: [note] }, { parameter });
    }),
    entry(
      area(ROWS.dutyFirst, DUTY.amps, rows, DUTY.states),
      { title: 'Current in this state', sentences: [supply.stateAmps.meaning] },
      { parameter: supply.stateAmps },
    ),
    entry(
      area(ROWS.dutyFirst, DUTY.shares, rows, DUTY.states),
      { title: 'Share of its time', sentences: [supply.share.meaning] },
      { parameter: supply.share },
    ),
  ];
}

/** The plan of the Supply sheet of a schedule. */
export function supplySheet(
  layout: Layout,
  content: SupplyContent,
  variant: SupplyVariant = {},
): SheetPlan {
  const { names } = layout;
  const duty = content.duty ?? [];
  const dutyRows = Math.max(DUTY_LEAST_ROWS, duty.length + DUTY_SPARE_ROWS);
  const references: SupplyReferences = {
    supply: names.supply,
    column: columnReferences(layout, true),
    dutyMeans: areaAddress(area(ROWS.dutyFirst, DUTY.mean, dutyRows, 1), 'both'),
  };
  const foot = ROWS.dutyFirst + dutyRows + 1;
  const balance = areaAddress(supplyArea('dailyBalance'), 'both');
  const short = (key: SupplyKey) => ({
    area: supplyArea(key),
    formula: `IF(ISNUMBER(${areaAddress(supplyArea(key), 'both')}),${areaAddress(supplyArea(key), 'both')}>0,TRUE)`,
    style: HIGHLIGHT_STYLES.over,
    meaning: 'loads with too few volts',
  });
  return {
    name: names.supplySheet,
    columnWidths: [38, 14, 12, 12, 11, 11, 11, 11, 11, 11],
    blocks: [
      {
        area: area(0, 0),
        cells: [['Supply']],
        style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
      },
      {
        area: area(0, 2),
        cells: [[`What feeds the runs of "${names.sheet}". Fill in the green cells.`]],
        style: { italic: true, fontColour: PALETTE.quietText },
      },
      ...SECTIONS.map((section): Block => ({
        area: area(ROWS.titles.get(section)!, 0),
        cells: [[SECTION_TITLES[section]]],
        style: { bold: true, fontColour: PALETTE.title },
      })),
      ...SUPPLY_KEYS.flatMap((key) => cellBlocks(key, references, content.supply ?? {}, variant)),
      ...dutyBlocks(duty, dutyRows, variant),
      {
        area: area(foot, 0, CAUTIONS.length, 1),
        cells: CAUTIONS.map((caution) => [caution]),
        style: { italic: true, fontColour: PALETTE.quietText },
      },
    ],
    names: SUPPLY_KEYS.map((key) => ({ name: names.supply[key], area: supplyArea(key) })),
    entries: entries(dutyRows),
    highlights: [
      short('fullShort'),
      short('lowShort'),
      {
        area: supplyArea('dailyBalance'),
        formula: `IF(ISNUMBER(${balance}),${balance}<0,TRUE)`,
        style: HIGHLIGHT_STYLES.over,
        meaning: 'the battery runs down day by day',
      },
    ],
    notes: [],
    frozenRows: 1,
    frozenColumns: 0,
    rowHeightsPt: { 0: 24, [ROWS.dutyHeader]: 32 },
    print: {
      landscape: true,
      area: area(0, 0, foot + CAUTIONS.length, DUTY_HEADINGS.length),
      footer: PRINT_FOOTER,
    },
  };
}
