/**
 * Dry air at one atmosphere: F. J. McQuillan, J. R. Culham, M. M. Yovanovich, "Properties of dry air at one atmosphere",
 * report UW/MHTL 8406 G-01, University of Waterloo, 1984; its fits read where others reproduce them.
 */
export interface AirProperties {
  readonly wattsPerMK: number;
  readonly kinematicM2PerS: number;
  readonly prandtl: number;
}

/** Properties at a temperature in kelvin (250 to 600). */
export function airAt(tempK: number): AirProperties {
  const toOneAndAHalf = tempK * Math.sqrt(tempK); // a general power takes ten times as long
  const dynamicPaS = (1.4592e-6 * toOneAndAHalf) / (109.1 + tempK);
  const wattsPerMK = (2.334e-3 * toOneAndAHalf) / (164.54 + tempK);
  const joulePerKgK = 1030.5 - 0.19975 * tempK + 3.9734e-4 * tempK ** 2;
  const kgPerM3 = 351.99 / tempK + 344.84 / tempK ** 2;
  return {
    wattsPerMK,
    kinematicM2PerS: dynamicPaS / kgPerM3,
    prandtl: (dynamicPaS * joulePerKgK) / wattsPerMK,
  };
}
