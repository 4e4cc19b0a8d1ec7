/** Cells of a list as values of a run. */
import { fromMetres, type LengthUnit } from '../core/length';
import { isRefusal } from '../core/outcome';
import { formatSize, parseSize } from '../core/size';
import type { ScheduleRun } from '../sheets/station/run';
import { RUN_COLUMNS, type RunKey } from './headings';
import { readNumeral, type NumeralHabit } from './numerals';
import { cellText, isEmpty, type RawCell } from './raw';
import { asLengthUnit, findUnit, plain, type Unit } from './units';

/** What the list as a whole says about its cells. */
export interface ListHabits {
  readonly numerals: NumeralHabit;
  /** Unit of lengths that come without one. */
  readonly givenLength: LengthUnit;
  /** Unit that lengths are wanted in. */
  readonly wantedLength: LengthUnit;
}

/** A column of the list. */
export interface ListColumn {
  readonly key: RunKey;
  readonly unit?: Unit;
  readonly bothWays: boolean;
}

export interface ReadValue {
  readonly value?: string | number;
  /** The unit of a number, where it matters which of two it was. */
  readonly unit?: Unit;
  /** The cell was taken as it stands and needs a look, and why. */
  readonly doubt?: string;
}

/** A number and what stands behind it. */
const NUMBER_WITH_UNIT = /^([+-]?[\d.,][\d.,\u00A0\u202F'’ ]*(?:e[+-]?\d+)?)(.*)$/i;

/** Reads a cell of a column. Text that is no number stays, so that the sheet shows what is wrong with it. */
export function readValue(
  cell: RawCell | undefined,
  column: ListColumn,
  habits: ListHabits,
): ReadValue {
  if (cell === undefined || isEmpty(cell)) return {};
  if (column.key === 'ownSize') return readSize(cell, column.unit);
  if (RUN_COLUMNS[column.key].quantities.length === 0) return { value: textOf(cell) };
  return readQuantity(cell, column, habits);
}

/** Text without blanks around it; lines inside stay. */
function textOf(cell: RawCell): string {
  return typeof cell.value === 'boolean'
    ? String(cell.value).toUpperCase()
    : String(cell.value ?? '').trim();
}

function readQuantity(cell: RawCell, column: ListColumn, habits: ListHabits): ReadValue {
  const { quantities } = RUN_COLUMNS[column.key];
  if (typeof cell.value === 'number') {
    // A percentage is a share already, whatever its heading says.
    return inWanted(cell.value, cell.percent === true ? undefined : column.unit, column, habits);
  }
  const text = textOf(cell);
  if (cell.date === true) return { value: text, doubt: `"${text}" is a date` };
  const match = NUMBER_WITH_UNIT.exec(text);
  // A foot or inch mark may stand right behind the number, where it looks like a mark for thousands.
  const digits = (match?.[1] ?? '').replace(/[' ]+$/, '');
  const behind = text.slice(digits.length).trim();
  const numeral = match === null ? undefined : readNumeral(digits, habits.numerals);
  const unit = behind === '' ? column.unit : findUnit(behind);
  if (typeof numeral === 'object') return { value: text, doubt: numeral.doubt };
  const fits = behind === '' || (unit !== undefined && quantities.includes(unit.quantity));
  if (numeral === undefined || !Number.isFinite(numeral) || !fits) {
    return { value: text, doubt: `"${cellText(cell)}" is not a number` };
  }
  return inWanted(numeral, unit, column, habits);
}

/** The number in the unit that the schedule holds it in. */
function inWanted(
  number: number,
  unit: Unit | undefined,
  column: ListColumn,
  habits: ListHabits,
): ReadValue {
  const halved = column.bothWays ? number / 2 : number;
  if (column.key === 'length') return { value: wantedLength(halved, unit, habits) };
  return unit === undefined ? { value: halved } : { value: (halved * unit.times) / unit.per, unit };
}

function wantedLength(
  length: number,
  unit: Unit | undefined,
  { givenLength, wantedLength: wanted }: ListHabits,
): number {
  if (unit === undefined) return convertLength(length, givenLength, wanted);
  const known = asLengthUnit(unit);
  return known === wanted ? length : fromMetres((length * unit.times) / unit.per, wanted);
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

function readSize(cell: RawCell, unit: Unit | undefined): ReadValue {
  const text = textOf(cell);
  if (cell.date === true) {
    return {
      value: text,
      doubt: `"${text}" is a date; a spreadsheet may have made it of 1/0 or 2/0`,
    };
  }
  let spelled = plain(text);
  for (const [pattern, instead] of SIZE_SPELLINGS) spelled = spelled.replace(pattern, instead);
  // A bare number is in the heading's unit.
  if (unit !== undefined && /^[\d.,/]+$/.test(spelled)) spelled = `${spelled} ${unit.label}`;
  const size = parseSize(spelled);
  return isRefusal(size) ? { value: text, doubt: size.why } : { value: formatSize(size) };
}

/** Texts of a run that the list gives in the unit of its heading: how the load is measured. */
export function kindOf(unit: Unit | undefined): Pick<ScheduleRun, 'kind'> {
  return unit?.quantity === 'power' ? { kind: 'W' } : {};
}
