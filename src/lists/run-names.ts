/** Which column names the runs, where a list has several that might: numbers of items, names, what hangs at the end. */
import { nameKey } from '../core/feeder-tree';
import { cellText, isEmpty, type RawRow } from './raw';
import type { TypedColumn, UnreadColumn } from './list-columns';

interface NamedColumns {
  readonly columns: readonly TypedColumn[];
  readonly leftOver: readonly UnreadColumn[];
  readonly remarks: readonly string[];
}

/** What stands in a column, without its blanks. */
export function valuesOf(index: number, body: readonly RawRow[]): readonly string[] {
  return body.flatMap(({ cells }) => (isEmpty(cells[index]) ? [] : [cellText(cells[index])]));
}

/** A column of numbers tells rows apart and names nothing. */
export const isNumbered = (index: number, body: readonly RawRow[]) =>
  valuesOf(index, body).every((text) => /^#?\d+\.?$/.test(text));

/** How many of the feeders of a list are called as a column says. */
function feedersAmong(feeders: readonly string[], index: number, body: readonly RawRow[]): number {
  const names = new Set(valuesOf(index, body).map(nameKey));
  return feeders.filter((name) => names.has(nameKey(name))).length;
}

/**
 * The columns with the one as names of the runs by which the list says what feeds what; else with the one that names them
 * rather than number them. Other names stand for what hangs at the end, where nothing else says it.
 */
export function withRunNames(
  columns: readonly TypedColumn[],
  leftOver: readonly UnreadColumn[],
  body: readonly RawRow[],
): NamedColumns {
  const same: NamedColumns = { columns, leftOver, remarks: [] };
  const current = columns.find(({ key }) => key === 'run');
  const loads = columns.filter(({ key, said }) => key === 'load' && said !== true);
  const others = leftOver.flatMap(({ rival }) => (rival?.key === 'run' ? [rival] : []));
  const candidates = [...(current === undefined ? [] : [current]), ...others, ...loads];
  if (current?.said === true || candidates.length === 0) return same;

  const feeders = columns
    .filter(({ key }) => key === 'fedFrom')
    .flatMap(({ index }) => valuesOf(index, body));
  const votes = (column: TypedColumn) => feedersAmong(feeders, column.index, body);
  const most = candidates.reduce((a, b) => (votes(b) > votes(a) ? b : a));
  const named =
    votes(most) > 0
      ? most
      : ([current, ...others].find(
          (column) => column !== undefined && !isNumbered(column.index, body),
        ) ?? current);
  if (named === undefined || (named === current && others.length === 0)) return same;

  const rest = [current, ...others].filter((column) => column !== undefined && column !== named);
  const kept = columns.filter(({ index }) => !candidates.some((one) => one.index === index));
  const hasLoad = loads.some((column) => column !== named);
  const asLoad = hasLoad
    ? undefined
    : rest.find((column) => column !== undefined && !isNumbered(column.index, body));
  const why = `"${named.heading}" names the runs`;
  return {
    columns: [
      ...kept,
      { ...named, key: 'run' },
      ...loads.filter((column) => column !== named),
      ...(asLoad === undefined ? [] : [{ ...asLoad, key: 'load' as const }]),
    ],
    leftOver: [
      ...leftOver.filter(({ rival }) => rival?.key !== 'run'),
      ...rest.flatMap((column): UnreadColumn[] =>
        column === undefined || column === asLoad
          ? []
          : [
              {
                index: column.index,
                heading: column.heading,
                why,
                needless: isNumbered(column.index, body),
              },
            ],
      ),
    ],
    remarks: named.key === 'run' ? [] : [`${why}: the list says by it what feeds them.`],
  };
}
