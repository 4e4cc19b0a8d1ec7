/**
 * Lists of runs from files: a shared workbook of ours, any workbook with a list in it, or a text of values. Nothing is
 * changed anywhere; the report says what was understood, so that a person can look before anything is inserted.
 */
import type { LengthUnit } from '../core/length';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import type { ExtrasContent } from '../sheets/station/content';
import type { ScheduleRun } from '../sheets/station/run';
import { readCsv, SEPARATORS } from './csv';
import { decodeText } from './decode';
import { withExtrasOf } from './extras';
import { NO_FUSES, withFuses } from './fuses';
import { UnusableMap, type ColumnMap } from './column-map';
import { RUN_COLUMNS, saysBothWays } from './headings';
import { ruleUnit, usualUnit } from './length-unit';
import { cellText, isEmpty } from './raw';
import { readStation, type GivenRules, type GivenStation, type GivenSupply } from './rules';
import { supplyContent, sourcesOf } from '../sheets/station/sources';
import type { RawTable } from './raw';
import type { RowProblem } from './problem';
import { readRows } from './runs';
import { readSourceList, type SourceList } from './source-list';
import { nearestName } from './nearest-name';
import { valuesOf } from './run-names';
import { agrees, questionsOf, someValues, type ColumnQuestion } from './questions';
import { bodyOf, findList, hasRuns, likeliestList, type FoundList } from './table';
import type { TypedColumn } from './list-columns';
import { asLengthUnit, plain } from '../core/units';
import { quotedName, UnreadableFile } from './unreadable';
import { openWorkbook, told } from './workbook';
import type { Book } from './xlsx/book';

export type { GivenRules, GivenSupply } from './rules';
export { readColumnMap, UnusableMap } from './column-map';
export type { ColumnQuestion } from './questions';
export type { RowProblem } from './problem';
export { UnreadableFile } from './unreadable';

/** A heading of the file, and what it was taken for. */
export interface UnderstoodColumn {
  readonly heading: string;
  /** Heading of the schedule's column. */
  readonly as: string;
  /** Unit of its figures, where they have one. */
  readonly unit?: string;
}

/** A column that is not among the runs. */
export interface LeftOverColumn {
  readonly heading: string;
  /** Up to three of its values. */
  readonly values: readonly string[];
  readonly why: string;
}

/** With the sheets beyond the sizing that the file has, and what is said on them. */
export interface RunsReport extends ExtrasContent {
  readonly runs: readonly ScheduleRun[];
  /** House rules that the file carries, or that its headings imply. */
  readonly rules: GivenRules;
  /** Battery, panel, duty and protection, where the file carries their sheets. */
  readonly supply: GivenStation['supply'];
  /** Every source by itself, where there are others than one battery and one panel. */
  readonly sources?: readonly GivenSupply[];
  readonly duty: GivenStation['duty'];
  readonly protection: GivenStation['protection'];
  /** What a shared schedule is called. */
  readonly title?: string;
  /** The unit that every length among the runs is in. */
  readonly lengthUnit: LengthUnit;
  readonly understood: readonly UnderstoodColumn[];
  /** Columns of ours that are computed anew. */
  readonly computedAnew: readonly string[];
  readonly leftOver: readonly LeftOverColumn[];
  /** Columns that would be lost, for a person to say what they are. */
  readonly questions: readonly ColumnQuestion[];
  /** There are several runs, and no column says what feeds them. */
  readonly lacksFeeders: boolean;
  /** Rows that could not be read, and rows taken with something in them to look at. */
  readonly problems: readonly RowProblem[];
  /** What else was made of the file, in sentences. */
  readonly remarks: readonly string[];
}

export interface ReadOptions {
  /** Unit that lengths are wanted in; else the file's own, or the schedule's usual one. */
  readonly lengthUnit?: LengthUnit;
  /** Sources from a file of their own. */
  readonly sources?: readonly GivenSupply[];
  /** What a person says of columns. */
  readonly columns?: ColumnMap;
}

/** Most runs of one list; each is a row of some forty cells. */
export const MOST_RUNS = 5000;
const MOST_BYTES = 30_000_000;

const ZIP = [0x50, 0x4b, 0x03, 0x04];
/** The container of .xls and of workbooks under a password. */
const OLE = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

