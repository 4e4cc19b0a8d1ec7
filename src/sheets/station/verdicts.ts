/**
 * Everything that a verdict can say of a run, gravest first: the word, how grave it is, why it is said, and what to do.
 * The sheets, their colours and legends, the pane and the terminal all read this table.
 */
import { VERDICT_JOINT, VERDICT_WORDS } from '../../core/verdict';
import { FORMER_WORDS } from './former';

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
  /** The same in few words, for the Fix column, where nothing more exact can be said. */
  readonly fix?: string;
}

export const VERDICTS = {
  heat: {
    word: VERDICT_WORDS.heat,
    level: 'danger',
    why: 'more current flows than the published table allows the conductor as installed',
    remedy: 'take a thicker wire, or one of a higher insulation rating',
    fix: 'thicker wire, or a higher insulation rating',
  },
  tooHot: {
    word: 'over its insulation rating',
    level: 'danger',
    why: 'by its heat balance the conductor grows hotter than its insulation is rated for',
    remedy: 'take a thicker wire, or one of a higher insulation rating',
    fix: 'thicker wire, or a higher insulation rating',
  },
  fuse: {
    word: VERDICT_WORDS.fuse,
    level: 'danger',
    why: 'no standard fuse both carries the load and protects the conductor',
    remedy: 'take a thicker wire',
  },
  needsFuse: {
    word: 'branch needs its own fuse',
    level: 'danger',
    why: 'the fuse upstream is larger than the conductor may carry',
    remedy: 'give the branch a fuse at its source end, or wire that the fuse upstream protects',
    fix: 'a fuse of its own at its source end',
  },
  endUnfused: {
    word: 'no fuse at its other end',
    level: 'danger',
    why: 'the battery at its other end feeds a short from there, and no fuse stands in between',
    remedy: 'put a fuse right at that battery too, and write yes under "Fuse at end"',
    fix: 'a fuse at that battery too',
  },
  mainFuse: {
    word: 'main fuse does not protect its cable',
    level: 'danger',
    why: 'the main fuse at the battery is larger than its cable may carry',
    remedy: 'take a smaller main fuse or a thicker cable',
  },
  mainBreaks: {
    word: 'main fuse may not interrupt the battery',
    level: 'danger',
    why: 'a short behind the main fuse draws more than it is made to break',
    remedy: 'buy a main fuse that breaks what the Supply sheet says',
    fix: 'a main fuse that breaks what Supply says',
  },
  mainVolts: {
    word: 'main fuse not rated for the charging volts',
    level: 'danger',
    why: 'the battery reaches more volts while charging than the main fuse is rated for',
    remedy: 'buy a main fuse for these volts',
  },
  mayNotBreak: {
    word: 'fuse may not interrupt this fault',
    level: 'danger',
    why: 'a short right behind the fuse draws more than it is made to break',
    remedy: 'buy a fuse that breaks this fault, or put such a main fuse at the battery',
    fix: 'a fuse that breaks this fault',
  },
  fuseVolts: {
    word: 'fuse not rated for these volts',
    level: 'danger',
    why: 'its circuit can reach more volts than the fuse is rated for, and it may go on burning',
    remedy: 'buy a fuse that is made for these volts',
  },
  fuseTooSlow: {
    word: 'wire may overheat before the fuse blows',
    level: 'danger',
    why: 'by the published limits the wire may be hurt before the fuse opens',
    remedy: 'take a thicker wire or a smaller fuse',
  },
  faultTooWeak: {
    word: 'a short at the far end will not blow the fuse',
    level: 'danger',
    why: 'with a tired battery and warm wire it draws less than the fuse must open at',
    remedy: 'take a thicker wire or a smaller fuse',
  },
  unfusedTooLong: {
    word: 'too long without a fuse',
    level: 'danger',
    why: 'between the battery and the fuse lie more than 7 in of wire, or 40 in in a sheath or conduit (33 CFR 183.455(b))',
    remedy: 'put the fuse nearer to the battery',
  },
  noAmpacity: {
    word: 'no published ampacity',
    level: 'danger',
    why: 'the published tables give no ampacity for this wire as installed',
    remedy: 'take a size, a material or a rating that the table has',
    fix: 'a size or rating that the table has',
  },
  bankUnfused: {
    word: 'batteries in parallel without a fuse at each',
    level: 'danger',
    why: 'the others of a bank of more than 500 Ah feed a fault in one, and no fuse at each breaks that (ABYC E-11)',
    remedy:
      'put a fuse right at each battery that breaks what the others give, and write what it breaks on the Supply sheet',
    fix: 'a fuse right at each battery',
  },
  mainSmall: {
    word: 'main fuse smaller than the loads',
    level: 'fails',
    why: 'the loads together draw more at once than the main fuse carries',
    remedy: 'take a larger main fuse and its cable, or let fewer loads run at once',
    fix: 'a larger main fuse and its cable',
  },
  supplyOverloaded: {
    word: 'supply overloaded',
    level: 'fails',
    why: 'the loads together draw more at once than the power supply can give',
    remedy: 'take a larger supply, or let fewer loads run at once',
    fix: 'a larger supply, or fewer loads at once',
  },
  packOverloaded: {
    word: "more than the battery's own protection allows",
    level: 'fails',
    why: 'the loads together draw more at once than the battery lets through before it switches itself off',
    remedy: 'take another pack beside it, or let fewer loads run at once',
    fix: 'another pack, or fewer loads at once',
  },
  tooManyVolts: {
    word: 'too many volts while charging',
    level: 'fails',
    why: 'its source can reach more volts than the load bears',
    remedy: 'put a regulator before the load, or lower the volts of the charger',
    fix: 'a regulator before the load',
  },
  noSize: {
    word: 'no wire of this series is thick enough',
    level: 'fails',
    why: 'none keeps the target, carries the current and takes a standard fuse',
    remedy: 'shorten the run, split the load, raise the source volts or take another series',
    fix: 'shorten it, split the load or raise the volts',
  },
  noRoom: {
    word: 'the runs above lose it all',
    level: 'fails',
    why: 'what the runs above it lose leaves nothing of the drop target for this one',
    remedy: 'take thicker wire on its path, or shorten it',
  },
  cannotBeServed: {
    word: 'cannot be served with the battery low',
    level: 'fails',
    why: 'no current gives the load its watts through this path when the battery is low',
    remedy: 'take thicker wire on its path, or a shorter one',
    fix: 'shorten or thicken its path',
  },
  tooFewVolts: {
    word: 'too few volts with the battery low',
    level: 'fails',
    why: 'less is left than the load works with',
    remedy: 'take thicker wire on its path, or shorten it',
  },
  startVolts: {
    word: 'too few volts while a load starts',
    level: 'fails',
    why: 'with the battery low, what a load draws as it starts leaves less than this one works with',
    remedy:
      'take thicker wire on what the two share, feed the starting load from the source by a run of its own, or let it start more gently',
    fix: 'thicker wire on what the two share',
  },
  fewerVolts: {
    word: 'fewer volts than its watts were sized for',
    level: 'fails',
    why: 'through the wire in use the load gets fewer volts than its current was worked out at, so it draws more',
    remedy: 'take the thinnest wire that is suggested, or a thicker one, or give its minimum volts',
    fix: 'the suggested wire, or its minimum volts',
  },
  drop: {
    word: VERDICT_WORDS.drop,
    level: 'fails',
    why: 'more of the source volts is lost than the target allows',
    remedy: 'take thicker wire on its path, or shorten it',
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
    why: 'it is fed from neither a run of the list nor a source of the Supply sheet',
    remedy:
      'write the name of a run of this list or of a source, or leave the cell blank for the first source',
    fix: 'name a run of the list or a source',
  },
  inLoop: {
    word: 'in a loop of feeders',
    level: 'unclear',
    why: 'its feeders lead back to it',
    remedy: 'let one run of the loop be fed from a source',
  },
  tooDeep: {
    word: 'more than four runs above it',
    level: 'unclear',
    why: 'the sheets follow four runs above another, and it lies deeper',
    remedy:
      'feed it from a run nearer to the source, or join runs that have no branch between them',
    fix: 'feed it from nearer to the source',
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
  sourceUnknown: {
    word: 'source not described',
    level: 'unclear',
    why: 'the source that it is fed from has no name or no kind that is known',
    remedy: 'write name and kind at the head of its column on the Supply sheet',
    fix: 'describe the source on Supply',
  },
  endUnknown: {
    word: 'source at its other end not listed',
    level: 'unclear',
    why: 'the Supply sheet has no other source of the name that the run ends at',
    remedy: 'write the name of another source of the Supply sheet, or leave the cell blank',
    fix: 'name another source of Supply',
  },
  chassisInCraft: {
    word: 'return through a chassis in a craft',
    level: 'unclear',
    why: 'craft want two insulated wires (ABYC E-11, from memory); the run is computed with two',
    remedy: 'lay a second wire and write wire under "Return"',
    fix: 'a second wire',
  },
  sourceNamedTwice: {
    word: 'source named like a run or another source',
    level: 'unclear',
    why: 'the name of the source that it is fed from stands twice',
    remedy: 'give the source a name of its own on the Supply sheet',
    fix: 'a name of its own for the source',
  },
  chargesNoBattery: {
    word: 'source charges no battery',
    level: 'unclear',
    why: 'no battery of the Supply sheet has the name that is written as the battery on its output',
    remedy: 'write the name of a battery of the Supply sheet there',
    fix: 'name a battery of Supply there',
  },
  panelMissing: {
    word: 'panel not described',
    level: 'unclear',
    why: 'it is fed from the panel, whose volts, drop target or open-circuit volts are blank',
    remedy: 'fill in the panel on the Supply sheet',
  },
  voltsMissing: {
    word: 'source volts or drop target missing',
    level: 'unclear',
    why: 'source volts or drop target are blank, in the row and in the house rules',
    remedy: 'write them in the house rules',
  },
  typedOver: {
    word: 'typed over what is worked out',
    level: 'unclear',
    why: 'a figure of its row was replaced by hand, so that what stands there hangs on nothing',
    remedy:
      'undo that, or copy the same cell of another run over it; a wire of your own goes under "My wire"',
    fix: 'put the formula back',
  },
  checkEntries: {
    word: 'check the entries',
    level: 'unclear',
    why: 'something typed in its row cannot be read',
    remedy: 'look at what is typed in its row',
  },
  voltsDiffer: {
    word: 'source volts unlike those of its feeder',
    level: 'unclear',
    why: 'it hangs on a run of other source volts, and a cable does not change them',
    remedy:
      'write the same source volts in both, or make a converter the start of a run of its own',
    fix: 'the same source volts in both',
  },
  batteryVolts: {
    word: 'battery and source volts do not fit',
    level: 'unclear',
    why: 'the battery of the Supply sheet is not one for the source volts of the house rules',
    remedy: 'set the cells in series on the Supply sheet, or the source volts',
    fix: 'set cells in series, or the source volts',
  },
  notJudged: {
    word: 'protection not judged',
    level: 'unclear',
    why: 'the Protection sheet cannot follow the run, or lacks figures of the source',
    remedy: 'read what the Protection sheet says in its row',
    fix: 'read its row on Protection',
  },
  entriesAstray: {
    word: 'entries on Protection not for this run',
    level: 'unclear',
    why: 'what is typed of its fuse on the Protection sheet is said to be for another run, or not said to be for this one; a spreadsheet that sorts the schedule leaves those entries where they are',
    remedy:
      'move the entries to the row of their run, or write the name of the run under "For run" there',
    fix: 'look at "For run" on Protection',
  },
  tiedToAnother: {
    word: 'depends on a run that cannot be read',
    level: 'unclear',
    why: 'a run above or below it cannot be computed',
    remedy: 'fix the run first that it depends on',
  },
  voltsUnknown: {
    word: 'volts not known until another row is fixed',
    level: 'unclear',
    why: 'a load of the same branch cannot be read',
    remedy: 'fix that row first',
  },
  notSettled: {
    word: 'volts not settled in this copy',
    level: 'unclear',
    why: 'loads in watts near the most that the wire can deliver: the rounds of this copy have not come to rest',
    remedy: 'take thicker wire, or compute it with the add-in',
    fix: 'thicker wire, or compute it with the add-in',
  },
  heatUnknown: {
    word: 'steady heat not computed in this copy',
    level: 'unclear',
    why: 'the run was changed since this copy was written, and its temperature is the one of then',
    remedy: 'write a new copy with the add-in',
  },
  craftFuse: {
    word: 'fuse over the ampacity: confirm it',
    level: 'check',
    why: 'the fuse is above the ampacity and within 150 % of it, which 33 CFR 183.455(c) allows where no standard one is nearer',
    remedy: 'confirm that no smaller fuse carries the load',
    fix: 'confirm that no smaller fuse will do',
  },
  wattsUnknown: {
    word: 'watts in or watts out: confirm it',
    level: 'check',
    why: 'a load of more than 100 W may be an inverter, which takes in more than it gives',
    remedy: 'give its minimum volts, or its efficiency (1 where the watts are what it takes in)',
    fix: 'give its minimum volts or efficiency',
  },
  coveredByMain: {
    word: 'fault above the limit of this fuse: confirm with its maker',
    level: 'check',
    why: 'a fuse above it breaks the fault, and its own limit is at least half of it (ABYC E-11)',
    remedy:
      'ask the maker whether the two are coordinated, or take a fuse that breaks it by itself',
    fix: 'ask the maker of the fuse',
  },
  bankFuse: {
    word: 'batteries in parallel: confirm the fuse at each',
    level: 'check',
    why: 'the others feed a fault in one of them, and no fuse at each is known to break that',
    remedy: 'write on the Supply sheet what the fuse at each battery breaks',
    fix: 'write on Supply what each fuse breaks',
  },
  supplyTrips: {
    word: 'relies on the supply to switch off: confirm it',
    level: 'check',
    why: 'the power supply gives more than the wire may carry and less than its fuse must open at, and is said to trip',
    remedy: 'confirm with its maker that a short switches it off, or take a thicker wire',
    fix: 'ask the maker of the supply',
  },
  startFuse: {
    word: 'fuse may open as a load starts: confirm it',
    level: 'check',
    why: 'a fuse of this rating may open sooner than the surge is over',
    remedy:
      'ask the makers of load and fuse, or take thicker wire and a larger fuse, or a load that starts more gently',
    fix: 'ask the makers of load and fuse',
  },
  sourceStart: {
    word: 'start of a load is more than the source gives: confirm it',
    level: 'check',
    why: 'what a load draws as it starts, beside the others, is more than the source is said to give',
    remedy: 'ask its maker how long it bears that, or let the load start alone',
    fix: 'ask its maker how long it bears that',
  },
  batteryAssumed: {
    word: 'sized right, fuse breaking not judged',
    level: 'check',
    why: 'nothing is typed of the battery, so what its fuses must break is not known',
    remedy: 'write chemistry and amp-hours on the Supply sheet',
    fix: 'tell the battery on Supply',
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

const FORMER: Readonly<Partial<Record<VerdictKey, string>>> = FORMER_WORDS;
const KEY_OF = new Map(
  VERDICT_KEYS.flatMap((key) =>
    [WORD[key], FORMER[key] ?? WORD[key]].map((word) => [word, key] as const),
  ),
);

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

/** What the Fix column says besides names and sizes. */
export const FIX_WORDS = {
  thicker: 'thicker ',
  inSize: ': ',
  lessOhms: 'shorten or thicken ',
  none: 'no single thicker run fixes it',
  target: 'set its drop target to ',
  source: 'no wire fixes it: the ',
  gives: ' itself gives ',
  volts: ' V',
  take: 'use ',
  orThicker: ' or thicker',
  ownFuse: 'its own fuse of ',
  amps: ' A',
  unprotected: 'no wire of this series is protected by this fuse',
  first: 'fix first: ',
  look: 'look at: ',
  putBack: 'put back the formula under ',
  buyBreaks: 'a fuse that breaks ',
  buyVolts: 'a fuse for ',
  buyWhere: ' at its source end',
  buyEnd: ' at its other end',
  starts: 'start of ',
  entriesRow: 'Protection row ',
  entriesFor: ' is for "',
  moveEntries: '": move its entries there',
  orWriteName: ', or write "',
  writeName: ': write "',
  underForRun: '" under For run',
  nameRun: ': give the run a name, and write it under For run',
  entriesThere: ': its entries stand in Protection row ',
  tellBattery: VERDICTS.batteryAssumed.fix,
} as const;

/** A drop over this share of its target is close to it. */
export const CLOSE_TO_TARGET = 0.9;

/** Names of the usual sources, which mean the first of their kind where no source is called so. */
export const PANEL = 'panel';
export const BATTERY = 'battery';

export const FUSED_CHOICES = ['yes', 'no'] as const;
