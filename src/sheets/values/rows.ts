/** The rows of a schedule as its formulas see them. */
import { METHODS } from '../../core/ampacity';
import { CellError, isBlank, type Cell, type ResultCell } from '../../functions/cell';
import { attempt } from '../evaluate';
import { HOUSE_RULES, RULE_KEYS, type RuleKey } from '../station/house-rules';
import type { StationContent } from '../book';
import type { ScheduleRun } from '../station/run';

export type RuleValues = Readonly<Record<RuleKey, Cell>>;
/** One value a row. */
export type Column = readonly ResultCell[];

/** The house rules in force: those given, the others as a new sheet has them. */
export function ruleValues(given: StationContent['rules'] = {}): RuleValues {
  const usual = RULE_KEYS.map((key): [RuleKey, Cell] => {
    const initial = HOUSE_RULES[key].initial({} as never);
    return [key, typeof initial === 'object' ? null : initial];
  });
  const rules = { ...Object.fromEntries(usual), ...given } as Record<RuleKey, Cell>;
  const isHot = String(rules.installed).trim().toLowerCase() === 'engine space';
  return {
    ...rules,
    ambientC: given.ambientC ?? METHODS[isHot ? 'engine space' : 'cable'].usualAmbientC,
  };
}

export const trimmed = (value: unknown) => (typeof value === 'string' ? value.trim() : '');
export const isError = (cell: Cell): cell is CellError => cell instanceof CellError;
export const isNA = (cell: Cell) => isError(cell) && cell.code === '#N/A';

/** Texts as a spreadsheet compares them, upper and lower case alike. */
export const textKey = (value: unknown) => String(value).toLowerCase();
export const isSame = (a: unknown, b: unknown) => textKey(a) === textKey(b);

/** A cell as formulas see one that a person left empty. */
export function typed(run: ScheduleRun, key: keyof ScheduleRun): Cell {
  return run[key] ?? null;
}

/** What a computation of one row is given. */
export type OfRow = (run: ScheduleRun, row: number) => ResultCell;

/** Rows whose computed cells wait for what they need. */
export interface ReadyRows {
  /** A column whose cells show nothing while something needed is blank, and an error that stands there. */
  each(compute: OfRow): Column;
}

/** Rows that are ready once they have a load, a length, volts and a target. */
export function readyRows(
  runs: readonly ScheduleRun[],
  needed: Readonly<Record<'ownAmps' | 'volts' | 'target', Column>>,
): ReadyRows {
  const ready = (run: ScheduleRun, row: number, compute: OfRow): ResultCell => {
    const cells = [
      needed.ownAmps[row]!,
      typed(run, 'length'),
      needed.volts[row]!,
      needed.target[row]!,
    ];
    const error = cells.find(isError);
    if (error !== undefined) return error;
    return cells.some(isBlank) ? '' : attempt(() => compute(run, row));
  };
  return { each: (compute) => runs.map((run, row) => ready(run, row, compute)) };
}
