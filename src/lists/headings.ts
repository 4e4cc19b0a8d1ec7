/** Headings of lists: which column of the schedule one means, and the unit it says. */
import type { ScheduleRun } from '../sheets/station/run';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import { FEEDER_CHOICES_HEADING } from '../sheets/schedule/layout';
import { FORMER_HEADINGS, LATER_COLUMNS } from '../sheets/station/former';
import { COLUMN_KEYS, type ColumnKey } from '../sheets/station/schedule-keys';
import { nearestAmong } from './nearest-name';
import { remembered } from './remembered';
import { findUnit, plain, type Quantity, type Unit } from '../core/units';

export type RunKey = keyof ScheduleRun;

interface KnownColumn {
  /** Quantities its numbers may be of, the usual one first; none for text. */
  readonly quantities: readonly Quantity[];
  /** What else people call it, without its unit; one form, in lower case. */
  readonly names: string;
  /** Of a share: bare numbers are percent where every one of the column is within these. */
  readonly percents?: { readonly least: number; readonly most: number };
}

/** Every column of a run, by what the trade and people's own lists call it. */
export const RUN_COLUMNS: Readonly<Record<RunKey, KnownColumn>> = {
  run: {
    quantities: [],
    names:
      'run|name|run name|circuit|circuit name|cable|cable run|cable name|label|tag|id|item|line|no|nr|number|#|circuit no|circuit number|circuit #|cable no|cable number|cable #|run no|run number|run #|item no|item number|item #|line no|line #',
  },
  fedFrom: {
    quantities: [],
    names:
      'fed from|fed by|from|feed|feeder|source|supply|supplied from|supplied by|upstream|parent|parent run|fed off',
  },
  load: {
    quantities: [],
    names:
      'load|device|equipment|appliance|consumer|description|load name|load description|to|what|purpose|use|used for',
  },
  peak: {
    quantities: ['current', 'power'],
    names:
      'peak|peak current|current|i|max current|maximum current|load current|draw|current draw|peak draw|peak load|load draw|power|peak power|consumption|max load|maximum load|design current|imax|i max',
  },
  kind: { quantities: [], names: 'kind|a or w|amps or watts|a/w' },
  length: {
    quantities: ['length'],
    names:
      'length|len|l|one way|one way length|one way distance|one way run|distance|run length|cable length|wire length|cable run length|route length|length one way|single length|route',
  },
  volts: {
    quantities: ['voltage'],
    names:
      'source voltage|voltage|u|supply voltage|system voltage|battery voltage|nominal voltage|source|supply|battery|system|nominal',
  },
  target: {
    quantities: ['share'],
    percents: { least: 0.5, most: 20 },
    names:
      'target|drop target|max drop|maximum drop|drop limit|allowed drop|allowable drop|permitted drop|max voltage drop|maximum voltage drop|allowed voltage drop|allowable voltage drop|permitted voltage drop|voltage drop limit|voltage drop target|target drop|target voltage drop',
  },
  joints: {
    quantities: ['resistance'],
    names:
      'joints|joint|joint resistance|contacts|contact resistance|connections|connection resistance|connectors|connector resistance|terminations',
  },
  ownSize: {
    quantities: ['size'],
    names:
      'my wire|own size|size|wire|wire size|wire gauge|gauge|cable size|conductor|conductor size|conductor area|cross section|cross sectional area|csa|section|area|wire area|cable area|cable gauge|installed size|chosen size',
  },
  fused: { quantities: [], names: 'fused|own fuse|has fuse|has a fuse|has own fuse' },
  leastVolts: {
    quantities: ['voltage'],
    names:
      'minimum volts|least volts|least|least volts at load|least voltage|min|minimum|min voltage|minimum voltage|lowest|lowest voltage|cut off|cutoff|cut off voltage|cutoff voltage|min load voltage|minimum load voltage',
  },
  mostVolts: {
    quantities: ['voltage'],
    names:
      'most volts|most voltage|max volts|maximum volts|maximum supply voltage|max supply voltage|most volts at load',
  },
  atOnce: {
    quantities: ['share'],
    percents: { least: 2, most: 100 },
    names:
      'at once|share at once|simultaneity|simultaneity factor|coincidence|coincidence factor|diversity',
  },
  efficiency: {
    quantities: ['share'],
    percents: { least: 2, most: 100 },
    names: 'efficiency|eff',
  },
  unfused: {
    quantities: ['length'],
    names:
      'unfused|unfused length|unfused length from battery|length to fuse|wire before fuse|wire before the fuse',
  },
  returns: {
    quantities: ['resistance'],
    names: 'return|negative|negative return|return path|return through|ground return|earth return',
  },
  surge: {
    quantities: ['current'],
    names:
      'surge|surge current|inrush|inrush current|starting current|start current|start up current|startup current|locked rotor|locked rotor current',
  },
  endsAt: { quantities: [], names: 'ends at|ends on|joins|to source|far source|charges' },
  endFused: { quantities: [], names: 'fuse at end|fused at end|far fuse|fuse at far end' },
  notes: { quantities: [], names: 'notes|note|remark|remarks|comment|comments' },
};

