/** How many rows a station's sheets have, under which names, and how their formulas are written. */
import type { ReferenceStyle } from '../plan/plan';
import type { ScheduleNames } from './naming';

/**
 * In a file formulas point at columns of other sheets by their names (`names`), at their own sheet by addresses: one that
 * holds another sheet's name cannot be shared by the rows that it is filled down to.
 */
export interface Layout {
  readonly names: ScheduleNames;
  readonly references: ReferenceStyle | 'names';
  readonly rows: number;
  /** How many of the rows a print shows; all of them unless given. */
  readonly printedRows?: number;
}

/** Layouts of one set of names that are kept; a workbook has one, lists that are tried out have some more. */
const MOST_KEPT = 40;

/**
 * What follows from a layout alone, made once for each: texts of hundreds of formulas, which are also compiled once where
 * they are the same.
 */
export function perLayout<Made>(make: (layout: Layout) => Made): (layout: Layout) => Made {
  const ofNames = new WeakMap<ScheduleNames, Map<string, Made>>();
  return (layout) => {
    let known = ofNames.get(layout.names);
    if (known === undefined) ofNames.set(layout.names, (known = new Map<string, Made>()));
    const key = `${layout.references} ${layout.rows} ${layout.printedRows ?? ''}`;
    let made = known.get(key);
    if (made === undefined) {
      if (known.size >= MOST_KEPT) known.clear();
      known.set(key, (made = make(layout)));
    }
    return made;
  };
}
