/**
 * Most volts of a cell while it is charged, by chemistry: what a circuit on the battery can reach. Common practice, from
 * memory: lead-acid 2.4 V (absorption near 25 degC, more in the cold), LiFePO4 3.65 V, Li-ion 4.2 V.
 */
import type { Chemistry } from './resting-volts';

export const CHARGING_VOLTS: Readonly<Record<Chemistry, number>> = {
  'lead-acid': 2.4,
  LiFePO4: 3.65,
  'Li-ion': 4.2,
};
