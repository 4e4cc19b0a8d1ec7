/** What a person says of a list's columns: which of the schedule's each is, or that it is left out. */
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import { COLUMN_KEYS } from '../sheets/station/schedule-keys';
import { plain, type Unit } from '../core/units';
import { readHeading, RUN_KEYS, unitFor, type RunKey } from './headings';
import { nearestName } from './nearest-name';

/** A column of ours, with the unit and the way of counting that were said with it. */
export interface ChosenColumn {
  readonly key: RunKey;
  readonly unit?: Unit;
  readonly bothWays: boolean;
}

/** Said in place of a column. */
export const LEAVE_OUT = 'leave out';

/** By heading of the list, as `plain` has it. */
export type ColumnMap = ReadonlyMap<string, ChosenColumn | typeof LEAVE_OUT>;

/** Columns were said that do not exist, or that cannot be had together; the message is a sentence for the user. */
export class UnusableMap extends Error {
  override readonly name = 'UnusableMap';
}

/** The columns that a list may give, in the schedule's order. */
const GIVEN_KEYS = COLUMN_KEYS.flatMap((key) => RUN_KEYS.filter((one) => one === key));

/** Their headings. */
export const GIVEN_HEADINGS: readonly string[] = GIVEN_KEYS.map(
  (key) => SCHEDULE_COLUMNS[key].heading,
);

/** What is chosen besides the headings, of columns whose bare figures may be of several units or count both conductors. */
const CLOSER: Readonly<Partial<Record<RunKey, readonly string[]>>> = {
  peak: [unitChoice('peak', 'A'), unitChoice('peak', 'W')],
  length: [
    unitChoice('length', 'ft'),
    unitChoice('length', 'm'),
    'Length there and back',
    'Length there and back (ft)',
    'Length there and back (m)',
  ],
  ownSize: [unitChoice('ownSize', 'AWG'), unitChoice('ownSize', 'mm2')],
};

function unitChoice(key: RunKey, unit: string): string {
  return `${SCHEDULE_COLUMNS[key].heading} (${unit})`;
}

/** What a column may be said to be, each a text that `readChosen` reads. A unit is left to the heading that says one. */
export function choicesFor(heading: string): readonly string[] {
  return GIVEN_KEYS.flatMap((key) => [
    SCHEDULE_COLUMNS[key].heading,
    ...(CLOSER[key] ?? []).filter(
      (choice) => unitFor(heading, key) === undefined || unitFor(choice, key) === undefined,
    ),
  ]);
}

/** The choice that means a column. */
export function choiceOf(key: RunKey, bothWays: boolean): string {
  return bothWays && key === 'length' ? 'Length there and back' : SCHEDULE_COLUMNS[key].heading;
}

/** The column that a text means; undefined where it means none that is typed. */
export function readChosen(text: string): ChosenColumn | undefined {
  const meaning = readHeading(text);
  if (meaning.is !== 'typed') return undefined;
  const { key, unit, bothWays } = meaning;
  return { key, bothWays, ...(unit && { unit }) };
}

/** What was said, by heading. Throws UnusableMap. */
export function readColumnMap(said: Iterable<readonly [heading: string, text: string]>): ColumnMap {
  const map = new Map<string, ChosenColumn | typeof LEAVE_OUT>();
  for (const [heading, text] of said) {
    const key = plain(heading);
    if (map.has(key)) {
      throw new UnusableMap(`"${heading.trim()}" is mapped twice; a column can be one thing.`);
    }
    if (text.trim() === '' || plain(text) === LEAVE_OUT) {
      map.set(key, LEAVE_OUT);
      continue;
    }
    const chosen = readChosen(text);
    if (chosen === undefined) throw new UnusableMap(noSuchColumn(text.trim()));
    map.set(key, chosen);
  }
  return map;
}

function noSuchColumn(text: string): string {
  const nearest = nearestName(text, GIVEN_HEADINGS);
  const hint = nearest === undefined ? '' : `; did you mean "${nearest}"?`;
  return `"${text}" is no column that a list gives${hint}${hint === '' ? '.' : ''} The columns are ${GIVEN_HEADINGS.join(', ')}; "${LEAVE_OUT}" leaves one out.`;
}
