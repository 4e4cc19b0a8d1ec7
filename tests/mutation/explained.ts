/**
 * Mutants that no test can or need catch, read one by one. They still count as survivors; the report says why. Each is named
 * by its file and by the line as `npm run mutate` tells it.
 */
export interface Explained {
  readonly file: string;
  readonly told: string;
  readonly why: string;
}

export const EXPLAINED: readonly Explained[] = [];