function startsWith(bytes: Uint8Array, mark: readonly number[]): boolean {
  return mark.every((byte, at) => bytes[at] === byte);
}

/** A file that is open, to be read as often as a person says something else of its columns. */
export interface OpenFile {
  /** Throws UnreadableFile, or UnusableMap where what was said of its columns cannot be. */
  read(columns?: ColumnMap): RunsReport;
}

/** A list may be there, and none of its headings is a load or a length; the questions say what headings there are. */
export class UnreadHeadings extends UnreadableFile {
  constructor(
    message: string,
    readonly questions: readonly ColumnQuestion[],
  ) {
    super(message);
  }
}

/** Reads the list of runs in a file. Throws UnreadableFile, whose message says in a sentence why there is none. */
export async function readRuns(
  bytes: Uint8Array,
  fileName: string,
  options: ReadOptions = {},
): Promise<RunsReport> {
  return (await openRuns(bytes, fileName, options)).read(options.columns);
}

/** Opens a file with a list of runs. Throws UnreadableFile. */
export async function openRuns(
  bytes: Uint8Array,
  fileName: string,
  options: ReadOptions = {},
): Promise<OpenFile> {
  checkFile(bytes, fileName);
  const open = startsWith(bytes, ZIP) ? openSheets : openText;
  return await open(bytes, fileName, options);
}

/** The list of some tables, as a person says of its columns. */
function listIn(tables: readonly RawTable[], fileName: string, said?: ColumnMap): FoundList {
  const list = likeliestList(tables, said);
  if (list === undefined) throw new UnreadableFile(noListSentence(fileName));
  const names = list.headings.flatMap(({ heading, above }) => [heading, above ?? heading]);
  const known = new Set(names.map(plain));
  const unknown = [...(said?.keys() ?? [])].find((heading) => !known.has(heading));
  if (unknown !== undefined) {
    const nearest = nearestName(unknown, names);
    const hint = nearest === undefined ? '' : `; did you mean "${nearest}"?`;
    throw new UnusableMap(
      `${quotedName(fileName)} has no column "${unknown}"${hint}${hint === '' ? '.' : ''} Its columns are ${list.headings.map(({ heading }) => `"${heading}"`).join(', ')}.`,
    );
  }
  if (!hasRuns(list)) {
    throw new UnreadHeadings(noListSentence(fileName), questionsOf(list));
  }
  return list;
}

function checkFile(bytes: Uint8Array, fileName: string): void {
  const name = quotedName(fileName);
  if (bytes.length === 0) throw new UnreadableFile(`${name} is empty.`);
  if (bytes.length > MOST_BYTES) {
    throw new UnreadableFile(
      `${name} has ${Math.round(bytes.length / 1e6)} MB; a list of runs has at most ${MOST_BYTES / 1e6} MB.`,
    );
  }
  if (startsWith(bytes, OLE)) throw new UnreadableFile(oleSentence(bytes, name));
}

function oleSentence(bytes: Uint8Array, name: string): string {
  // The names in such a container are UTF-16; an encrypted workbook stands in a part called so.
  const text = new TextDecoder('utf-16le').decode(bytes.subarray(0, bytes.length & ~1));
  return text.includes('EncryptedPackage')
    ? `${name} is locked with a password. Open it, save a copy without the password, and take that in.`
    : `${name} is in the format of old spreadsheets (.xls). Save it as .xlsx and take that in.`;
}

/** Reads the sources that a file describes, row by row or column by column. Throws UnreadableFile. */
export async function readSources(bytes: Uint8Array, fileName: string): Promise<SourceList> {
  checkFile(bytes, fileName);
  const tables = startsWith(bytes, ZIP)
    ? (await openWorkbook(bytes, fileName)).tables
    : await separated(decodeText(bytes, fileName).text, fileName);
  const list = readSourceList(tables);
  if (list === undefined) {
    throw new UnreadableFile(
      `${quotedName(fileName)} describes no sources that could be found: headings are needed, "Name" and "Kind" among them.`,
    );
  }
  return list;
}

async function openSheets(
  bytes: Uint8Array,
  fileName: string,
  options: ReadOptions,
): Promise<OpenFile> {
  const book = await openWorkbook(bytes, fileName);
  return { read: (said) => readSheets(book, fileName, options, said) };
}

