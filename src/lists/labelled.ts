/** What stands typed beside the labels of a sheet, and which sheet belongs to a schedule. */
import { cellText, isEmpty, type RawRow, type RawTable } from './raw';

/** What was typed, by key. */
export type Typed<Key extends string> = Readonly<Partial<Record<Key, string | number>>>;

/** How far right of its label a value stands, by key; labels are looked for wherever they are. */
export interface Labelled<Key extends string> {
  readonly key: Key;
  readonly label: string;
  readonly right: number;
}

/** Where a label stands. */
export function labelPlace(rows: readonly RawRow[], label: string) {
  for (const { cells } of rows) {
    const column = cells.findIndex((cell) => cell.value === label);
    if (column >= 0) return { cells, column };
  }
  return undefined;
}

/** What stands typed beside each label. */
export function typedBeside<Key extends string>(
  rows: readonly RawRow[],
  labels: readonly Labelled<Key>[],
  rightOf: (labelled: Labelled<Key>) => number = ({ right }) => right,
): Typed<Key> {
  const typed: Partial<Record<Key, string | number>> = {};
  for (const labelled of labels) {
    const { key, label } = labelled;
    const place = labelPlace(rows, label);
    const cell = place?.cells[place.column + rightOf(labelled)];
    if (cell === undefined || isEmpty(cell) || cell.computed === true) continue;
    typed[key] = typeof cell.value === 'number' ? cell.value : cellText(cell);
  }
  return typed;
}

/** The sheet with all of these labels that belongs to a schedule: it names it, or there is no other. */
export function companion(
  tables: readonly RawTable[],
  schedule: string,
  labels: readonly string[],
): RawTable | undefined {
  const alike = tables.filter(({ rows }) =>
    labels.every((label) => labelPlace(rows, label) !== undefined),
  );
  const names = ({ rows }: RawTable) =>
    rows.some(({ cells }) => cells.some((cell) => cellText(cell).includes(`"${schedule}"`)));
  return alike.find(names) ?? (alike.length === 1 ? alike[0] : undefined);
}
