/** What stands at the foot of the Protection sheet: what it judges by, what it assumes, what it does not claim. */
import { BAD_CHASSIS_TIMES } from '../station/parameters';
import { FUSE_TYPE_SENTENCE } from '../../core/tables/iso-8820-types';

export const NOTES: readonly string[] = [
  'By the published limits and for the type of fuse assumed, never an approval. Times to open are the longest that ISO 8820-3 allows, from memory and from sheets of makers; no fuse is promised to open sooner.',
  `${FUSE_TYPE_SENTENCE} Type E has no limit of its own at 1.6 times: the figure there lies on the straight line of its neighbours.`,
  "Breaking capacity: blade types 1000 A at 32 V (ISO 8820-3), bolt-in types 2000 A (ISO 8820-5, from its abstract). Check the maker's sheet: many break less, some more.",
  'Where a fuse may not break its fault: one proved to break more in its place, or such a fuse between it and the battery.',
  'A dead short through the wire alone: contact resistance makes a real fault weaker, cold wire or a stiffer battery a stronger one. A run with source volts of its own is taken with those and the milliohms of its source on the Supply sheet.',
  'A run that ends at a battery is judged for that one as well: by a fuse of the same rating right at it, whose figures are those of this row. A charger gives no more than its own current.',
  `A return through a chassis counts ${BAD_CHASSIS_TIMES} times its milliohms when a far fault is judged (rust and paint; ours, common practice).`,
  'As a load starts: a blade may open within the surge from so many times its rating on as makers print for the shortest times (from memory); of other fuses no such times are known.',
  'What the wire bears: adiabatic (IEC 60364-5-54, IEC 60949), all heat stays in the metal; cautious beyond about 5 s, and the limits of insulation are published for up to 5 s.',
  'Steady heat: one conductor alone, level, in still air (convection by Churchill and Chu 1975, radiation). Two side by side, a bundle or a conduit run hotter: the ampacity of the schedule holds as well.',
  'More runs in the schedule than rows here: insert rows above the blank one and copy the last row down; until then the schedule says "protection not judged".',
];
export const AT_WRITING =
  'In this copy, which needs no add-in, the steady heat is the value at writing; where a run has changed since, it says "not computed".';
