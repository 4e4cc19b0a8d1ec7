/** Bare numbers of a share: 3 and 2 under "Max drop" are 3 % and 2 %, unless something in the column speaks against it. */
import { RUN_COLUMNS } from './headings';
import { bodyOf, type FoundList } from './table';
import type { TypedColumn } from './list-columns';
import { findUnit } from '../core/units';
import { bareNumber, type ListHabits } from './values';

const PERCENT = findUnit('%');

export interface ReadPercents {
  readonly list: FoundList;
  readonly remarks: readonly string[];
}

/** The list with the unit that its bare shares turn out to have. On a schedule of ours, 3 is 300 % as it says. */
export function readPercents(list: FoundList, habits: Pick<ListHabits, 'numerals'>): ReadPercents {
  if (list.ours || PERCENT === undefined) return { list, remarks: [] };
  const body = bodyOf(list);
  const remarks: string[] = [];
  const columns = list.columns.map((column): TypedColumn => {
    const { percents } = RUN_COLUMNS[column.key];
    if (percents === undefined || column.unit !== undefined) return column;
    // 0 is 0 either way.
    const bare = body
      .flatMap(({ cells }) => bareNumber(cells[column.index], habits) ?? [])
      .filter((number) => number !== 0);
    const [first] = bare;
    if (first === undefined || bare.every((number) => number < percents.least)) return column;
    const arePercents = bare.every((number) => number >= percents.least && number <= percents.most);
    if (!arePercents) return { ...column, mixed: true };
    remarks.push(
      `Bare numbers under "${column.heading}" were taken for percent: ${first} is ${first} %.`,
    );
    return { ...column, unit: PERCENT };
  });
  return { list: { ...list, columns }, remarks };
}
