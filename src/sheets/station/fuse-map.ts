/** What a person says of the places in fuse blocks. */
export interface FuseMapRun {
  /** As the block has it: a number, or a word. */
  readonly position?: string | number;
}

export interface FuseMapTyped {
  /** By the place of the run in the list. */
  readonly runs?: readonly FuseMapRun[];
}
