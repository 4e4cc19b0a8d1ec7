/** Cells of a list as values of a run. */
import type { LoadKind } from '../core/feeders';
import { fromMetres, type LengthUnit } from '../core/length';
import { isRefusal } from '../core/outcome';
import { inBaseUnit, inFeet, splitFeetAndInches } from '../core/quantity';
import { formatSize, parseSize } from '../core/size';
import { readGiven, readNumber } from '../functions/parameter';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import { RUN_COLUMNS, type RunKey } from './headings';
import { readNumeral, type NumeralHabit } from './numerals';
import { cellText, isEmpty, type RawCell } from './raw';
import { asLengthUnit, findUnit, plain, type Unit } from '../core/units';
import { readWord } from './words';

/** What the list as a whole says about its cells. */
export interface ListHabits {
  readonly numerals: NumeralHabit;
  /** Unit of lengths that come without one. */
  readonly givenLength: LengthUnit;
  /** Unit that lengths are wanted in. */
  readonly wantedLength: LengthUnit;
  /** Lengths with a unit of their own stay as they are written: the list is a schedule of ours. */
  readonly keepsLengths: boolean;
  /** A text of values, where the number 0 and the text "0" look alike. */
  readonly isText: boolean;
}

/** A column of the list. */
export interface ListColumn {
  readonly key: RunKey;
  readonly unit?: Unit;
  readonly bothWays: boolean;
  /** Some of its bare numbers are shares and others percent. */
  readonly mixed?: boolean;
}

export interface ReadValue {
  readonly value?: string | number;
  /** The unit of a number, where it matters which of two it was. */
  readonly unit?: Unit;
  /** The cell was taken as it stands and needs a look, and why. */
  readonly doubt?: string;
}

const FEET = findUnit('ft');