export const RUN_KEYS = Object.keys(RUN_COLUMNS) as readonly RunKey[];

/** Columns that every schedule of ours has; old ones lack the others. */
export const LASTING_KEYS = RUN_KEYS.filter((key) => !LATER_COLUMNS.some((later) => later === key));

const BY_NAME: ReadonlyMap<string, readonly RunKey[]> = (() => {
  const found = new Map<string, RunKey[]>();
  for (const key of RUN_KEYS) {
    for (const name of RUN_COLUMNS[key].names.split('|')) {
      found.set(name, [...(found.get(name) ?? []), key]);
    }
  }
  return found;
})();

/** Our own headings, of typed and of computed columns, the former ones too. */
const OUR_HEADINGS: ReadonlyMap<string, ColumnKey> = new Map(
  COLUMN_KEYS.flatMap((key): [string, ColumnKey][] =>
    [SCHEDULE_COLUMNS[key].heading, FORMER_HEADINGS[key] ?? []].flat().flatMap((heading) => {
      const text = plain(heading);
      return [
        [text, key],
        // As a .csv in an encoding without the letter has it.
        [text.replace(/[^ -~]/g, '?'), key],
      ];
    }),
  ),
);

/** Words that change nothing of what a heading means here. */
const FILLERS = new Set([
  'the',
  'of',
  'in',
  'a',
  'dc',
  'value',
  'each',
  'per',
  'at',
  'peak',
  'est',
]);

/** There and back in one figure: both conductors counted. */
const BOTH_WAYS = /\b(?:round trip|both ways|there and back|out and back|two way|2 way|loop)\b/;

/** A length that may be either. */
const EITHER_WAY = /\b(?:total|overall|sum)\b/;

/** Spellings of units that are also ordinary words or letters; outside brackets they need a name that fits. */
const WEAK_UNITS = new Set(['a', 'm', 'in', "'", '"', 'gauge', 'ga']);

export type HeadingMeaning =
  | {
      readonly is: 'typed';
      readonly key: RunKey;
      readonly unit?: Unit;
      /** The figures count both conductors. */
      readonly bothWays: boolean;
      /** It is our own heading, word for word. */
      readonly ours: boolean;
    }
  /** One of our computed columns, which is computed anew; `also` where other people's lists mean another thing by it. */
  | { readonly is: 'computed'; readonly also?: RunKey }
  /** `computed` where it is a computed column by its name. */
  | { readonly is: 'unknown'; readonly why: string; readonly computed?: true };

interface Split {
  readonly name: string;
  readonly unit?: Unit;
  readonly weak: boolean;
}

