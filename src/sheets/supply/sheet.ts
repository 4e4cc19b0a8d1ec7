/** The Supply sheet: the battery and panel behind a schedule, and what its loads take out of them day by day. */
import * as supply from '../../functions/parameters/supply';
import { area, areaAddress } from '../plan/area';
import { CAUTIONS, PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { callAddIn, type Call } from '../plan/formula';
import { HEADING_STYLE, PALETTE } from '../plan/palette';
import type { Block, CellContent, EntryPlan, SheetPlan } from '../plan/plan';
import { columnReferences } from '../schedule/layout';
import type { Layout } from '../station/layout';
import type { DutyLoad, SupplyContent, SupplyValues } from '../station/supply';
import { SUPPLY_KEYS, type SupplyKey } from '../station/supply-keys';
import { SUPPLY_CELLS, type SupplyReferences } from './cells';
import { supplyHighlights } from './highlights';
import { COLUMN, DUTY, DUTY_HEADINGS, ROWS, SECTIONS, supplyArea, type Section } from './layout';

const SECTION_TITLES: Readonly<Record<Section, string>> = {
  Battery: 'Battery',
  Panel: 'Solar panel',
  Days: 'Day by day',
};
const DUTY_LEAST_ROWS = 10;
const DUTY_SPARE_ROWS = 3;

function cellBlocks(key: SupplyKey, references: SupplyReferences, typed: SupplyValues): Block[] {
  const { label, note, kind, style, initial, formula } = SUPPLY_CELLS[key];
  const row = ROWS.cells.get(key)!;
  const computed = formula?.(references);
  const content: CellContent =
    typed[key] ?? (computed === undefined ? (initial ?? null) : { formula: `=${computed}` });
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

/** What a row of the duty table computes, from its first row on. */
function dutyFill(call: Call): readonly (string | null)[] {
  const row = ROWS.dutyFirst;
  const states = (from: number) => areaAddress(area(row, from, 1, DUTY.states));
  const cell = (column: number) => areaAddress(area(row, column));
  const whenNamed = (formula: string) => `=IF(${cell(DUTY.load)}="","",${formula})`;
  const [amps, shares] = [states(DUTY.amps), states(DUTY.shares)];
  const filled = new Map<number, string>([
    [DUTY.mean, whenNamed(call('DUTY_AMPS', amps, shares))],
    [DUTY.heating, whenNamed(call('HEATING_AMPS', amps, shares))],
    [DUTY.daily, whenNamed(`24*${cell(DUTY.mean)}`)],
  ]);
  return DUTY_HEADINGS.map((_, column) => filled.get(column) ?? null);
}

function dutyRow(duty: DutyLoad | undefined): CellContent[] {
  const three = (of: readonly (number | null)[] | undefined) =>
    Array.from({ length: DUTY.states }, (_, index) => of?.[index] ?? null);
  return [duty?.load ?? null, ...three(duty?.amps), ...three(duty?.shares)];
}

function dutyBlocks(duty: readonly DutyLoad[], rows: number, call: Call): Block[] {
  const first = ROWS.dutyFirst;
  const cells = Array.from({ length: rows }, (_, index) => dutyRow(duty[index]));
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
    { area: area(first, 0, rows, DUTY_HEADINGS.length), cells, fill: dutyFill(call) },
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
  call: Call = callAddIn,
): SheetPlan {
  const { names } = layout;
  const duty = content.duty ?? [];
  const dutyRows = Math.max(DUTY_LEAST_ROWS, duty.length + DUTY_SPARE_ROWS);
  const references: SupplyReferences = {
    call,
    supply: names.supply,
    rule: names.rule,
    column: columnReferences(layout, true),
    dutyMeans: areaAddress(area(ROWS.dutyFirst, DUTY.mean, dutyRows, 1), 'both'),
  };
  const foot = ROWS.dutyFirst + dutyRows + 1;
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
      ...SUPPLY_KEYS.flatMap((key) => cellBlocks(key, references, content.supply ?? {})),
      ...dutyBlocks(duty, dutyRows, call),
      {
        area: area(foot, 0, CAUTIONS.length, 1),
        cells: CAUTIONS.map((caution) => [caution]),
        style: { italic: true, fontColour: PALETTE.quietText },
      },
    ],
    names: SUPPLY_KEYS.map((key) => ({ name: names.supply[key], area: supplyArea(key) })),
    entries: entries(dutyRows),
    highlights: supplyHighlights(),
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
