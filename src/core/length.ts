/** Length units and their metres (international foot and inch, exact by definition, 1959). */
export const METRES_PER = {
  ft: 0.3048,
  in: 0.0254,
  m: 1,
  cm: 0.01,
  mm: 0.001,
} as const;

export type LengthUnit = keyof typeof METRES_PER;
export const LENGTH_UNITS = Object.keys(METRES_PER) as readonly LengthUnit[];

/** Metres of a length given in a unit. */
export function toMetres(length: number, unit: LengthUnit): number {
  return length * METRES_PER[unit];
}

/** The length in a unit of so many metres. */
export function fromMetres(lengthM: number, unit: LengthUnit): number {
  return lengthM / METRES_PER[unit];
}
