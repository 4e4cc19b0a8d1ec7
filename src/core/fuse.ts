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

/** Smallest standard rating, in amps, that carries the load; none above the largest rating of the series. */
export function smallestFuseFor(amps: number, continuous: boolean): Outcome<number> {
  const neededA = amps * fuseShare(continuous);
  const found = FUSE_RATINGS.find(({ ratingA }) => atMost(neededA, ratingA));
  return (
    found?.ratingA ??
    noAnswer(
      `the load needs a fuse of ${amount(neededA, 'A')} and the largest standard rating is ${FUSE_RATINGS.at(-1)!.ratingA} A; divide the load`,
    )
  );
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
  if (isRefusal(ratingA)) return ratingA;
  if (!atMost(ratingA, ampacityA)) {
    // Rounded down, or 24.98 A would be told as the 25 A it is not.
    const shownAmpacityA = Math.floor(ampacityA * 10) / 10;
    return noAnswer(
      `the load needs a fuse of ${ratingA} A and the conductor may carry ${shownAmpacityA} A; take a thicker size`,
    );
  }
  return limitA === undefined || atMost(ratingA, limitA)
    ? ratingA
    : noAnswer(
        `the load needs a fuse of ${ratingA} A and the rule for small wires, fuse_limit, allows ${limitA} A; take a thicker size`,
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
