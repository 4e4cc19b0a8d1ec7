/**
 * Sources that a list describes row by row: a file of its own, or a sheet beside the runs. What a column holds, its bounds
 * and its words come from the cells of the Supply sheet.
 */
import { nameKey } from '../core/feeder-tree';
import { isRefusal } from '../core/outcome';
import { readGiven } from '../functions/parameter';
import { SOURCE_KINDS } from '../sheets/station/source-kinds';
import { SOURCE_COLUMNS } from '../sheets/station/sources';
import type { SupplyValues } from '../sheets/station/supply';
import { SUPPLY_KEYS, type SupplyKey } from '../sheets/station/supply-keys';
import { SUPPLY_CELLS } from '../sheets/supply/cells';
import { habitOf, readNumeral, type NumeralHabit } from './numerals';
import { cellText, isEmpty, type RawCell, type RawRow, type RawTable } from './raw';
import type { RowProblem } from './problem';
import { plain } from '../core/units';

/** What a person types of a source. */
const TYPED_KEYS = SUPPLY_KEYS.filter((key) => SUPPLY_CELLS[key].kind !== 'computed');

/** What else people head these columns, in lower case without units. */
const ALSO: Readonly<Partial<Record<SupplyKey, string>>> = {
  name: 'name|source|source name',
  kind: 'kind|type|kind of source',
  volts: 'volts|voltage|source volts|nominal volts',
  ampHours: 'amp hours|amp-hours|ah|capacity',
  milliohms: 'milliohms|internal resistance|resistance',
  parallel: 'parallel|in parallel|batteries',
  packAmps: 'pack limit|pack amps|bms limit',
  mostAmps: 'most amps|max amps|maximum amps|output current',
  charges: 'charges|battery|battery on its output',
  chargeVolts: 'charge volts|charging volts|charging voltage',
  lowCharge: 'low charge',
  usable: 'usable|usable share',
  mainFuse: 'main fuse',
  shortCircuitAmps: 'isc|short circuit current',
  maximumPowerAmps: 'imp|maximum power current',
  panelVolts: 'vmp|maximum power volts',
  openCircuitVolts: 'voc|open circuit volts',
};

/** A heading without its unit. */
const bare = (heading: string) =>
  plain(heading)
    .replace(/[([].*?[)\]]/g, ' ')
    .replace(/,.*$/, '')
    .replace(/\s+/g, ' ')
    .trim();

const KEY_OF: ReadonlyMap<string, SupplyKey> = new Map(
  TYPED_KEYS.flatMap((key): [string, SupplyKey][] =>
    [bare(SUPPLY_CELLS[key].label), key.toLowerCase(), ...(ALSO[key]?.split('|') ?? [])].map(
      (heading) => [heading, key],
    ),
  ),
);

export interface SourceList {
  readonly sources: readonly SupplyValues[];
  readonly problems: readonly RowProblem[];
  /** Headings that were not understood. */
  readonly leftOver: readonly string[];
}

interface FoundHeadings {
  readonly table: RawTable;
  readonly headerIndex: number;
  readonly columns: readonly { readonly index: number; readonly key: SupplyKey }[];
  readonly leftOver: readonly string[];
}

function headingsIn(table: RawTable): FoundHeadings | undefined {
  for (const [headerIndex, { cells }] of table.rows.entries()) {
    const columns: { index: number; key: SupplyKey }[] = [];
    const leftOver: string[] = [];
    for (const [index, cell] of cells.entries()) {
      if (isEmpty(cell)) continue;
      const key = KEY_OF.get(bare(cellText(cell)));
      if (key === undefined || columns.some((column) => column.key === key)) {
        leftOver.push(cellText(cell));
      } else {
        columns.push({ index, key });
      }
    }
    const has = (key: SupplyKey) => columns.some((column) => column.key === key);
    if (has('name') && has('kind')) return { table, headerIndex, columns, leftOver };
  }
  return undefined;
}

/** Behind a number: a unit, which the column's heading says already. */
const UNIT_BEHIND = /^([+-]?[\d.,]+(?:e[+-]?\d+)?)\s*(%|°?[a-zωΩ]+)?$/i;

/** Units that count a thousand times as much or as little as the column does. */
const OTHER_SCALE = /^(?:mv|ma|kw|mah|ω|ohm|ohms|kv|ka)$/i;

