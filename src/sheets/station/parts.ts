/** What a person says on the Parts sheet: figures of the head, contacts and lugs, and the contact of a run. */
import type { TypedCells } from './named-cells';

export const PARTS_CELL_KEYS = ['holder', 'perEnd', 'spares'] as const;
export type PartsCellKey = (typeof PARTS_CELL_KEYS)[number];

/** Of a contact or lug: its name in words of the user's own, the sizes that it takes, amps and milliohms. */
export const CONTACT_KEYS = ['name', 'thinnest', 'thickest', 'amps', 'milliohms'] as const;
export type ContactKey = (typeof CONTACT_KEYS)[number];
export type ContactTyped = Readonly<Partial<Record<ContactKey, string | number>>>;

export interface PartsTyped {
  readonly cells?: TypedCells<PartsCellKey>;
  readonly contacts?: readonly ContactTyped[];
  /** Run by run, in the order of the schedule. */
  readonly runs?: readonly { readonly contact?: string }[];
}