/** A text of values by each of the usual separators. Throws UnreadableFile. */
function separated(text: string, fileName: string): Promise<readonly RawTable[]> {
  return told(fileName, () => SEPARATORS.map((separator) => readCsv(text, separator)));
}

function readSheets(
  book: Book,
  fileName: string,
  options: ReadOptions,
  said?: ColumnMap,
): RunsReport {
  const { tables } = book;
  const list = listIn(tables, fileName, said);
  const sheetName = list.table.sheetName ?? '';
  const others = tables.filter((table) => table !== list.table && findList([table]) !== undefined);
  const own = readStation(book, sheetName);
  const station = withSources(
    own,
    options,
    list.ours ? [] : tables.filter((table) => table !== list.table),
  );
  const first = list.table.rows[0];
  const title =
    list.ours &&
    first?.line === 1 &&
    list.headerIndex > 0 &&
    typeof first.cells[0]?.value === 'string'
      ? { title: first.cells[0].value }
      : {};
  return {
    ...report(fileName, list, station, options, [
      `Read from the sheet "${sheetName}".`,
      ...others.map(
        ({ sheetName: other = '' }) => `The sheet "${other}" has a list too; it was not read.`,
      ),
    ]),
    ...title,
  };
}

async function openText(
  bytes: Uint8Array,
  fileName: string,
  options: ReadOptions,
): Promise<OpenFile> {
  const { text, encoding } = decodeText(bytes, fileName);
  if (text.trim() === '')
    throw new UnreadableFile(`${quotedName(fileName)} holds nothing but blanks.`);
  const tables = await separated(text, fileName);
  return {
    read: (said) =>
      report(
        fileName,
        listIn(tables, fileName, said),
        withSources(
          { rules: {}, supply: {}, duty: [], protection: {}, fuses: NO_FUSES, extras: {} },
          options,
        ),
        options,
        encoding === undefined ? [] : [`Its characters were read as ${encoding}.`],
      ),
  };
}

/** Sources from a file of their own, or from a sheet beside the list. */
function withSources(
  station: GivenStation,
  { sources }: ReadOptions,
  others: readonly RawTable[] = [],
): GivenStation {
  if (sources !== undefined) return { ...station, ...supplyContent(sources) };
  const beside = readSourceList(others);
  return beside === undefined ? station : { ...station, ...supplyContent(beside.sources) };
}

function noListSentence(fileName: string): string {
  return (
    `${quotedName(fileName)} has no list of runs that could be found: ` +
    'a row of headings is needed, with at least a load ("Amps", "Current (A)", "Power (W)") or a length ("Length (m)", "One-way ft").'
  );
}

/** Said where several runs have no column of feeders. */
export const NO_FEEDERS = `No column is "${SCHEDULE_COLUMNS.fedFrom.heading}": every run is taken to start at the source, none at another run.`;

function report(
  fileName: string,
  found: FoundList,
  { rules, supply, sources, duty, protection, fuses, extras }: GivenStation,
  options: ReadOptions,
  remarks: readonly string[],
): RunsReport {
  const list = withoutEchoes(found);
  const rows = bodyOf(list);
  const filled = rows.filter((row) =>
    row.cells.some((cell) => !isEmpty(cell) && cell.computed !== true),
  );
  if (filled.length > MOST_RUNS) {
    throw new UnreadableFile(
      `${quotedName(fileName)} lists ${filled.length} runs; at most ${MOST_RUNS} are taken at a time. Nothing was taken.`,
    );
  }
  if (filled.length === 0) {
    throw new UnreadableFile(`${quotedName(fileName)} has headings and no runs under them.`);
  }
  const units = lengthUnits(list, rules, options);
  const {
    runs,
    places,
    problems,
    columns,
    remarks: readAs,
    ...read
  } = readRows(list, units, sourcesOf({ supply, ...(sources && { sources }) }));
  const lacksFeeders = runs.length > 1 && !columns.some(({ key }) => key === 'fedFrom');
  // A list may name sources of which nothing else is known yet.
  const given = supplyContent(read.sources);
  const named = read.sources.filter((source) => Object.keys(source).join() === 'name');
  return {
    runs,
    rules: { ...rules, unit: units.wanted },
    supply: given.supply ?? {},
    ...(given.sources === undefined ? {} : { sources: given.sources }),
    duty,
    protection: withFuses(protection, fuses, places, runs),
    ...withExtrasOf(extras, places, runs),
    lengthUnit: units.wanted,
    understood: columns.map((column) => understood(column, units.given)),
    computedAnew: list.computed,
    leftOver: list.leftOver.map(({ heading, why, index }) => ({
      heading,
      values: someValues(index, rows),
      why,
    })),
    questions: questionsOf(list),
    lacksFeeders,
    problems,
    remarks: [
      ...remarks,
      ...list.remarks,
      ...units.remarks,
      ...columnRemarks(list),
      ...readAs,
      ...(named.length === 0
        ? []
        : [
            `Named as sources, to be described on the Supply sheet: ${named.map(({ name }) => name).join(', ')}.`,
          ]),
      ...(lacksFeeders ? [NO_FEEDERS] : []),
    ],
  };
}

