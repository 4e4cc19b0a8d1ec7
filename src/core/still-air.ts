/** Heat that a horizontal cylinder gives to still air and to the walls around it. */
import { airAt } from './tables/air';

export const KELVIN_AT_0_C = 273.15;
/** Standard gravity, ISO 80000-3. */
const GRAVITY_M_PER_S2 = 9.80665;
/** Stefan-Boltzmann constant, exact in the SI of 2019 to the digits given. */
const STEFAN_BOLTZMANN_W_PER_M2_K4 = 5.670374e-8;

/**
 * Mean Nusselt number of natural convection on a long horizontal cylinder at one temperature: S. W. Churchill and
 * H. H. S. Chu, International Journal of Heat and Mass Transfer 18 (1975) 1049; Rayleigh numbers 1e-5 to 1e12 on the
 * diameter.
 */
export function nusseltOfHorizontalCylinder(rayleigh: number, prandtl: number): number {
  // Powers by roots where they can be, which takes a quarter of the time: x^(9/16) is x^(1/2) x^(1/16).
  const root = Math.sqrt(0.559 / prandtl);
  const to9Of16 = root * Math.sqrt(Math.sqrt(Math.sqrt(root)));
  const forPrandtl = (1 + to9Of16) ** (8 / 27);
  return (0.6 + (0.387 * Math.cbrt(Math.sqrt(rayleigh))) / forPrandtl) ** 2;
}

/** Watts per metre that natural convection carries off, air properties at the mean of surface and air. */
export function convectionWattsPerM(diameterM: number, surfaceC: number, airC: number): number {
  const riseK = surfaceC - airC;
  const filmK = (surfaceC + airC) / 2 + KELVIN_AT_0_C;
  const { wattsPerMK, kinematicM2PerS, prandtl } = airAt(filmK);
  const grashof = (GRAVITY_M_PER_S2 * riseK * diameterM ** 3) / (filmK * kinematicM2PerS ** 2);
  // Nu k / d times the surface pi d of a metre: the diameter drops out.
  return nusseltOfHorizontalCylinder(grashof * prandtl, prandtl) * wattsPerMK * Math.PI * riseK;
}

/** Watts per metre that a grey surface radiates to surroundings at the temperature of the air. */
export function radiationWattsPerM(
  diameterM: number,
  surfaceC: number,
  airC: number,
  emissivity: number,
): number {
  const surfaceK2 = (surfaceC + KELVIN_AT_0_C) ** 2;
  const airK2 = (airC + KELVIN_AT_0_C) ** 2;
  const fourths = surfaceK2 * surfaceK2 - airK2 * airK2;
  return emissivity * STEFAN_BOLTZMANN_W_PER_M2_K4 * Math.PI * diameterM * fourths;
}
