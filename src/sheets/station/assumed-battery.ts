import type { Chemistry } from '../../core/tables/resting-volts';

/** What is assumed of a battery of which nothing is typed. */
export const ASSUMED = { chemistry: 'lead-acid', ampHours: 100 } as const satisfies {
  chemistry: Chemistry;
  ampHours: number;
};
