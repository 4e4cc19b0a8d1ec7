/** The kind of a fuse, as it is typed for the house, for a run or for the main fuse, and what follows from it. */
import { BY_RATING, FUSE_KINDS, OWN_FUSE, type FuseKind } from '../../core/tables/fuse-kinds';
import type { Parameter } from '../../functions/parameter';
import { text } from '../plan/formula';

/** Ratings in amps from which a fuse is bolted in, where only its rating is known. */
const BOLT_IN_FROM_A = 125;

export const FUSE_KIND_CHOICES: readonly string[] = [
  BY_RATING,
  ...Object.keys(FUSE_KINDS),
  OWN_FUSE,
];

export const fuseKind: Parameter = {
  name: 'fuse_kind',
  meaning: `What a fuse is made to break: "${FUSE_KIND_CHOICES.join('", "')}"; a fuse of your own needs the amps it breaks and its volts.`,
  choices: FUSE_KIND_CHOICES,
  read: (given) => given,
};

/** The kind in force, as a formula: what is typed, or the house's, or by the rating. */
export function kindInForce(typed: string, house: string, rating: string): string {
  const byRating = `IF(${rating}>=${BOLT_IN_FROM_A},"bolt-in","blade")`;
  const isByRating = (kind: string) => `OR(${kind}="",${kind}=${text(BY_RATING)})`;
  return `IF(${typed}="",IF(${isByRating(house)},${byRating},${house}),IF(${isByRating(typed)},${byRating},${typed}))`;
}

/** A figure of the kind in force, as a formula; empty text for a fuse of one's own. */
export function figureByKind(
  typed: string,
  house: string,
  rating: string,
  figure: (of: FuseKind) => number,
): string {
  const kind = kindInForce(typed, house, rating);
  return Object.entries(FUSE_KINDS).reduceRight(
    (further, [name, of]) => `IF(${kind}=${text(name)},${figure(of)},${further})`,
    '""',
  );
}
