/**
 * Internal resistance of a 12 V pack, protection circuit and terminals included, as milliohms times amp-hours: 100 Ah of
 * lead-acid about 5 milliohms. Common practice, no source; it rises with age, cold and a low charge. Measure where it
 * matters: volts lost at the terminals over amps drawn.
 */
import type { Chemistry } from './resting-volts';

export const MILLIOHM_AMP_HOURS: Readonly<Record<Chemistry, number>> = {
  'lead-acid': 500,
  LiFePO4: 800,
  'Li-ion': 800,
};
