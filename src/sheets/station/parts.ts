/** What a person says on the Parts sheet: figures of the head, contacts and lugs, and those at the ends of a run. */
import type { TypedCells } from './named-cells';

export const PARTS_CELL_KEYS = ['holder', 'perEnd', 'spares'] as const;
export type PartsCellKey = (typeof PARTS_CELL_KEYS)[number];

/** Of a contact or lug: its name in words of the user's own, the sizes that it takes, amps and milliohms. */
export const CONTACT_KEYS = ['name', 'thinnest', 'thickest', 'amps', 'milliohms'] as const;
export type ContactKey = (typeof CONTACT_KEYS)[number];
export type ContactTyped = Readonly<Partial<Record<ContactKey, string | number>>>;

/** By its name, the contact at the source end of a run, at its fuse or feeder, and at its far end. */
export const RUN_CONTACT_KEYS = ['sourceEnd', 'farEnd'] as const;
export type RunContactKey = (typeof RUN_CONTACT_KEYS)[number];

export interface PartsTyped {
  readonly cells?: TypedCells<PartsCellKey>;
  readonly contacts?: readonly ContactTyped[];
  /** Run by run, in the order of the schedule. */
  readonly runs?: readonly Readonly<Partial<Record<RunContactKey, string>>>[];
}
