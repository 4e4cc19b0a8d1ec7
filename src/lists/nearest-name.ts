/** The name that a misspelt one was probably meant to be. */
import leven, { closestMatch } from 'leven';
import { plain } from '../core/units';

/** One slip in this many characters still looks like a misspelling; a short name may have one. */
const CHARACTERS_PER_SLIP = 3;
/** Longer texts are no names; comparing them would take long and help nobody. */
const MOST_CHARACTERS = 100;

/** "Case 1" is no misspelling of "Case 3". */
function digitsDiffer(one: string, other: string): boolean {
  const [digits, others] = [one, other].map((text) => text.replace(/\D/g, ''));
  return digits !== '' && others !== '' && digits !== others;
}

/**
 * The likeliest of these names, as it is spelled there; undefined where none is near enough: at most one slip (a letter
 * too many, missing or wrong) in three characters. Case and the number of blanks do not matter.
 */
export function nearestName(name: string, names: Iterable<string>): string | undefined {
  const wanted = plain(name);
  if (wanted === '' || wanted.length > MOST_CHARACTERS) return undefined;
  const slips = Math.max(1, Math.floor(wanted.length / CHARACTERS_PER_SLIP));
  const spelled = new Map<string, string>();
  for (const candidate of names) {
    const key = plain(candidate);
    const isNear = Math.abs(key.length - wanted.length) <= slips;
    if (key !== '' && isNear && !digitsDiffer(key, wanted) && !spelled.has(key)) {
      spelled.set(key, candidate);
    }
  }
  const found = closestMatch(wanted, [...spelled.keys()], { maxDistance: slips });
  // Two names of one letter each are a slip apart and have nothing in common.
  const isAlike = found !== undefined && leven(found, wanted) < wanted.length;
  return isAlike ? spelled.get(found) : undefined;
}
