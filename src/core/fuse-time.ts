/** How long a blade fuse may take to open, and whether that is soon enough for the wire. */
import { atMost } from './limits';
import { isRefusal, noAnswer, type Outcome } from './outcome';
import type { ConductorSize } from './size';
import type { OpeningLimit } from './tables/iso-8820-3-times';
import { FUSE_RATINGS } from './tables/iso-8820-ratings';
import { assumedFuseType, BLADE_BREAKING_A } from './tables/iso-8820-types';
import { withstandSeconds, type HeatSpan } from './withstand';

const BLADE_RATINGS_A = FUSE_RATINGS.filter(({ kind }) => kind === 'blade').map(
  ({ ratingA }) => ratingA,
);

/**
 * The limits of a rating, as longest times by multiples of it, for the type that the rating is taken for; none for a
 * rating that blade fuses do not have.
 */
export function openingLimits(ratingA: number): Outcome<readonly OpeningLimit[]> {
  const { limits } = assumedFuseType(ratingA);
  if (limits === undefined || !BLADE_RATINGS_A.includes(ratingA)) {
    return noAnswer(
      `no longest time is known for ${ratingA} A: it is known for the blade ratings, ${BLADE_RATINGS_A.join(', ')} A; for other fuses see the maker's curve`,
    );
  }
  return limits;
}

/** Least current, in amps, at which a fuse must open at all. */
export function leastOpeningAmps(ratingA: number): Outcome<number> {
  const limits = openingLimits(ratingA);
  return isRefusal(limits) ? limits : ratingA * limits[0]!.timesRating;
}

/** What the arc lasts once the element has melted, seconds: an estimate of ours, of a few milliseconds at low volts. */
export const ARC_SECONDS = 0.002;

/**
 * Time in seconds that a blade fuse may take to open at a current in amps. Up to the last point that ISO 8820-3 publishes
 * the longest it allows, straight between its points on logarithmic axes (fuses' own curves sag below such chords). Beyond
 * it an estimate: the element has no time to lose heat and melts at a constant I2t, that of the last point, so the time
 * falls as 1/I2; ARC_SECONDS are added, and the sum is never more than the last published time. None below the least
 * current at which it must open. It holds up to what the fuse breaks and at its rated volts: see BLADE_BREAKING_A.
 */
export function fuseSeconds(ratingA: number, amps: number): Outcome<number> {
  const limits = openingLimits(ratingA);
  if (isRefusal(limits)) return limits;
  const leastA = ratingA * limits[0]!.timesRating;
  if (!atMost(leastA, amps)) {
    return noAnswer(
      `${amps} A need never open a fuse of ${ratingA} A: it must open from ${Number(leastA.toPrecision(6))} A up`,
    );
  }
  const timesRating = Math.max(amps / ratingA, limits[0]!.timesRating);
  const above = limits.findIndex((limit) => limit.timesRating >= timesRating);
  if (above === 0) return limits[0]!.seconds;
  const to = limits[above];
  if (to === undefined) {
    const last = limits.at(-1)!;
    const melts = last.seconds * (last.timesRating / timesRating) ** 2;
    return Math.min(last.seconds, melts + ARC_SECONDS);
  }
  const from = limits[above - 1]!;
  const share =
    Math.log(timesRating / from.timesRating) / Math.log(to.timesRating / from.timesRating);
  return from.seconds * (to.seconds / from.seconds) ** share;
}

/**
 * Whether a blade fuse opens before the conductor is hurt, by the published limits: its longest time is no longer than
 * the conductor's withstand time. False where it need not open at all (the fault is below 1.35 times its rating), and
 * where the fault is more than the fuse is proved to break. None for a rating whose times are not known.
 */
export function fuseGuards(
  ratingA: number,
  size: ConductorSize,
  faultA: number,
  span: HeatSpan,
): Outcome<boolean> {
  const leastA = leastOpeningAmps(ratingA);
  if (isRefusal(leastA)) return leastA;
  // Asked of a current that is surely above nothing, so that a senseless span is refused whatever the fault.
  const bearsSeconds = withstandSeconds(size, Math.max(faultA, leastA), span);
  if (isRefusal(bearsSeconds)) return bearsSeconds;
  const opensSeconds = fuseSeconds(ratingA, faultA);
  return (
    !isRefusal(opensSeconds) &&
    atMost(opensSeconds, bearsSeconds) &&
    atMost(faultA, BLADE_BREAKING_A)
  );
}
