/** What a shared workbook carries in its named cells: house rules, supply, protection; and the duty table. */
import { FORMER_DUTY_HEADINGS } from '../sheets/station/former';
import { RULE_KEYS, type RuleKey } from '../sheets/station/house-rules';
import type { DutyLoad } from '../sheets/station/supply';
import { fusesIn, type FusesByPlace } from './fuses';
import { extrasIn, type ExtrasRead } from './extras';
import type { Typed } from './labelled';
import { cellText, isEmpty, type RawCell, type RawTable } from './raw';
import type { Book } from './xlsx/book';
import { placeOf } from './xlsx/place';
import type { ProtectionTyped } from '../sheets/station/protection';
import { SOURCE_COLUMNS, supplyContent } from '../sheets/station/sources';
import { SUPPLY_KEYS, type SupplyKey } from '../sheets/station/supply-keys';
import { DUTY, DUTY_HEADINGS } from '../sheets/supply/layout';

export type GivenRules = Typed<RuleKey>;
export type GivenSupply = Typed<SupplyKey>;

/** Cells of the Protection sheet that a person types. */
export const PROTECTION_TYPED = [
  'startC',
  'limitC',
  'fuseKind',
  'weakTimes',
  'surgeS',
] as const satisfies readonly (keyof ProtectionTyped)[];

export interface GivenStation {
  readonly rules: GivenRules;
  readonly supply: GivenSupply;
  readonly sources?: readonly GivenSupply[];
  readonly protection: ProtectionTyped;
  /** Of the runs, by their places under the headings of the schedule. */
  readonly fuses: FusesByPlace;
  readonly duty: readonly DutyLoad[];
  /** What is said on the sheets that stand where they are wanted. */
  readonly extras: ExtrasRead;
}

interface NamedCell {
  /** The name without the number of its schedule. */
  readonly key: string;
  readonly number: string;
  readonly sheetName: string;
  /** The first of its cells, and all of its row. */
  readonly cell: RawCell;
  readonly cells: readonly RawCell[];
}

/** The stems, numbers and keys of the names that a schedule gives its cells. */
const OUR_NAME = /^Loom(Schedule|Rules|Supply|Protection)(\d*)_(\w+)$/i;
/** A sheet, its first cell and its last, of the first area that a name stands for. */
const PLACE = /^('(?:[^']|'')+'|[^!,']+)!([$A-Z\d]+)(?::([$A-Z\d]+))?(?:,|$)/i;

function namedCells(
  { names, tables }: Book,
  stem: 'schedule' | 'rules' | 'supply' | 'protection',
): readonly NamedCell[] {
  return names.flatMap(({ name, refersTo }): NamedCell[] => {
    const [, ourStem = '', number = '', key = ''] = OUR_NAME.exec(name) ?? [];
    const [, quoted = '', from = '', to = from] = PLACE.exec(refersTo) ?? [];
    const sheetName = quoted.replace(/^'|'$/g, '').replaceAll("''", "'");
    const sheet = tables.find((table) => table.sheetName === sheetName);
    const [first, last] = [placeOf(from), placeOf(to)];
    if (ourStem.toLowerCase() !== stem || sheet === undefined || first === undefined) return [];
    const row = sheet.rows.find(({ line }) => line === first.row + 1);
    const columns = Math.min(SOURCE_COLUMNS, (last?.column ?? 0) - first.column + 1);
    const cells = Array.from(
      { length: Math.max(1, columns) },
      (_, index): RawCell => row?.cells[first.column + index] ?? { value: null },
    );
    return [{ key: key.toLowerCase(), number, sheetName, cell: cells[0]!, cells }];
  });
}

/** What a person typed into named cells; one that still follows its formula says nothing. */
function typedIn<Key extends string>(
  cells: readonly NamedCell[],
  keys: readonly Key[],
): Typed<Key> {
  const typed: Partial<Record<Key, string | number>> = {};
  for (const { key: lower, cell } of cells) {
    const key = keys.find((candidate) => candidate.toLowerCase() === lower);
    if (key === undefined || cell.computed === true || isEmpty(cell)) continue;
    typed[key] = typeof cell.value === 'number' ? cell.value : cellText(cell);
  }
  return typed;
}

