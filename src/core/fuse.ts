/** The fuse protects the wire: big enough for the load, no bigger than the conductor may carry. */
import { atMost } from './limits';
import { isRefusal, noAnswer, type Outcome } from './outcome';
import { amount } from './sentence';
import { CRAFT_FUSE_MOST_SHARE, CRAFT_FUSE_SHARE_BELOW_V } from './tables/33cfr-183-455';
import { FUSE_RATINGS } from './tables/iso-8820-ratings';

/**
 * Share of a load's current that its fuse must be rated for: 1.25 where it may run for hours (NFPA 70 210.20 and
 * 215.3, continuous loads), 1 for short bursts such as transmitting.
 */
export function fuseShare(continuous: boolean): number {
  return continuous ? 1.25 : 1;
}

const RATINGS_A = FUSE_RATINGS.map(({ ratingA }) => ratingA);

/** Smallest standard rating, in amps, of at least so many; undefined above the largest rating of the series. */
function ratingOf(neededA: number): number | undefined {
  for (const ratingA of RATINGS_A) if (atMost(neededA, ratingA)) return ratingA;
  return undefined;
}

/** Smallest standard rating, in amps, that carries the load; none above the largest rating of the series. */
export function smallestFuseFor(amps: number, continuous: boolean): Outcome<number> {
  const neededA = amps * fuseShare(continuous);
  return (
    ratingOf(neededA) ??
    noAnswer(
      `the load needs a fuse of ${amount(neededA, 'A')} and the largest standard rating is ${RATINGS_A.at(-1)} A; divide the load`,
    )
  );
}

/** Whether a rating, in amps, guards a conductor of this ampacity and keeps the limit of small wires, if it has one. */
export function fuseFits(ratingA: number, ampacityA: number, limitA: number | undefined): boolean {
  return atMost(ratingA, ampacityA) && (limitA === undefined || atMost(ratingA, limitA));
}

/** Whether there is a fuse for a run: see fuseFor, which says why not. */
export function hasFuse(
  amps: number,
  ampacityA: number,
  continuous: boolean,
  limitA?: number,
): boolean {
  const ratingA = ratingOf(amps * fuseShare(continuous));
  return ratingA !== undefined && fuseFits(ratingA, ampacityA, limitA);
}

/**
 * The fuse of a run: smallest standard rating for the load that is at most the conductor's ampacity in amps, and at most
 * `limitA` where a rule limits the fuses of so small a wire (see fuseLimitA).
 */
export function fuseFor(
  amps: number,
  ampacityA: number,
  continuous: boolean,
  limitA?: number,
): Outcome<number> {
  const ratingA = smallestFuseFor(amps, continuous);
  if (isRefusal(ratingA) || fuseFits(ratingA, ampacityA, limitA)) return ratingA;
  if (!atMost(ratingA, ampacityA)) {
    // Rounded down, or 24.98 A would be told as the 25 A it is not.
    const shownAmpacityA = Math.floor(ampacityA * 10) / 10;
    return noAnswer(
      `the load needs a fuse of ${ratingA} A and the conductor may carry ${shownAmpacityA} A; take a thicker size`,
    );
  }
  return noAnswer(
    `the load needs a fuse of ${ratingA} A and the rule for small wires, fuse_limit, allows ${limitA!} A; take a thicker size`,
  );
}

/**
 * Amps of the greatest fuse that 33 CFR 183.455(c) allows in craft on a conductor of this ampacity (table 5, corrected):
 * 150 % of it under 50 V, as much as it from 50 V on. Between the ampacity and this the rule is kept, but the fuse does
 * not guard against a lasting overload.
 */
export function greatestCraftFuseA(ampacityA: number, volts: number): number {
  return volts < CRAFT_FUSE_SHARE_BELOW_V ? CRAFT_FUSE_MOST_SHARE * ampacityA : ampacityA;
}
