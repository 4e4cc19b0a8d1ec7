/** A row of a list that could not be read, or was taken with something in it to look at. */
export interface RowProblem {
  readonly line: number;
  /** The row as it stands in the file. */
  readonly text: string;
  readonly why: string;
  /** Whether the row is among the runs all the same, its cells as they stand. */
  readonly taken: boolean;
}