/** The sources of a Supply sheet; an old one has a column for all. */
function sourcesIn(named: readonly NamedCell[]): Pick<GivenStation, 'supply' | 'sources'> {
  if (!named.some(({ key }) => key === 'kind')) return { supply: typedIn(named, SUPPLY_KEYS) };
  const columns = Array.from({ length: SOURCE_COLUMNS }, (_, source) =>
    typedIn(
      named.flatMap(({ cells, ...others }) => {
        const cell = cells[source];
        return cell === undefined ? [] : [{ ...others, cell, cells }];
      }),
      SUPPLY_KEYS,
    ),
  );
  const { supply = {}, sources } = supplyContent(columns);
  return { supply, ...(sources && { sources }) };
}

/** Whatever is not a number of the duty table counts as nothing said. */
function numbers(cells: readonly RawCell[], from: number): readonly (number | null)[] {
  return Array.from({ length: DUTY.states }, (_, index) => {
    const value = cells[from + index]?.value;
    return typeof value === 'number' ? value : null;
  });
}

/** The duty table of a Supply sheet. */
export function dutyIn(table: RawTable | undefined): readonly DutyLoad[] {
  const headings = [
    DUTY_HEADINGS,
    DUTY_HEADINGS.slice(0, FORMER_DUTY_HEADINGS.length),
    FORMER_DUTY_HEADINGS,
  ];
  const rows = table?.rows ?? [];
  const header = rows.findIndex(({ cells }) =>
    headings.some((texts) => texts.every((text, column) => cellText(cells[column]) === text)),
  );
  if (header < 0) return [];
  const duty: DutyLoad[] = [];
  let line = rows[header]!.line;
  for (const row of rows.slice(header + 1)) {
    line += 1;
    const amps = numbers(row.cells, DUTY.amps);
    const shares = numbers(row.cells, DUTY.shares);
    const isSaid = [...amps, ...shares].some((number) => number !== null);
    // The table ends where a row of the sheet is empty; the cautions follow.
    if (row.line !== line) break;
    if (isSaid || !isEmpty(row.cells[DUTY.load])) {
      const source = isEmpty(row.cells[DUTY.source]) ? '' : cellText(row.cells[DUTY.source]);
      duty.push({
        load: cellText(row.cells[DUTY.load]),
        amps,
        shares,
        ...(source !== '' && { source }),
      });
    }
  }
  return duty;
}

/** What the workbook says of the schedule on a sheet beyond its runs; nothing where the sheet has no names of ours. */
export function readStation(book: Book, sheetName: string): GivenStation {
  const { tables } = book;
  const allRules = namedCells(book, 'rules');
  // Old schedules have their rules on the same sheet, and no name of their own.
  const number = [...namedCells(book, 'schedule'), ...allRules].find(
    (named) => named.sheetName === sheetName,
  )?.number;
  const ofSchedule = (named: NamedCell) => named.number === number;
  const ruleCells = allRules.filter(ofSchedule);
  const supplyCells = namedCells(book, 'supply').filter(ofSchedule);
  const protectionCells = namedCells(book, 'protection').filter(ofSchedule);
  const supplyTable = tables.find((table) => table.sheetName === supplyCells[0]?.sheetName);
  const protectionTable = tables.find((table) => table.sheetName === protectionCells[0]?.sheetName);
  return {
    rules: typedIn(ruleCells, RULE_KEYS),
    ...sourcesIn(supplyCells),
    protection: typedIn(protectionCells, PROTECTION_TYPED),
    fuses: fusesIn(protectionTable),
    duty: dutyIn(supplyTable),
    extras: extrasIn(tables, sheetName),
  };
}
