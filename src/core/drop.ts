/** Voltage drop of a run: its conductors and the joints, Ohm's law. */
import { ohmsPerM } from './conductor';
import { atMost } from './limits';
import { noAnswer, type Outcome } from './outcome';
import { amount } from './sentence';
import type { ConductorSize } from './size';
import type { Material } from './tables/materials';

/** What a run is made of, all but its size. Length is one way, source to load. */
export interface Route {
  readonly lengthM: number;
  readonly material: Material;
  /** Conductor temperature. */
  readonly tempC: number;
  /** Fuse holder, contacts and crimps of the whole run together. */
  readonly jointMilliohms: number;
  /** Of the chassis that the current returns through; nothing where a second conductor brings it back. */
  readonly returnMilliohms?: number | undefined;
}

/** Conductors that count: two, or one where the current returns through a chassis. */
export function conductorsOf({ returnMilliohms }: Pick<Route, 'returnMilliohms'>): number {
  return returnMilliohms === undefined ? 2 : 1;
}

/** Ohms of what is there whatever the length and the size: the joints, and the chassis where one brings the current back. */
export function fixedOhms(route: Pick<Route, 'jointMilliohms' | 'returnMilliohms'>): number {
  return (route.jointMilliohms + (route.returnMilliohms ?? 0)) / 1000;
}

/** Ohms of a run: both conductors and the joints, or one conductor, the joints and the chassis. */
export function runOhms(size: ConductorSize, route: Route): number {
  return runOhmsOf(ohmsPerM(size, route.material, route.tempC), route);
}

/** The same of a conductor whose ohms per metre are known. */
export function runOhmsOf(
  perM: number,
  route: Pick<Route, 'lengthM' | 'jointMilliohms' | 'returnMilliohms'>,
): number {
  return conductorsOf(route) * route.lengthM * perM + fixedOhms(route);
}

/** Volts lost: amps times ohms. No current loses nothing, even where the ohms are past all counting. */
export function lostVolts(amps: number, ohms: number): number {
  return amps === 0 ? 0 : amps * ohms;
}

/** Volts left at a load of steady current; none where the run would lose more than the source has. */
export function loadVolts(volts: number, amps: number, ohms: number): Outcome<number> {
  const lost = lostVolts(amps, ohms);
  const left = volts - lost;
  return left >= 0
    ? left
    : noAnswer(
        `this run cannot carry ${amps} A: it would lose ${amount(lost, 'V')} and the source has ${volts} V`,
      );
}

/**
 * Amps a load of steady power draws from a source through a resistance: the smaller root of I (V - I R) = P, written
 * so that it stays exact for small resistances. None where the most that can be delivered, V^2 / 4R, is less.
 */
export function steadyPowerAmps(watts: number, volts: number, ohms: number): Outcome<number> {
  const ampsWithoutDrop = watts / volts;
  if (ohms === 0) return ampsWithoutDrop;
  const shareOfMost = 4 * ampsWithoutDrop * (ohms / volts);
  if (!atMost(shareOfMost, 1)) {
    return noAnswer(
      `the cable cannot deliver ${watts} W: through ${ohms} ohm from ${volts} V the most is ${amount((volts / (4 * ohms)) * volts, 'W')}`,
    );
  }
  return (2 * ampsWithoutDrop) / (1 + Math.sqrt(Math.max(0, 1 - shareOfMost)));
}

/** What loses volts at any length, as a sentence names it. */
export function fixedParts({ returnMilliohms }: Pick<Route, 'returnMilliohms'>): string {
  return returnMilliohms === undefined ? 'the joints' : 'joints and chassis';
}

/** Longest one-way length in metres that keeps the drop within a share of the source voltage. */
export function longestRunM(
  amps: number,
  volts: number,
  maxDrop: number,
  size: ConductorSize,
  route: Omit<Route, 'lengthM'>,
): Outcome<number> {
  if (amps === 0) return noAnswer('0 amps lose nothing over any length: there is no longest run');
  const ohmsAllowed = (volts * maxDrop) / amps - fixedOhms(route);
  return ohmsAllowed >= 0
    ? ohmsAllowed / (conductorsOf(route) * ohmsPerM(size, route.material, route.tempC))
    : noAnswer(
        `${fixedParts(route)} alone lose more than the target; improve them or carry less current`,
      );
}

/** Most amps that keep the drop within a share of the source voltage; says nothing about heat. */
export function mostAmpsByDrop(volts: number, maxDrop: number, ohms: number): Outcome<number> {
  return ohms > 0
    ? (volts * maxDrop) / ohms
    : noAnswer('a run of no length and no joints loses nothing: there is no most');
}
