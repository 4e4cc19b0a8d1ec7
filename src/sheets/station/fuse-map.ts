/** What a person says of the places in fuse blocks. */
export const POSITION_KEYS = ['position', 'farPosition'] as const;
export type PositionKey = (typeof POSITION_KEYS)[number];

/** As the block has it, a number or a word: of the fuse at the source end of a run, and of one at its far end. */
export type FuseMapRun = Readonly<Partial<Record<PositionKey, string | number>>>;

export interface FuseMapTyped {
  /** By the place of the run in the list. */
  readonly runs?: readonly FuseMapRun[];
}
