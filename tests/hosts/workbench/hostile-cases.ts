/** Formulas that hand a blank, an error, a truth value and a text to every argument of every function. */
import { CellError, type Cell, type Matrix } from '../../../src/functions/cell';
import type { Given } from '../../../src/functions/parameter';
import type { WorksheetFunction } from '../../../src/functions/worksheet-function';
import type { GridValue } from '../../../src/sheets/plan/grid';
import { NAMESPACE } from '../../../src/functions/catalogue';
import type { CellContent } from '../../../src/sheets/plan/plan';

interface Hostile {
  readonly what: string;
  readonly content: CellContent;
  readonly cell: Cell;
}

/** They stand in A1 to D1. */
export const HOSTILE: readonly Hostile[] = [
  { what: 'a blank', content: null, cell: null },
  {
    what: 'an error',
    content: { formula: '=1/0' },
    cell: new CellError('#DIV/0!', 'came with the cell'),
  },
  { what: 'a boolean', content: true, cell: true },
  { what: 'a text', content: 'driftwood', cell: 'driftwood' },
];

export interface HostileCase {
  readonly name: string;
  /** Zero-based row of column A in which its formula stands; a larger result spills from there. */
  readonly row: number;
  readonly formula: string;
  /** What the function itself answers to the same cells, as the grid shows it. */
  readonly expected: readonly (readonly GridValue[])[];
}

type Argument = Cell | readonly (readonly (Given | null)[])[];

function literal(given: Given): string {
  if (typeof given === 'string') return `"${given.replaceAll('"', '""')}"`;
  return typeof given === 'boolean' ? String(given).toUpperCase() : String(given);
}

/** As written in a formula: nothing for an argument left out, braces for a range. */
function written(argument: Argument): string {
  if (argument === null) return '';
  if (argument instanceof CellError) throw new Error('An error comes from a cell.');
  if (typeof argument !== 'object') return literal(argument);
  const rows = argument.map((row) => row.map((cell) => literal(cell ?? '')).join(','));
  return `{${rows.join(';')}}`;
}

function matrix(argument: Argument): Matrix {
  return Array.isArray(argument) ? (argument as Matrix) : [[argument as Cell]];
}

/** An error shows its code; an answer of empty text looks like an empty cell. */
function shown(cell: Cell): GridValue {
  if (cell instanceof CellError) return cell.code;
  return cell === '' ? null : cell;
}

/**
 * One case for every argument and every kind of hostile cell; the other arguments come from the entry's example.
 * Their formulas stand under the hostile cells, with room for what spills.
 */
export function hostileCases(entry: WorksheetFunction): HostileCase[] {
  let row = 1;
  return entry.takes.flatMap((parameter, position) =>
    HOSTILE.map((hostile, column): HostileCase => {
      const given = entry.takes.map((_, index): Argument =>
        index === position ? hostile.cell : (entry.example.given[index] ?? null),
      );
      const address = `$${'ABCD'[column]!}$1`;
      const parts = given.map((argument, index) =>
        index === position ? address : written(argument),
      );
      const result = entry.evaluate(given.map(matrix));
      const at = row;
      row += result.length;
      return {
        name: `${hostile.what} as ${parameter.name}`,
        row: at,
        formula: `=${NAMESPACE}.${entry.id}(${parts.join(',')})`,
        expected: result.map((cells) => cells.map(shown)),
      };
    }),
  );
}