/** Separators of words in a heading, as one space; brackets are taken apart before. */
function words(text: string): string {
  return text
    .replace(/[_\-–—.:;,=/]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/** Ways to part a heading into a name and a unit, the likeliest first. */
function splits(heading: string): readonly Split[] {
  const found: Split[] = [];
  const bracket = /^(.*?)[([{<]([^)\]}>]*)[)\]}>](.*)$/.exec(heading);
  if (bracket !== null) {
    const [, before = '', inside = '', after = ''] = bracket;
    const name = words(`${before} ${after}`);
    const whole = findUnit(words(inside)) ?? findUnit(inside);
    const among = words(inside)
      .split(' ')
      .map(findUnit)
      .find((unit) => unit !== undefined);
    const unit = whole ?? among;
    found.push({ name, ...(unit === undefined ? {} : { unit }), weak: false });
    if (unit !== undefined) return found;
    found.push({ name: words(`${before} ${inside} ${after}`), weak: false });
  }
  const text = words(heading);
  found.push({ name: text, weak: false });
  const tokens = text.split(' ');
  for (const count of [2, 1]) {
    const spelling = tokens.slice(-count).join(' ');
    const unit = tokens.length < count ? undefined : findUnit(spelling);
    if (unit !== undefined) {
      const name = tokens.slice(0, -count).join(' ');
      found.push({ name, unit, weak: WEAK_UNITS.has(spelling) });
    }
  }
  return found;
}

/** A name without what changes nothing. */
function bareName(name: string): string {
  return name
    .replace(BOTH_WAYS, ' ')
    .split(' ')
    .filter((word) => word !== '' && !FILLERS.has(word))
    .join(' ');
}

/** The key a name means, given the unit beside it. */
function keyFor(name: string, { unit, weak }: Split): RunKey | undefined {
  const named = BY_NAME.get(name) ?? BY_NAME.get(words(name.replace(BOTH_WAYS, ' ')));
  if (unit === undefined) return named?.[0];
  const fits = (key: RunKey) => RUN_COLUMNS[key].quantities.includes(unit.quantity);
  const fitting = named?.find(fits);
  if (fitting !== undefined) return fitting;
  // "Load (A)" and a lone "feet" name the thing by its unit; "Current (V)" contradicts itself.
  const isText = named?.every((key) => RUN_COLUMNS[key].quantities.length === 0) ?? false;
  const isLoneUnit = bareName(name) === '';
  return isLoneUnit || (isText && !weak) ? RUN_KEYS.find(fits) : undefined;
}

/** The likeliest reading: names as they stand before names without their fillers. */
function likeliest(text: string): { readonly key: RunKey; readonly unit?: Unit } | undefined {
  const all = splits(text);
  for (const shape of [(name: string) => name, bareName]) {
    for (const split of all) {
      const key = keyFor(shape(split.name), split);
      if (key !== undefined)
        return { key, ...(split.unit === undefined ? {} : { unit: split.unit }) };
    }
  }
  return undefined;
}

/** Headings that look like one of ours and are not, by a word in them, what to do about it, and which it may well be. */
const LOOK_ALIKES: readonly (readonly [pattern: RegExp, hint: string, key?: RunKey])[] = [
  [
    /\b(?:fuse|fuses|fusing|breaker|mcb)\b/,
    `whether a run has a fuse of its own stands under "${headingOf('fused')}", yes or no`,
  ],
  [
    /\bfeeds\b|\bfeeding\b|\bdownstream\b/,
    `which run feeds this one stands under "${headingOf('fedFrom')}"`,
  ],
  [
    /\bfrom\b|\bfeed\b|\bfed\b|\bsource\b|\bupstream\b/,
    `if it names the run that feeds this one, head it "${headingOf('fedFrom')}"`,
    'fedFrom',
  ],
];

function headingOf(key: RunKey): string {
  return SCHEDULE_COLUMNS[key].heading;
}

