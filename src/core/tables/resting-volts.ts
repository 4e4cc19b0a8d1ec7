/**
 * Volts at rest against state of charge, by battery chemistry: no current for hours, near 25 degC. Straight between the
 * points.
 */
export const CHEMISTRIES = ['lead-acid', 'LiFePO4', 'Li-ion'] as const;
export type Chemistry = (typeof CHEMISTRIES)[number];

export interface RestingVolts {
  /** Cells in series in the pack that the volts are of. */
  readonly cells: number;
  /** Cells of the usual pack of the chemistry in 12 V work. */
  readonly usualCells: number;
  /** Share of the charge left, ascending from 0 to 1, and the volts at it. */
  readonly points: readonly (readonly [charge: number, volts: number])[];
  readonly source: string;
}

const OCV_STUDY =
  'S. Sunil, K. R. Pattipati, B. Balasingam, Piecewise Linear Approximation of Battery Open-Circuit Voltage Characteristics Using Dynamic Programming, IEEE Transactions on Instrumentation and Measurement, 2025, breakpoints published with it';

export const RESTING_VOLTS: Readonly<Record<Chemistry, RestingVolts>> = {
  // Other published sets for flooded and sealed batteries lie within 0.1 V from 25 % up.
  'lead-acid': {
    cells: 6,
    usualCells: 6,
    points: [
      [0, 11.89],
      [0.25, 12.06],
      [0.5, 12.24],
      [0.75, 12.45],
      [1, 12.65],
    ],
    source:
      'Battery Council International, state of charge by open-circuit voltage (from memory; other published sets within 0.1 V)',
  },
  // One cell measured at a thirty-second of its capacity an hour, mean of charge and discharge, emptied to 2.0 V; a pack's
  // protection commonly stops at 2.5 V, half a per cent of charge sooner. The study's last points, 3.418 V at 99.5 % and
  // 3.598 V at 100 %, are the charger's push: a rested cell settles back to the end of the plateau, so it ends there here.
  LiFePO4: {
    cells: 1,
    usualCells: 4,
    points: [
      [0, 2.0102],
      [0.0033, 2.4177],
      [0.0117, 2.7405],
      [0.0267, 2.9299],
      [0.0534, 3.0872],
      [0.0885, 3.1942],
      [0.2972, 3.2772],
      [0.9833, 3.3511],
      [1, 3.3511],
    ],
    source: `${OCV_STUDY}; lithium iron phosphate, without the charger's push above 98 %`,
  },
  // One cell of a nickel-rich oxide measured at a twentieth of its capacity an hour, mean of charge and discharge.
  'Li-ion': {
    cells: 1,
    usualCells: 4,
    points: [
      [0, 2.5],
      [0.005, 2.808],
      [0.0352, 3.1179],
      [0.0854, 3.3182],
      [0.1357, 3.4193],
      [0.2915, 3.5826],
      [0.4523, 3.6941],
      [0.8392, 4.0664],
      [0.9548, 4.1121],
      [1, 4.2],
    ],
    source: `${OCV_STUDY}; nickel-rich lithium-ion`,
  },
};
