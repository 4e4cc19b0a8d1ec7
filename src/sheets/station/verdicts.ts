/**
 * Everything that a verdict can say of a run, gravest first: the word, how grave it is, why it is said, and what to do.
 * The sheets, their colours and legends, the pane and the terminal all read this table.
 */
import { VERDICT_JOINT, VERDICT_WORDS } from '../../core/verdict';

/**
 * How grave a verdict is, gravest first. danger: fire, or a fault that nothing clears. fails: the load will not work, or a
 * target is missed. unclear: an entry is missing or not understood. check: right as far as it could be judged, one named
 * thing is left to confirm. ok: everything was judged and holds.
 */
export const LEVELS = ['danger', 'fails', 'unclear', 'check', 'ok'] as const;
export type Level = (typeof LEVELS)[number];

export interface Verdict {
  readonly word: string;
  readonly level: Level;
  readonly why: string;
  /** What to do about it. */
  readonly remedy: string;
}

export const VERDICTS = {
  heat: {
    word: VERDICT_WORDS.heat,
    level: 'danger',
    why: 'more current flows than the published table allows the conductor as installed',
    remedy: 'take a thicker size, or one of a higher insulation rating',
  },
  tooHot: {
    word: 'hotter than its insulation',
    level: 'danger',
    why: 'by its heat balance the conductor grows hotter than its insulation is rated for',
    remedy: 'take a thicker size, or one of a higher insulation rating',
  },
  fuse: {
    word: VERDICT_WORDS.fuse,
    level: 'danger',
    why: 'no standard fuse both carries the load and protects the conductor',
    remedy: 'take a thicker size',
  },
  needsFuse: {
    word: 'branch needs its own fuse',
    level: 'danger',
    why: 'the fuse upstream is larger than the conductor may carry',
    remedy: 'give the branch a fuse at its source end, or wire that the fuse upstream protects',
  },
  fuseTooSlow: {
    word: 'fuse too slow for this wire',
    level: 'danger',
    why: 'by the published limits the wire may be hurt before the fuse opens',
    remedy: 'take a thicker size or a smaller fuse',
  },
  faultTooWeak: {
    word: 'fault too weak to open the fuse',
    level: 'danger',
    why: 'a short at the far end draws less than the fuse must open at',
    remedy: 'take a thicker size or a smaller fuse',
  },
  mayNotBreak: {
    word: 'fuse may not break this fault',
    level: 'danger',
    why: 'a short right behind the fuse draws more than its type is made to break',
    remedy: 'take a fuse that breaks more, or put such a one between it and the battery',
  },
  noSize: {
    word: 'no size serves',
    level: 'danger',
    why: 'no size of the series keeps the target, carries the current and takes a standard fuse',
    remedy: 'shorten the run, split the load, raise the source volts or take another series',
  },
  noAmpacity: {
    word: 'no published ampacity',
    level: 'danger',
    why: 'the published tables give no ampacity for this size as installed',
    remedy: 'take a size, a material or a rating that the table has',
  },
  cannotBeServed: {
    word: 'cannot be served at low charge',
    level: 'fails',
    why: 'no current gives the load its watts through this path when the battery is low',
    remedy: 'take thicker wire on its path, or a shorter one',
  },
  tooFewVolts: {
    word: 'too few volts at low charge',
    level: 'fails',
    why: 'less is left than the load works with when the battery is low and every load draws its peak',
    remedy: 'take the thicker run that the last column names',
  },
  drop: {
    word: VERDICT_WORDS.drop,
    level: 'fails',
    why: 'the run loses more of its source volts than the target allows',
    remedy: 'take a thicker size',
  },
  nameTwice: {
    word: 'name twice',
    level: 'unclear',
    why: 'another run has the same name',
    remedy: 'give each run a name of its own',
  },
  feederNotListed: {
    word: 'feeder not listed',
    level: 'unclear',
    why: 'it is fed from a run that is not in the list',
    remedy: 'write the name of a run of this list, or leave the cell blank for the battery',
  },
  inLoop: {
    word: 'in a loop of feeders',
    level: 'unclear',
    why: 'its feeders lead back to it',
    remedy: 'let one run of the loop be fed from a source',
  },
  nameMissing: {
    word: 'give the run a name',
    level: 'unclear',
    why: 'it is fed from another run and has no name of its own',
    remedy: 'write a name into its first column',
  },
  peakMissing: {
    word: 'peak load missing',
    level: 'unclear',
    why: 'no load is given, and no other run is fed from it',
    remedy: 'write the most that the load draws',
  },
  lengthMissing: {
    word: 'length missing',
    level: 'unclear',
    why: 'no length is given',
    remedy: 'measure the route one way and write it down',
  },
  voltsMissing: {
    word: 'source volts or drop target missing',
    level: 'unclear',
    why: 'source volts or drop target are blank, in the row and in the house rules',
    remedy: 'write them in the house rules, or on the Supply sheet for the panel',
  },
  checkEntries: {
    word: 'check the entries',
    level: 'unclear',
    why: 'something typed in its row cannot be read',
    remedy: 'look for the cell with an error and mend what it points at',
  },
  notJudged: {
    word: 'protection not judged',
    level: 'unclear',
    why: 'the Protection sheet cannot follow the run, or lacks figures of the source',
    remedy: 'read what the Protection sheet says in its row',
  },
  tiedToAnother: {
    word: 'tied to a run that must be mended',
    level: 'unclear',
    why: 'a run above or below it cannot be read',
    remedy: 'mend that run first',
  },
  voltsUnknown: {
    word: 'volts not known until another row is mended',
    level: 'unclear',
    why: 'a load of the same branch cannot be read',
    remedy: 'mend that row first',
  },
  ok: {
    word: VERDICT_WORDS.ok,
    level: 'ok',
    why: 'everything was judged by the published figures and holds',
    remedy: '',
  },
} as const satisfies Readonly<Record<string, Verdict>>;

export type VerdictKey = keyof typeof VERDICTS;
export const VERDICT_KEYS = Object.keys(VERDICTS) as VerdictKey[];

/** The word of each verdict. */
export const WORD = Object.fromEntries(
  VERDICT_KEYS.map((key) => [key, VERDICTS[key].word]),
) as Readonly<Record<VerdictKey, string>>;

const KEY_OF = new Map(VERDICT_KEYS.map((key) => [WORD[key], key]));

/** The verdicts that a cell's text holds, gravest first; text that is none of ours is left out. */
export function verdictsIn(text: string): readonly VerdictKey[] {
  return text
    .split(VERDICT_JOINT)
    .flatMap((word) => KEY_OF.get(word) ?? [])
    .sort((a, b) => rankOf(a) - rankOf(b));
}

/** Lower is graver. */
export function rankOf(key: VerdictKey): number {
  return VERDICT_KEYS.indexOf(key);
}

/** How grave a cell's text is; text that is none of ours counts as unclear. */
export function levelOf(text: string): Level {
  const [gravest] = verdictsIn(text);
  return gravest === undefined ? 'unclear' : VERDICTS[gravest].level;
}

/** What the last column says of a load that is short of volts, and of a run that its fuse does not guard. */
export const MEND_WORDS = {
  mends: 'thicker ',
  inSize: ': ',
  none: 'no single thicker run mends it',
  guarded: 'guarded from ',
  unguarded: 'no size is guarded by this fuse',
} as const;

/** A drop over this share of its target is close to it. */
export const CLOSE_TO_TARGET = 0.9;

/** What may stand in "Fed from" besides a run's name: the solar panel, a source of its own. */
export const PANEL = 'panel';

export const FUSED_CHOICES = ['yes', 'no'] as const;
