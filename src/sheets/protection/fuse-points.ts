/** Fuse types as rows of one table: their longest times at the same multiples of the rating. */
import { CARRIES_FOR_HOURS, OPENING_TYPES_C_F } from '../../core/tables/iso-8820-3-times';
import type { FuseType } from '../../core/tables/iso-8820-types';

/** Multiples of the rating that the table has columns for; types C and F have a point at each. */
export const MULTIPLES: readonly number[] = OPENING_TYPES_C_F.map(({ timesRating }) => timesRating);

/**
 * A formula for the multiple of its rating at which a fuse may open within `seconds`, a cell: straight between the points
 * of the shortest times (logarithmic axes), beyond them the nearer end. Where no times are known, its rating.
 */
export function mayOpenAt({ shortest }: FuseType, seconds: string): string {
  if (shortest === undefined) return '1';
  const last = shortest.at(-1)!;
  const between = shortest.slice(1).reduceRight((further, to, index) => {
    const from = shortest[index]!;
    const power = Math.log(to.timesRating / from.timesRating) / Math.log(from.seconds / to.seconds);
    return `IF(${seconds}>${to.seconds},${from.timesRating}*(${from.seconds}/${seconds})^${power},${further})`;
  }, String(last.timesRating));
  return `IF(${seconds}>${shortest[0]!.seconds},${CARRIES_FOR_HOURS},${between})`;
}

/**
 * Seconds at each multiple; where the type has no point of its own, the one on its straight line between neighbours
 * (logarithmic axes), so that looking up the table answers the same. None for a type without times.
 */
export function timesAt({ limits }: FuseType): readonly (number | null)[] {
  return MULTIPLES.map((multiple) => {
    const above = limits?.findIndex(({ timesRating }) => timesRating >= multiple) ?? -1;
    const to = limits?.[above];
    if (to === undefined) return null;
    const from = limits?.[above - 1];
    if (from === undefined || to.timesRating === multiple) return to.seconds;
    const share =
      Math.log(multiple / from.timesRating) / Math.log(to.timesRating / from.timesRating);
    return from.seconds * (to.seconds / from.seconds) ** share;
  });
}
