/** The Supply sheet: the battery and panel behind a schedule, and what its loads take out of them day by day. */
import * as supply from '../../functions/parameters/supply';
import { area, areaAddress } from '../plan/area';
import { CAUTIONS, PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { callAddIn, type Call } from '../plan/formula';
import { HEADING_STYLE, PALETTE, SMALL_STYLE } from '../plan/palette';
import type { Block, CellContent, EntryPlan, SheetPlan } from '../plan/plan';
import { columnReferences } from '../schedule/layout';
import { perLayout, type Layout } from '../station/layout';
import type { DutyLoad, SupplyContent, SupplyValues } from '../station/supply';
import { SOURCE_COLUMNS, sourcesOf } from '../station/sources';
import { SUPPLY_KEYS, type SupplyKey } from '../station/supply-keys';
import { isKind, SECTIONS, SUPPLY_CELLS, type Section, type SupplyReferences } from './cells';
import { supplyHighlights } from './highlights';
import {
  COLUMN,
  DUTY,
  DUTY_HEADINGS,
  DUTY_PLACE,
  ROWS,
  SOURCE_WIDTH,
  supplyArea,
  supplyRow,
} from './layout';

const SECTION_TITLES: Readonly<Record<Section, string>> = {
  Source: 'Sources, one a column',
  Battery: 'Battery',
  Supply: 'Power supply, charger, alternator',
  Panel: 'Solar panel',
  Days: 'Day by day',
};
/** So wide that the sentences beside the sources, which run over to the right, are on the paper. */
const NOTE_WIDTH = 76;
const DUTY_LEAST_ROWS = 10;
const DUTY_SPARE_ROWS = 3;
const SOURCES = Array.from({ length: SOURCE_COLUMNS }, (_, source) => source);

/** What a cell computes in the column of a source; undefined where it is only typed. */
function cellFormula(key: SupplyKey, of: SupplyReferences): string | undefined {
  const { kinds, otherwise = '""', formula } = SUPPLY_CELLS[key];
  const computed = formula?.(of);
  if (computed === undefined) return undefined;
  return key === 'says'
    ? `=${computed}`
    : `=IF(${isKind(of.supply, kinds)},${computed},${otherwise})`;
}

/** The formulas of each cell, source by source. */
type CellFormulas = ReadonlyMap<SupplyKey, readonly (string | undefined)[]>;

/** Of every layout: by the rows of its duty table, with the add-in and without. */
const keptFormulas = perLayout(() => ({
  usual: new Map<number, CellFormulas>(),
  native: new Map<number, CellFormulas>(),
}));

function cellFormulas(layout: Layout, dutyRows: number, call: Call): CellFormulas {
  const kept = keptFormulas(layout)[call === callAddIn ? 'usual' : 'native'];
  let formulas = kept.get(dutyRows);
  if (formulas === undefined) {
    const dutyColumn = (column: number) =>
      areaAddress(area(ROWS.dutyFirst, column, dutyRows, 1), 'both');
    const duty = { means: dutyColumn(DUTY.mean), sources: dutyColumn(DUTY_PLACE) };
    const references = sourceReferences(layout, duty, call);
    formulas = new Map(
      SUPPLY_KEYS.map((key) => [key, references.map((of) => cellFormula(key, of))]),
    );
    kept.set(dutyRows, formulas);
  }
  return formulas;
}

function cellBlocks(
  key: SupplyKey,
  formulas: CellFormulas,
  typed: readonly SupplyValues[],
): Block[] {
  const { label, note, kind, style } = SUPPLY_CELLS[key];
  const contents = formulas.get(key)!.map((formula, source): CellContent => {
    const given = typed[source]?.[key];
    return given !== undefined || formula === undefined ? (given ?? null) : { formula };
  });
  const row = supplyRow(key);
  return [
    { area: area(row.row, COLUMN.label), cells: [[label]] },
    {
      area: row,
      cells: [contents],
      style: {
        border: 'all',
        ...style,
        align: 'left',
        ...(kind === 'computed' ? { bold: true } : { fill: PALETTE.input }),
      },
    },
    {
      area: area(row.row, COLUMN.note),
      cells: [[note]],
      style: { italic: true, fontColour: PALETTE.quietText },
    },
  ];
}

/** What the formulas of each source's column point at. */
function sourceReferences(
  layout: Layout,
  duty: SupplyReferences['duty'],
  call: Call,
): readonly SupplyReferences[] {
  const { names } = layout;
  const keyed = (point: (key: SupplyKey) => string) =>
    Object.fromEntries(SUPPLY_KEYS.map((key) => [key, point(key)])) as Record<SupplyKey, string>;
  const sources = keyed((key) => areaAddress(supplyRow(key), 'both'));
  const column = columnReferences(layout, true);
  return SOURCES.map((source) => ({
    call,
    supply: keyed((key) => areaAddress(supplyArea(key, source), 'row')),
    sources,
    place: String(source + 1),
    rule: names.rule,
    column,
    duty,
  }));
}

/** What a row of the duty table computes, from its first row on. */
function dutyFill(call: Call): readonly (string | null)[] {
  const row = ROWS.dutyFirst;
  const states = (from: number) => areaAddress(area(row, from, 1, DUTY.states));
  const cell = (column: number) => areaAddress(area(row, column));
  const whenNamed = (formula: string) => `=IF(${cell(DUTY.load)}="","",${formula})`;
  const [amps, shares] = [states(DUTY.amps), states(DUTY.shares)];
  const source = cell(DUTY.source);
  const place = `IF(${source}="",1,IFERROR(MATCH(TRIM(${source}),${areaAddress(supplyRow('name'), 'both')},0),0))`;
  const filled = new Map<number, string>([
    [DUTY_PLACE, whenNamed(place)],
    [DUTY.mean, whenNamed(call('DUTY_AMPS', amps, shares))],
    [DUTY.heating, whenNamed(call('HEATING_AMPS', amps, shares))],
    [DUTY.daily, whenNamed(`24*${cell(DUTY.mean)}`)],
  ]);
  return Array.from({ length: DUTY_PLACE + 1 }, (_, column) => filled.get(column) ?? null);
}

function dutyRow(duty: DutyLoad | undefined): CellContent[] {
  const three = (of: readonly (number | null)[] | undefined) =>
    Array.from({ length: DUTY.states }, (_, index) => of?.[index] ?? null);
  return [
    duty?.load ?? null,
    ...three(duty?.amps),
    ...three(duty?.shares),
    ...[DUTY.mean, DUTY.heating, DUTY.daily].map(() => null),
    duty?.source ?? null,
    null,
    null,
  ];
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
    { area: area(first, 0, rows, DUTY_PLACE + 1), cells, fill: dutyFill(call) },
    columns(DUTY.load, 1, { fill: PALETTE.input, numberFormat: '@' }),
    columns(DUTY.amps, DUTY.states, { fill: PALETTE.input, numberFormat: '0.0# "A"' }),
    columns(DUTY.shares, DUTY.states, { fill: PALETTE.input, numberFormat: '0 %' }),
    columns(DUTY.mean, 2, { numberFormat: '0.00 "A"', bold: true }),
    columns(DUTY.daily, 1, { numberFormat: '0.0 "Ah"', bold: true }),
    columns(DUTY.source, 1, { fill: PALETTE.input, numberFormat: '@' }),
    { area: area(ROWS.dutyHeader, DUTY_PLACE), cells: [['Source no']], style: SMALL_STYLE },
    columns(DUTY_PLACE, 1, SMALL_STYLE),
  ];
}

