/** What people write in the columns that hold one of a few words. */
import { LOAD_KINDS } from '../core/feeders';
import { nameKey } from '../core/feeder-tree';
import { RETURNS } from '../sheets/station/parameters';
import { FUSED_CHOICES, PANEL } from '../sheets/station/verdicts';
import type { RunKey } from './headings';
import { plain } from '../core/units';

interface KnownWords {
  /** The schedule's own word, by all that means it, in lower case. */
  readonly meant: readonly (readonly [spellings: string, word: string])[];
  /** Said of anything else. */
  readonly otherwise: string;
}

const [YES, NO] = FUSED_CHOICES;
const [AMPS, WATTS] = LOAD_KINDS;
const [WIRE, CHASSIS] = RETURNS;

const YES_OR_NO: KnownWords = {
  meant: [
    ['yes|y|true|1', YES],
    ['no|n|none|no fuse|false|0|-|–|—', NO],
  ],
  otherwise: `is neither ${YES} nor ${NO}`,
};

const KNOWN: Readonly<Partial<Record<RunKey, KnownWords>>> = {
  fused: YES_OR_NO,
  endFused: YES_OR_NO,
  returns: {
    meant: [
      ['wire|second wire|two wires|2 wires|two wire|2 wire', WIRE],
      ['chassis|body|frame|through chassis|through the chassis', CHASSIS],
    ],
    otherwise: `is neither ${WIRE} nor ${CHASSIS}`,
  },
  kind: {
    meant: [
      ['a|amp|amps|ampere|amperes', AMPS],
      ['w|watt|watts', WATTS],
    ],
    otherwise: `is neither ${AMPS} (amps) nor ${WATTS} (watts)`,
  },
};

export type ReadWord = { readonly word: string } | { readonly doubt: string };

/** The schedule's word that a text of this column means, or why it means none; undefined where any text will do. */
export function readWord(key: RunKey, text: string): ReadWord | undefined {
  const known = KNOWN[key];
  if (known === undefined) return undefined;
  const found = known.meant.find(([spellings]) => spellings.split('|').includes(plain(text)));
  return found === undefined ? { doubt: `"${text}" ${known.otherwise}` } : { word: found[1] };
}

/** The battery, where a list names it; a schedule leaves the cell blank for it. */
export const BATTERY = 'battery';

/** Sources that may stand in "Fed from" besides the names of runs. */
export const SOURCES: readonly string[] = [BATTERY, PANEL];

/** Whether a text names the battery, and not a run that somebody called so. */
export function isBattery(text: string, names: ReadonlySet<string>): boolean {
  return nameKey(text) === BATTERY && !names.has(BATTERY);
}
