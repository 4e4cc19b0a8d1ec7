/** What is typed on a Parts sheet: its head, the contacts, and those at the ends of each run. */
import { PARTS_CELLS } from '../sheets/parts/cells';
import { CONTACT_COLUMNS, PART_RUN_COLUMNS } from '../sheets/parts/columns';
import { CELL_PLACES, LINES } from '../sheets/parts/layout';
import { FORMER_CONTACT_HEADING } from '../sheets/station/former';
import {
  CONTACT_KEYS,
  PARTS_CELL_KEYS,
  type ContactKey,
  type ContactTyped,
  type PartsTyped,
  type RunContactKey,
} from '../sheets/station/parts';
import { entriesByPlace, inPlaces, type ByPlace } from './by-place';
import { companion, typedBeside } from './labelled';
import type { RawTable } from './raw';

export const PARTS_SIGNS: readonly string[] = PARTS_CELL_KEYS.map((key) => PARTS_CELLS[key].label);

const CONTACT_HEADINGS = Object.fromEntries(
  CONTACT_KEYS.map((key) => [key, CONTACT_COLUMNS[key].heading]),
) as Record<ContactKey, string>;
export const MY_CONTACT_HEADINGS: Readonly<Record<RunContactKey, string>> = {
  sourceEnd: PART_RUN_COLUMNS.mine.heading,
  farEnd: PART_RUN_COLUMNS.farMine.heading,
};
/** A former sheet has one contact for both ends of a run. */
const FORMER_HEADINGS = { both: FORMER_CONTACT_HEADING } as const;

function contactsOfRuns(table: RawTable): ByPlace<RunContactKey> {
  const found = entriesByPlace(table, MY_CONTACT_HEADINGS);
  if (found.size > 0) return found;
  const former = entriesByPlace(table, FORMER_HEADINGS);
  return new Map(
    [...former].map(([place, { both }]) => [
      place,
      both === undefined ? {} : { sourceEnd: both, farEnd: both },
    ]),
  );
}

export interface PartsRead {
  readonly typed: PartsTyped;
  readonly contacts: ByPlace<RunContactKey>;
}

/** The contacts in their rows, empty ones in between with them; the tables below are none of it. */
function contactsIn(table: RawTable): readonly ContactTyped[] {
  const found = entriesByPlace(table, CONTACT_HEADINGS);
  const listed = Array.from({ length: LINES }, (_, place): ContactTyped => found.get(place) ?? {});
  const last = listed.findLastIndex((contact) => Object.keys(contact).length > 0);
  return listed.slice(0, last + 1);
}

/** The Parts sheet that belongs to the schedule on a sheet; undefined where there is none. */
export function readParts(tables: readonly RawTable[], schedule: string): PartsRead | undefined {
  const table = companion(tables, schedule, PARTS_SIGNS);
  if (table === undefined) return undefined;
  const right = CELL_PLACES.value - CELL_PLACES.label;
  const cells = typedBeside(
    table.rows,
    PARTS_CELL_KEYS.map((key) => ({ key, label: PARTS_CELLS[key].label, right })),
  );
  const contacts = contactsIn(table);
  return {
    typed: { cells, ...(contacts.length > 0 && { contacts }) },
    contacts: contactsOfRuns(table),
  };
}

/** With the contacts of the runs that were taken, in their order. */
export function withContacts(
  { typed, contacts }: PartsRead,
  places: readonly number[],
): PartsTyped {
  const runs = inPlaces(contacts, places)?.map((typed) =>
    Object.fromEntries(Object.entries(typed).map(([end, contact]) => [end, String(contact)])),
  );
  return runs === undefined ? typed : { ...typed, runs };
}
