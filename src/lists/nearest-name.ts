/** The name that a misspelt one was probably meant to be. */
import leven, { closestMatch } from 'leven';
import { plain } from '../core/units';

/** One slip in this many characters still looks like a misspelling; a short name may have one. */
const CHARACTERS_PER_SLIP = 3;
/** Longer texts are no names; comparing them would take long and help nobody. */
const MOST_CHARACTERS = 100;

const digitsOf = (text: string) => text.replace(/\D/g, '');

/** "Case 1" is no misspelling of "Case 3". */
const digitsDiffer = (digits: string, others: string) =>
  digits !== '' && others !== '' && digits !== others;

interface Spelled {
  readonly name: string;
  readonly digits: string;
}

/** The likeliest of some names; they are made ready once for all the texts that are compared with them. */
export function nearestAmong(names: Iterable<string>): (name: string) => string | undefined {
  const spelled = new Map<string, Spelled>();
  for (const name of names) {
    const key = plain(name);
    if (key !== '' && !spelled.has(key)) spelled.set(key, { name, digits: digitsOf(key) });
  }
  return (name) => {
    const wanted = plain(name);
    if (wanted === '' || wanted.length > MOST_CHARACTERS) return undefined;
    const slips = Math.max(1, Math.floor(wanted.length / CHARACTERS_PER_SLIP));
    const digits = digitsOf(wanted);
    const near: string[] = [];
    for (const [key, { digits: others }] of spelled) {
      const isNear = Math.abs(key.length - wanted.length) <= slips;
      if (isNear && !digitsDiffer(digits, others)) near.push(key);
    }
    const found = closestMatch(wanted, near, { maxDistance: slips });
    // Two names of one letter each are a slip apart and have nothing in common.
    const isAlike = found !== undefined && leven(found, wanted) < wanted.length;
    return isAlike ? spelled.get(found)?.name : undefined;
  };
}

/**
 * The likeliest of these names, as it is spelled there; undefined where none is near enough: at most one slip (a letter
 * too many, missing or wrong) in three characters. Case and the number of blanks do not matter.
 */
export function nearestName(name: string, names: Iterable<string>): string | undefined {
  return nearestAmong(names)(name);
}
