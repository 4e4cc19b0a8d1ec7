/**
 * American wire gauge. ASTM B258: 36 AWG is 0.005 in and 4/0 is 0.46 in exactly, 39 equal ratios between them.
 * Gauges thicker than 1 are numbered downwards: 1/0 is 0, 2/0 is -1, 3/0 is -2, 4/0 is -3.
 */
export const THICKEST_GAUGE = -3;
export const THINNEST_GAUGE = 40;

const DIAMETER_36_MM = 0.127;
const RATIO_OVER_39_STEPS = 92;

/** Diameter in mm of a solid round conductor of a gauge (-3 to 40). */
export function gaugeDiameterMm(gauge: number): number {
  return DIAMETER_36_MM * RATIO_OVER_39_STEPS ** ((36 - gauge) / 39);
}

/** Metal area in mm2 of a gauge (-3 to 40). */
export function gaugeAreaMm2(gauge: number): number {
  return (Math.PI / 4) * gaugeDiameterMm(gauge) ** 2;
}
