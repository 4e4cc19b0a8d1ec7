/** Where a value stands in a list, found by an index made once: thousands of rows compare the same column with theirs. */
import { CellError, type Cell } from '../../functions/cell';
import { fold, mostlyAlike, type Cells } from './values';

interface Index {
  readonly places: ReadonlyMap<string, readonly number[]>;
  readonly blanks: readonly number[];
  readonly errors: readonly number[];
}

/** The kind and the content, without case; texts of different length are never the same. */
function keyOf(cell: Exclude<Cell, CellError | null>): string {
  if (typeof cell === 'string') return `s${cell.length} ${fold(cell)}`;
  return typeof cell === 'number' ? `n${cell}` : `b${String(cell)}`;
}

const made = new WeakMap<readonly Cell[], Index>();

function indexOf(list: readonly Cell[]): Index {
  let index = made.get(list);
  if (index === undefined) {
    const places = new Map<string, number[]>();
    const [blanks, errors]: [number[], number[]] = [[], []];
    for (const [place, cell] of list.entries()) {
      if (cell === null) blanks.push(place);
      else if (cell instanceof CellError) errors.push(place);
      else {
        const key = keyOf(cell);
        const known = places.get(key);
        if (known === undefined) places.set(key, [place]);
        else known.push(place);
      }
    }
    made.set(list, (index = { places, blanks, errors }));
  }
  return index;
}

/** What nothing is like. */
const LIKE_NOTHING = ['', 0, false] as const;

function inOrder(lists: readonly (readonly number[])[]): readonly number[] {
  const some = lists.filter(({ length }) => length > 0);
  return some.length <= 1 ? (some[0] ?? []) : some.flat().sort((a, b) => a - b);
}

/**
 * Which cells of a list are the same as a value to a spreadsheet, as comparing each with it answers: TRUE, FALSE, or the
 * cell's own error.
 */
export function equalPlaces(cells: Cells, value: Exclude<Cell, CellError>): Cells {
  const list = cells.all();
  const { places, blanks, errors } = indexOf(list);
  const of = (like: Exclude<Cell, CellError | null>) => places.get(keyOf(like)) ?? [];
  const same =
    value === null
      ? [...LIKE_NOTHING.map(of), blanks]
      : [of(value), LIKE_NOTHING.some((like) => like === value) ? blanks : []];
  const found = inOrder([...same, errors]);
  return mostlyAlike(cells.rows, cells.columns, {
    places: found,
    cells:
      errors.length === 0
        ? new Array<Cell>(found.length).fill(true)
        : found.map((place) => {
            const cell = list[place]!;
            return cell instanceof CellError ? cell : true;
          }),
    rest: false,
  });
}