/** Nothing is lost by a column whose figures are those of another. */
function withoutEchoes(list: FoundList): FoundList {
  const leftOver = list.leftOver.map((column) =>
    agrees(column, list)
      ? { ...column, why: `${column.why} in every row`, needless: true }
      : column,
  );
  return { ...list, leftOver };
}

interface LengthUnits {
  readonly given: LengthUnit;
  readonly wanted: LengthUnit;
  readonly remarks: readonly string[];
}

/** Which unit lengths come in, and which they are wanted in. */
function lengthUnits(list: FoundList, rules: GivenRules, options: ReadOptions): LengthUnits {
  const column = list.columns.find(({ key }) => key === 'length');
  const byHeading = column?.unit;
  const byRule = ruleUnit(rules.unit);
  const own = byHeading === undefined ? undefined : asLengthUnit(byHeading);
  const usual = usualUnit();
  const given = own ?? byRule ?? options.lengthUnit ?? usual;
  const wanted = options.lengthUnit ?? byRule ?? own ?? usual;
  if (column === undefined) return { given, wanted, remarks: [] };
  if (byHeading === undefined && byRule === undefined) {
    // Figures that all say their own unit leave nothing to take them for.
    const isBare = valuesOf(column.index, bodyOf(list)).some((text) => /^[\d.,]+$/.test(text));
    if (!isBare) return { given, wanted, remarks: [] };
    return {
      given,
      wanted,
      remarks: [`"${column.heading}" names no unit; its figures were taken for ${given}.`],
    };
  }
  const label = byHeading?.label ?? given;
  const converted = label === wanted ? [] : [`Lengths were converted from ${label} to ${wanted}.`];
  return { given, wanted, remarks: converted };
}

function understood(column: TypedColumn, givenLength: LengthUnit): UnderstoodColumn {
  const unit =
    column.unit?.label ??
    (RUN_COLUMNS[column.key].quantities.includes('length') ? givenLength : USUAL_UNITS[column.key]);
  return {
    heading: column.heading,
    as: SCHEDULE_COLUMNS[column.key].heading,
    ...(unit === undefined ? {} : { unit }),
  };
}

/** What bare figures are taken for. */
const USUAL_UNITS: Readonly<Partial<Record<TypedColumn['key'], string>>> = {
  peak: 'A',
  volts: 'V',
  joints: 'mΩ',
  leastVolts: 'V',
  mostVolts: 'V',
  returns: 'mΩ',
  surge: 'A',
};

function columnRemarks(list: FoundList): readonly string[] {
  const isBare = (index: number) =>
    bodyOf(list).some(({ cells }) => /^\d+$/.test(cellText(cells[index])));
  return list.columns.flatMap(({ key, heading, unit, bothWays, index, said }) => [
    ...(bothWays ? [`"${heading}" counts both ways; half of it is the one-way length.`] : []),
    ...(key === 'length' && !bothWays && said === true && saysBothWays(heading)
      ? [`"${heading}" was taken for the one-way length, as was said, whole and not halved.`]
      : []),
    ...(key === 'ownSize' && unit === undefined && isBare(index)
      ? [`Bare numbers under "${heading}" were taken for AWG numbers.`]
      : []),
  ]);
}
