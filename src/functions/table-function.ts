/**
 * Functions that answer with a table of their own, the third way to make a catalogue entry: they take lists whose rows
 * belong together, as those of list-function.ts do, and answer with as many rows as there are things to tell.
 */
import type { Outcome } from '../core/outcome';
import { answerCell } from './broadcast';
import { CellError, type ResultCell } from './cell';
import { lacksOne, readList, type ColumnWord } from './list-function';
import type { Given, Parameter } from './parameter';
import type { Described, WorksheetFunction } from './worksheet-function';

/** A row of the lists: what was read of it (undefined where a cell is blank), or the error that it holds. */
export interface TableRow<Values> {
  readonly values: Values;
  readonly error: CellError | undefined;
}

type Columns<Parameters extends readonly Parameter[]> = Extract<Parameters[number], ColumnWord>;
type Singles<Parameters extends readonly Parameter[]> = Exclude<Parameters[number], ColumnWord>;

/** By parameter in a column, what its cell says. */
export type RowValues<Parameters extends readonly Parameter[]> = {
  readonly [W in Columns<Parameters> as W['name']]: W extends ColumnWord<string, infer Value>
    ? Outcome<Value> | undefined
    : never;
};

/** By any other parameter, its one value. */
export type SingleValues<Parameters extends readonly Parameter[]> = {
  readonly [W in Singles<Parameters> as W['name']]: W extends Parameter<string, infer Value>
    ? Value
    : never;
};

/**
 * A function that answers with a table. Rows that are blank where something is required are left out; a row with an error
 * or with a cell that cannot be read comes with that error, for the computation to put where it belongs. The computation
 * answers with at least one row, all equally long; without any row of the lists the answer is empty text.
 */
export function tableOf<const Parameters extends readonly Parameter[]>(
  entry: Described & {
    readonly takes: Parameters;
    readonly compute: (
      rows: readonly TableRow<RowValues<Parameters>>[],
      singles: SingleValues<Parameters>,
    ) => readonly (readonly (Outcome<Given> | CellError)[])[];
  },
): WorksheetFunction {
  const columns = entry.takes.filter((parameter) => 'column' in parameter);
  return {
    ...entry,
    evaluate(given) {
      const list = readList(entry.takes, given);
      if (list instanceof CellError) return [[list]];
      const { values, settled } = list;
      const rows = settled.flatMap((cell, row) => {
        if (cell === '') return [];
        const inRow = Object.fromEntries(
          columns.map(({ name }) => [name, (values[name] as readonly unknown[])[row]]),
        );
        const error = cell instanceof CellError ? cell : undefined;
        return [{ values: inRow as RowValues<Parameters>, error }];
      });
      if (rows.length === 0) return [['']];
      if (lacksOne(entry.takes, values)) return [[rows[0]!.error ?? '']];
      const table = entry.compute(rows, values as SingleValues<Parameters>);
      const cells = table.map((row): ResultCell[] =>
        row.map((cell) => (cell instanceof CellError ? cell : answerCell(cell))),
      );
      return cells;
    },
  };
}