function entries(rows: number): EntryPlan[] {
  const typed = SUPPLY_KEYS.filter((key) => SUPPLY_CELLS[key].kind !== 'computed');
  return [
    ...typed.map((key) => {
      const { label, note, parameter } = SUPPLY_CELLS[key];
      return entry(supplyRow(key), { title: label, sentences: [note] }, { parameter });
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

/** The plan of the Supply sheet of a schedule; a call without the add-in is the one of its layout. */
export function supplySheet(
  layout: Layout,
  content: SupplyContent,
  call: Call = callAddIn,
): SheetPlan {
  const { names } = layout;
  const duty = content.duty ?? [];
  const dutyRows = Math.max(DUTY_LEAST_ROWS, duty.length + DUTY_SPARE_ROWS);
  const formulas = cellFormulas(layout, dutyRows, call);
  const sources = sourcesOf(content);
  const foot = ROWS.dutyFirst + dutyRows + 1;
  return {
    name: names.supplySheet,
    columnWidths: [38, ...SOURCES.map(() => SOURCE_WIDTH), 12, 12, NOTE_WIDTH],
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
      ...SUPPLY_KEYS.flatMap((key) => cellBlocks(key, formulas, sources)),
      ...dutyBlocks(duty, dutyRows, call),
      {
        area: area(foot, 0, CAUTIONS.length, 1),
        cells: CAUTIONS.map((caution) => [caution]),
        style: { italic: true, fontColour: PALETTE.quietText },
      },
    ],
    names: SUPPLY_KEYS.map((key) => ({ name: names.supply[key], area: supplyRow(key) })),
    entries: entries(dutyRows),
    highlights: supplyHighlights(dutyRows),
    notes: [],
    frozenRows: 1,
    frozenColumns: 1,
    rowHeightsPt: { 0: 24, [ROWS.dutyHeader]: 32 },
    print: {
      landscape: true,
      area: area(0, 0, foot + CAUTIONS.length, DUTY_HEADINGS.length + 1),
      footer: PRINT_FOOTER,
      pagesHigh: 2,
    },
  };
}
