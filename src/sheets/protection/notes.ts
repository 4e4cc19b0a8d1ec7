/** What stands at the foot of the Protection sheet: what it judges by, what it assumes, what it does not claim. */
import { FUSE_TYPE_SENTENCE } from '../../core/tables/iso-8820-types';

export const NOTES: readonly string[] = [
  'By the published limits and for the type of fuse assumed, never an approval. Times to open are the longest that ISO 8820-3 allows, from memory and from sheets of makers; no fuse is promised to open sooner.',
  `${FUSE_TYPE_SENTENCE} Type E has no limit of its own at 1.6 times: the figure there lies on the straight line of its neighbours.`,
  "Breaking capacity: blade types 1000 A at 32 V (ISO 8820-3), bolt-in types 2000 A (ISO 8820-5, from its abstract). Check the maker's sheet: many break less, some more.",
  'Where a fuse may not break its fault: one proved to break more in its place, or such a fuse between it and the battery.',
  'A dead short through the wire alone: contact resistance makes a real fault weaker, cold wire or a stiffer battery a stronger one. Runs on another source are taken with its volts and the milliohms of the Supply sheet.',
  'What the wire bears: adiabatic (IEC 60364-5-54, IEC 60949), all heat stays in the metal; cautious beyond about 5 s, and the limits of insulation are published for up to 5 s.',
  'Steady heat: one conductor alone, level, in still air (convection by Churchill and Chu 1975, radiation). Two side by side, a bundle or a conduit run hotter: the ampacity of the schedule holds as well.',
  'More runs in the schedule than rows here: insert rows above the blank one and copy the last row down; until then the schedule says "protection not judged".',
];
export const AT_WRITING =
  'In this copy, which needs no add-in, the steady heat is the value at writing; where a run has changed since, it says "not computed".';