/** A cell as the Supply sheet holds it, or why it cannot be used. */
function readCell(
  key: SupplyKey,
  cell: RawCell,
  habit: NumeralHabit,
): { readonly value: string | number; readonly doubt?: string } {
  const { parameter } = SUPPLY_CELLS[key];
  const text = cellText(cell);
  const judged = (value: string | number) => {
    const read = parameter === undefined ? value : readGiven(parameter, value);
    return isRefusal(read) ? { value, doubt: read.why } : { value };
  };
  const words = parameter?.choices;
  if (words !== undefined) {
    // In its own spelling, whatever case it came in.
    const word = words.find((choice) => choice.toLowerCase() === plain(text));
    return word === undefined
      ? { value: text, doubt: `"${text}" is not one of ${words.join(', ')}` }
      : { value: word };
  }
  const isNumber = parameter?.bounds !== undefined;
  let value: string | number = typeof cell.value === 'number' ? cell.value : text;
  if (isNumber && typeof value === 'string') {
    const [, digits = '', unit = ''] = UNIT_BEHIND.exec(text) ?? [];
    const number = digits === '' ? undefined : readNumeral(digits, habit);
    if (typeof number === 'object') return { value: text, doubt: number.doubt };
    if (number === undefined || OTHER_SCALE.test(unit)) {
      return { value: text, doubt: `"${text}" is not a number in the unit of this column` };
    }
    value = unit === '%' ? number / 100 : number;
    if (unit === '%') return judged(value);
  }
  // A bare share over 1 is per cent.
  const { most } = parameter?.bounds ?? {};
  if (most === 1 && typeof value === 'number' && value > 1 && value <= 100) value /= 100;
  return judged(value);
}

function readRow(
  found: FoundHeadings,
  row: RawRow,
  habit: NumeralHabit,
): { readonly source: SupplyValues; readonly doubts: readonly string[] } {
  const source: Partial<Record<SupplyKey, string | number>> = {};
  const doubts: string[] = [];
  for (const { index, key } of found.columns) {
    const cell = row.cells[index];
    if (cell === undefined || isEmpty(cell)) continue;
    const { value, doubt } = readCell(key, cell, habit);
    source[key] = value;
    if (doubt !== undefined) doubts.push(`${SUPPLY_CELLS[key].label}: ${doubt}`);
  }
  return { source, doubts };
}

const isKind = (text: string) => SOURCE_KINDS.some((kind) => kind === plain(text));

/** The same turned on its side, as the Supply sheet stands: a row a figure, a column a source, notes beside them. */
function turned(table: RawTable): RawTable {
  const widest = Math.min(
    SOURCE_COLUMNS + 2,
    Math.max(0, ...table.rows.map(({ cells }) => cells.length)),
  );
  const rows = Array.from({ length: widest }, (_, column) => ({
    line: column + 1,
    cells: table.rows.map(({ cells }) => cells[column] ?? { value: null }),
  }));
  const found = headingsIn({ ...table, rows });
  const kind = found?.columns.find(({ key }) => key === 'kind')?.index ?? 0;
  return {
    ...table,
    rows: rows.filter(
      ({ cells }, index) => index === found?.headerIndex || isKind(cellText(cells[kind])),
    ),
  };
}

/** The sources of the first of the tables that has a heading for their names and one for their kinds; undefined where none has. */
export function readSourceList(tables: readonly RawTable[]): SourceList | undefined {
  for (const table of tables.flatMap((one) => [one, turned(one)])) {
    const found = headingsIn(table);
    if (found === undefined) continue;
    const rows = table.rows
      .slice(found.headerIndex + 1)
      .filter(({ cells }) => found.columns.some(({ index }) => !isEmpty(cells[index])));
    const habit = habitOf(
      rows.flatMap(({ cells }) => cells.map(cellText).filter((text) => /^[+-]?[\d.,]+/.test(text))),
    );
    const read = rows.map((row) => ({ row, ...readRow(found, row, habit) }));
    const problem = (row: RawRow, why: string, taken: boolean): RowProblem => ({
      line: row.line,
      text: row.cells.map(cellText).join(' | '),
      why,
      taken,
    });
    return {
      sources: read.slice(0, SOURCE_COLUMNS).map(({ source }) => source),
      problems: [
        ...read.flatMap(({ row, doubts }) => doubts.map((why) => problem(row, why, true))),
        ...read
          .slice(SOURCE_COLUMNS)
          .map(({ row }) =>
            problem(row, `the Supply sheet has room for ${SOURCE_COLUMNS} sources`, false),
          ),
      ],
      leftOver: found.leftOver,
    };
  }
  return undefined;
}

/**
 * Sources that are only named: those of a list's own column. What is known of them is their names, so that the Supply
 * sheet asks for the rest.
 */
export function namedSources(
  names: readonly string[],
  described: readonly SupplyValues[],
): readonly SupplyValues[] {
  const taken = new Set(described.map(({ name }) => nameKey(String(name ?? ''))));
  const more: SupplyValues[] = [];
  for (const name of names) {
    const key = nameKey(name);
    if (key === '' || taken.has(key)) continue;
    taken.add(key);
    more.push({ name: name.trim() });
  }
  return [...described, ...more].slice(0, SOURCE_COLUMNS);
}
