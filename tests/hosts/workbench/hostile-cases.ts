/** Formulas that hand a blank, an error, a truth value and a text to every argument of every function. */
import { CellError, type Cell } from '../../../src/functions/cell';
import type { Given } from '../../../src/functions/word';
import type { WorksheetFunction } from '../../../src/functions/worksheet-function';
import type { GridValue } from '../../../src/hosts/sheet-host';
import { NAMESPACE } from '../../../src/functions/catalogue';
import type { CellContent } from '../../../src/sheets/plan';

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
  readonly formula: string;
  /** What the function itself answers to the same cells, as the grid shows it. */
  readonly expected: GridValue;
}

function literal(given: Given): string {
  if (typeof given === 'string') return `"${given.replaceAll('"', '""')}"`;
  return typeof given === 'boolean' ? String(given).toUpperCase() : String(given);
}

/** An error shows its code; an answer of empty text looks like an empty cell. */
function shown(cell: Cell | undefined): GridValue {
  if (cell instanceof CellError) return cell.code;
  return cell === '' ? null : (cell ?? null);
}

/** One case for every argument and every kind of hostile cell; the other arguments come from the entry's example. */
export function hostileCases(entry: WorksheetFunction): HostileCase[] {
  return entry.takes.flatMap((word, position) =>
    HOSTILE.map((hostile, column): HostileCase => {
      const given = entry.takes.map((_, index) => {
        const example = entry.example.given[index] ?? null;
        if (typeof example === 'object' && example !== null) {
          throw new Error(`${entry.id}: an example with a range needs a case of its own here.`);
        }
        return index === position ? hostile.cell : example;
      });
      const address = `$${'ABCD'[column]!}$1`;
      const written = given.map((cell, index) =>
        index === position ? address : cell === null ? '' : literal(cell as Given),
      );
      return {
        name: `${hostile.what} as ${word.name}`,
        formula: `=${NAMESPACE}.${entry.id}(${written.join(',')})`,
        expected: shown(entry.evaluate(given.map((cell) => [[cell]]))[0]?.[0]),
      };
    }),
  );
}