function lookAlike(text: string) {
  return LOOK_ALIKES.find(([pattern]) => pattern.test(words(text)));
}

const nearestKnown = nearestAmong(BY_NAME.keys());

/** The column that a heading is a misspelling of. */
const misspelt = remembered((text): RunKey | undefined => {
  for (const { name } of splits(text)) {
    const nearest = nearestKnown(bareName(name));
    const key = nearest === undefined ? undefined : BY_NAME.get(nearest)?.[0];
    if (key !== undefined) return key;
  }
  return undefined;
});

/** What a heading that is not used looks like, said behind why it is not. */
export function hintFor(heading: string): string {
  const text = plain(heading);
  const known = lookAlike(text);
  if (known !== undefined) return `; ${known[1]}`;
  const key = misspelt(text);
  return key === undefined ? '' : `; if it is "${headingOf(key)}", head it so`;
}

/** Columns that are guessed at by a name of theirs among other words; of the others such a word says too little. */
const GUESSED_BY_WORD = [
  'run',
  'fedFrom',
  'peak',
  'length',
  'ownSize',
] as const satisfies readonly RunKey[];
/** Words that turn a heading with such a name into another thing, or into one of two. */
const OTHER_THINGS =
  /\b(?:drop|loss|fuse|fuses|breaker|mcb|price|cost|feeds|feeding|total|overall|sum|type|colou?r|date)\b/;

/** The unit that a heading says of a column's figures; undefined where it says none that the column may have. */
export function unitFor(heading: string, key: RunKey): Unit | undefined {
  return splits(plain(heading)).find(
    ({ unit }) => unit !== undefined && RUN_COLUMNS[key].quantities.includes(unit.quantity),
  )?.unit;
}

/** Whether a heading speaks of the way there and back. */
export function saysBothWays(heading: string): boolean {
  return BOTH_WAYS.test(words(plain(heading)));
}

/** What a heading that is not understood may well mean, by itself, the likeliest first; a person has to say so. */
export function likelyKeys(heading: string): readonly RunKey[] {
  const text = plain(heading);
  const known = lookAlike(text);
  if (known !== undefined) return known[2] === undefined ? [] : [known[2]];
  const near = misspelt(text);
  const all = words(text);
  const says = (name: string) => name.length > 2 && ` ${all} `.includes(` ${name} `);
  const named = OTHER_THINGS.test(all)
    ? []
    : GUESSED_BY_WORD.filter((key) => RUN_COLUMNS[key].names.split('|').some(says));
  return [...(near === undefined ? [] : [near]), ...named];
}

/** What a heading means. */
export const readHeading = remembered((heading): HeadingMeaning => {
  const text = plain(heading);
  const our = OUR_HEADINGS.get(text);
  if (our !== undefined) {
    const key = RUN_KEYS.find((candidate) => candidate === our);
    if (key === undefined) {
      const also = BY_NAME.get(text)?.[0];
      return { is: 'computed', ...(also === undefined ? {} : { also }) };
    }
    const unit = findUnit(text.split(' ').at(-1) ?? '');
    const fits = unit !== undefined && RUN_COLUMNS[key].quantities.includes(unit.quantity);
    return { is: 'typed', key, bothWays: false, ours: true, ...(fits ? { unit } : {}) };
  }
  if (text === plain(FEEDER_CHOICES_HEADING)) return { is: 'computed' };
  const found = likeliest(text);
  const bothWays = BOTH_WAYS.test(words(text));
  if (found === undefined || (bothWays && found.key !== 'length')) {
    return { is: 'unknown', why: `not a heading this list is read by${hintFor(text)}` };
  }
  if (found.key === 'length' && !bothWays && EITHER_WAY.test(words(text))) {
    return { is: 'unknown', why: 'one way, or there and back? Head it "One-way length"' };
  }
  return { is: 'typed', ...found, bothWays, ours: false };
});
