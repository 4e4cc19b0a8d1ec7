/** The usual cautions, wherever the work can hurt someone. */
export const CAUTIONS: readonly string[] = [
  'Advice, not approval: local codes and licensed practice come first.',
  'A battery can deliver hundreds to thousands of amps into a fault: fuse every run at its source end, close to the battery, before it is connected.',
  "Figures are by the published tables named in each function's help; check the marking of the wire and the maker's sheet of fuse and holder.",
];

export const PRINT_FOOTER =
  'Advice, not approval. Local codes and licensed practice come first. Fuse every run at its source end.';

/** What a printed page of the Protection sheet must not go without. */
export const PROTECTION_FOOTER =
  "By published limits, one conductor alone in still air; check the makers' sheets. Advice, not approval.";

/** The cautions as they stand at the foot of the crew's page. Two lines, and short enough for a spreadsheet's footer. */
export const CREW_FOOTER =
  'Advice, not approval: local codes and licensed practice come first. Check the marking of wire and fuse.\n' +
  'A battery can give thousands of amps into a fault: fuse every run at its source end before it is connected.';
