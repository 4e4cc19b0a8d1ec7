/** What is typed on a Parts sheet: its head, the contacts, and the contact of each run. */
import { PARTS_CELLS } from '../sheets/parts/cells';
import { CONTACT_COLUMNS, PART_RUN_COLUMNS } from '../sheets/parts/columns';
import { CELL_PLACES, LINES } from '../sheets/parts/layout';
import {
  CONTACT_KEYS,
  PARTS_CELL_KEYS,
  type ContactKey,
  type ContactTyped,
  type PartsTyped,
} from '../sheets/station/parts';
import { entriesByPlace, inPlaces, type ByPlace } from './by-place';
import { companion, typedBeside } from './labelled';
import type { RawTable } from './raw';

export const PARTS_SIGNS: readonly string[] = PARTS_CELL_KEYS.map((key) => PARTS_CELLS[key].label);

const CONTACT_HEADINGS = Object.fromEntries(
  CONTACT_KEYS.map((key) => [key, CONTACT_COLUMNS[key].heading]),
) as Record<ContactKey, string>;
export const MY_CONTACT_HEADINGS = { contact: PART_RUN_COLUMNS.mine.heading } as const;

export interface PartsRead {
  readonly typed: PartsTyped;
  readonly contacts: ByPlace<keyof typeof MY_CONTACT_HEADINGS>;
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
    contacts: entriesByPlace(table, MY_CONTACT_HEADINGS),
  };
}

/** With the contacts of the runs that were taken, in their order. */
export function withContacts(
  { typed, contacts }: PartsRead,
  places: readonly number[],
): PartsTyped {
  const runs = inPlaces(contacts, places)?.map(({ contact }) =>
    contact === undefined ? {} : { contact: String(contact) },
  );
  return runs === undefined ? typed : { ...typed, runs };
}
