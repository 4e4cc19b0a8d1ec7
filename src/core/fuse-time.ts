/** How long a blade fuse takes to open, and whether that is soon enough for the wire. */
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
/** By rating in amps; undefined where no table is known. */
const BLADE_LIMITS = new Map(
  BLADE_RATINGS_A.map((ratingA) => [ratingA, assumedFuseType(ratingA).limits]),
);

/**
 * The limits of a rating, as longest times by multiples of it, for the type that the rating is taken for; none for a
 * rating that blade fuses do not have.
 */
export function openingLimits(ratingA: number): Outcome<readonly OpeningLimit[]> {
  return (
    BLADE_LIMITS.get(ratingA) ??
    noAnswer(
      `no longest time is known for ${ratingA} A: it is known for the blade ratings, ${BLADE_RATINGS_A.join(', ')} A; for other fuses see the maker's curve`,
    )
  );
}

/** Least current, in amps, at which a fuse must open at all. */
export function leastOpeningAmps(ratingA: number): Outcome<number> {
  const limits = openingLimits(ratingA);
  return isRefusal(limits) ? limits : ratingA * limits[0]!.timesRating;
}

/**
 * Time allowed for the arc after the element has melted, seconds: an estimate of ours. A direct-current arc at 12 to 58 V
 * lives for about as long as the inductance of the run feeds it, some tenths of a millisecond to a few milliseconds.
 */
export const ARCING_ALLOWANCE_S = 0.002;

/**
 * I^2 t of the last published point, A^2 s: what the slowest fuse of the rating that keeps the limits lets through there.
 * None for a rating that blade fuses do not have.
 */
export function lastPublishedI2t(ratingA: number): Outcome<number> {
  const limits = openingLimits(ratingA);
  if (isRefusal(limits)) return limits;
  const { timesRating, seconds } = limits.at(-1)!;
  return (timesRating * ratingA) ** 2 * seconds;
}

/**
 * Estimated seconds that a fuse takes at a current so great that its element has no time to lose heat: it melts at a
 * constant I^2 t (in A^2 s), then the arcing allowance. An estimate, not a longest time.
 */
export function estimatedOpeningSeconds(i2t: number, amps: number): number {
  // In this order the square of no current overflows.
  return i2t / amps / amps + ARCING_ALLOWANCE_S;
}

/**
 * Seconds that a blade fuse may take to open at a current in amps. Up to the last published point, at 6 times the rating,
 * the longest time: the limits of ISO 8820-3, straight between its points on logarithmic axes (fuses' own curves sag
 * below such chords). Beyond it the standard promises nothing shorter, and the answer is an estimate, not a longest time:
 * the element melts at the I^2 t of that point, or at `makersI2t` in A^2 s where the maker of the fuse gives one, to
 * which the arcing allowance is added; never more than the last published time. None below the least current at which
 * it must open. All of it holds up to the current and the volts that the fuse can break: see BLADE_BREAKING_A.
 */
export function fuseSeconds(ratingA: number, amps: number, makersI2t?: number): Outcome<number> {
  const limits = openingLimits(ratingA);
  if (isRefusal(limits)) return limits;
  const leastA = ratingA * limits[0]!.timesRating;
  if (!atMost(leastA, amps)) {
    return noAnswer(
      `${amps} A need never open a fuse of ${ratingA} A: it must open from ${Number(leastA.toPrecision(6))} A up`,
    );
  }
  const timesRating = Math.max(amps / ratingA, limits[0]!.timesRating);
  let above = 0;
  while (above < limits.length && limits[above]!.timesRating < timesRating) above += 1;
  if (above === 0) return limits[0]!.seconds;
  const to = limits[above];
  if (to === undefined) {
    const last = limits.at(-1)!;
    const i2t = makersI2t ?? (last.timesRating * ratingA) ** 2 * last.seconds;
    return Math.min(last.seconds, estimatedOpeningSeconds(i2t, amps));
  }
  const from = limits[above - 1]!;
  const share =
    Math.log(timesRating / from.timesRating) / Math.log(to.timesRating / from.timesRating);
  return from.seconds * (to.seconds / from.seconds) ** share;
}

/**
 * Whether a blade fuse opens before a short circuit of these amps hurts the conductor: its time (see fuseSeconds) is no
 * longer than the conductor's withstand time. False where it need not open at all (the fault is below 1.35 times its
 * rating), and where the fault is more than the fuse is proved to break. None for a rating whose times are not known.
 *
 * It judges that one fault, not the weaker ones. But a fuse that guards at two faults guards at every fault between:
 * what it lets through, I^2 t, falls up to the last published point and rises beyond it, and the conductor bears a
 * constant I^2 t. So a run is judged at both of its ends.
 */
export function fuseGuards(
  ratingA: number,
  size: ConductorSize,
  faultA: number,
  span: HeatSpan,
  makersI2t?: number,
): Outcome<boolean> {
  const leastA = leastOpeningAmps(ratingA);
  if (isRefusal(leastA)) return leastA;
  // Asked of a current that is surely above nothing, so that a senseless span is refused whatever the fault.
  const bearsSeconds = withstandSeconds(size, Math.max(faultA, leastA), span);
  if (isRefusal(bearsSeconds)) return bearsSeconds;
  if (!atMost(leastA, faultA)) return false;
  const opensSeconds = fuseSeconds(ratingA, faultA, makersI2t);
  return (
    !isRefusal(opensSeconds) &&
    atMost(opensSeconds, bearsSeconds) &&
    atMost(faultA, BLADE_BREAKING_A)
  );
}