/** A number and what stands behind it. */
const NUMBER_WITH_UNIT = /^([+-]?[\d.,][\d.,\u00A0\u202F'’ ]*(?:e[+-]?\d+)?)(.*)$/i;

/** Reads a cell of a column. Text that is no number stays, so that the sheet shows what is wrong with it. */
export function readValue(
  cell: RawCell | undefined,
  column: ListColumn,
  habits: ListHabits,
): ReadValue {
  if (cell === undefined || isEmpty(cell)) return {};
  if (column.key === 'ownSize') return readSize(cell, column.unit, habits);
  const text = textOf(cell);
  const read = readWord(column.key, text);
  if (RUN_COLUMNS[column.key].quantities.length > 0) {
    return read !== undefined && 'word' in read
      ? { value: read.word }
      : bounded(readQuantity(cell, column, habits), column.key);
  }
  if (read === undefined) return { value: text };
  return 'word' in read ? { value: read.word } : { value: text, doubt: read.doubt };
}

/** A number that the schedule's column refuses stays, and is named. */
function bounded(read: ReadValue, key: RunKey): ReadValue {
  const { parameter } = SCHEDULE_COLUMNS[key];
  if (read.doubt !== undefined || typeof read.value !== 'number' || parameter === undefined) {
    return read;
  }
  const taken = readGiven(parameter, read.value);
  return isRefusal(taken) ? { ...read, doubt: taken.why } : read;
}

/** Put behind what a list means otherwise than a sheet would read it, so that the sheet does not read it at all. */
const UNREAD = '?';

/** Text that was refused here, as the sheet may have it: it must refuse it too. */
function refusedText(text: string, sheetReads: boolean): string {
  return sheetReads ? `${text}${UNREAD}` : text;
}

/** A figure that is not taken for what a sheet would take it for. */
function refusedFigure(text: string, doubt: string): ReadValue {
  return { value: refusedText(text, !isRefusal(readNumber(text))), doubt };
}

/** Text without blanks around it; lines inside stay. */
function textOf(cell: RawCell): string {
  return typeof cell.value === 'boolean'
    ? String(cell.value).toUpperCase()
    : String(cell.value ?? '').trim();
}

function readQuantity(cell: RawCell, column: ListColumn, habits: ListHabits): ReadValue {
  const { quantities, percents } = RUN_COLUMNS[column.key];
  const text = textOf(cell);
  const bare = bareNumber(cell, habits);
  if (percents !== undefined && column.mixed === true && bare !== undefined) {
    // What is a share in one row and percent in the next is neither, unless only one of them is likely.
    if (bare > percents.most / 100 && bare < percents.least) {
      return refusedFigure(
        text,
        `${bare} may be ${+(bare * 100).toPrecision(12)} % or ${bare} %; write it with its sign`,
      );
    }
  }
  if (typeof cell.value === 'number') {
    // A percentage is a share already, whatever its heading says.
    return inWanted(cell.value, cell.percent === true ? undefined : column.unit, column, habits);
  }
  if (cell.date === true) return { value: text, doubt: `"${text}" is a date` };
  const feet = quantities.includes('length') ? feetAndInches(text, habits) : undefined;
  if (feet !== undefined) {
    return habits.keepsLengths ? { value: text } : inWanted(feet, FEET, column, habits);
  }
  const match = NUMBER_WITH_UNIT.exec(text);
  // A foot or inch mark may stand right behind the number, where it looks like a mark for thousands.
  const digits = (match?.[1] ?? '').replace(/[' ]+$/, '');
  const behind = text.slice(digits.length).trim();
  const numeral = match === null ? undefined : readNumeral(digits, habits.numerals);
  const unit = behind === '' ? column.unit : findUnit(behind);
  if (typeof numeral === 'object') return refusedFigure(text, numeral.doubt);
  const fits = behind === '' || (unit !== undefined && quantities.includes(unit.quantity));
  if (numeral === undefined || !Number.isFinite(numeral) || !fits) {
    return refusedFigure(text, `"${cellText(cell)}" is not a number${elsewhere(unit, behind)}`);
  }
  if (habits.keepsLengths && behind !== '' && quantities.includes('length')) return { value: text };
  return inWanted(numeral, unit, column, habits);
}

/** Feet and inches as feet; nothing where a text is not made of both. */
function feetAndInches(text: string, { numerals }: ListHabits): number | undefined {
  const both = splitFeetAndInches(text);
  if (both === undefined) return undefined;
  const [feet, inches] = [readNumeral(both.feet, numerals), readNumeral(both.inches, numerals)];
  return typeof feet === 'number' && typeof inches === 'number' ? inFeet(feet, inches) : undefined;
}

/** A unit that is one, but not of what stands in this column. */
function elsewhere(unit: Unit | undefined, behind: string): string {
  return unit === undefined || behind === '' ? '' : ' in a unit of this column';
}

/** A number that says no unit of its own; undefined for anything else. */
export function bareNumber(
  cell: RawCell | undefined,
  { numerals }: Pick<ListHabits, 'numerals'>,
): number | undefined {
  if (cell === undefined || cell.percent === true || cell.date === true) return undefined;
  if (typeof cell.value === 'number') return cell.value;
  if (typeof cell.value !== 'string') return undefined;
  const numeral = readNumeral(cell.value.trim(), numerals);
  return typeof numeral === 'number' ? numeral : undefined;
}

/** The number in the unit that the schedule holds it in. */
function inWanted(
  number: number,
  unit: Unit | undefined,
  column: ListColumn,
  habits: ListHabits,
): ReadValue {
  const halved = column.bothWays ? number / 2 : number;
  const isLength = RUN_COLUMNS[column.key].quantities.includes('length');
  if (isLength) return { value: wantedLength(halved, unit, habits) };
  return unit === undefined
    ? { value: halved }
    : { value: inBaseUnit({ number: halved, unit }), unit };
}

function wantedLength(
  length: number,
  unit: Unit | undefined,
  { givenLength, wantedLength: wanted }: ListHabits,
): number {
  if (unit === undefined) return convertLength(length, givenLength, wanted);
  const known = asLengthUnit(unit);
  return known === wanted ? length : fromMetres(inBaseUnit({ number: length, unit }), wanted);
}

/** A length in another unit; untouched where the unit is the same. */
export function convertLength(length: number, from: LengthUnit, to: LengthUnit): number {
  const unit = findUnit(from);
  return from === to || unit === undefined ? length : fromMetres(length * unit.times, to);
}

/** Spellings of sizes that lists use and formulas do not. */
const SIZE_SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/\s*(?:sq\.? ?mm|mm ?sq\.?|square mm)$/, ' mm2'],
  [/\s*(?:ga|gauge)\.?$/, ' AWG'],
];

function readSize(cell: RawCell, unit: Unit | undefined, { isText }: ListHabits): ReadValue {
  const text = textOf(cell);
  const refused = (doubt: string): ReadValue => ({
    value: refusedText(text, !isRefusal(parseSize(text))),
    doubt,
  });
  if (cell.date === true) {
    return refused(`"${text}" is a date; a spreadsheet may have made it of 1/0 or 2/0`);
  }
  // A spreadsheet's 0 may be a blank; a text of values does not tell it from one that was written.
  if (cell.value === 0 || (isText && text === '0')) {
    const zero = parseSize(0);
    if (isRefusal(zero)) return refused(zero.why);
  }
  let spelled = plain(text);
  for (const [pattern, instead] of SIZE_SPELLINGS) spelled = spelled.replace(pattern, instead);
  // A bare number is in the heading's unit.
  if (unit !== undefined && /^[\d.,/]+$/.test(spelled)) spelled = `${spelled} ${unit.label}`;
  const size = parseSize(spelled);
  return isRefusal(size) ? refused(size.why) : { value: formatSize(size) };
}

/** How a load in this unit is measured; undefined where the unit says nothing of it. */
export function kindOf(unit: Unit | undefined): LoadKind | undefined {
  if (unit === undefined) return undefined;
  return unit.quantity === 'power' ? 'W' : 'A';
}
