/**
 * The formulas of the Protection sheet's columns, in our functions and plain arithmetic: six calls a row. A row follows
 * the run at the same place of the schedule.
 */
import { RELATIVE_SLACK } from '../../core/limits';
import { VERDICT_JOINT } from '../../core/verdict';
import { text } from '../plan/formula';
import type { ProtectionCellReferences } from './cells';
import type { ProtectionKey } from '../station/protection-keys';
import { PROTECTION_FIGURES, PROTECTION_WORDS, STATE } from '../station/protection-words';
import { FEEDER_KEYS, type ColumnKey } from '../station/schedule-keys';
import { ARCING_ALLOWANCE_S } from '../../core/fuse-time';
import { forRunRemedy, isForRun } from '../station/for-run';
import { figureByKind, kindInForce } from '../station/fuse-kind';
import { conductorsOf, hasFuse, worseChassisOhms } from '../schedule/row';
import { WHEN_OVER } from '../station/parameters';
import type { SupplyKey } from '../station/supply-keys';
import { FIX_WORDS, WORD, type VerdictKey } from '../station/verdicts';
import { MULTIPLES } from './fuse-points';

/** Sizes to choose among, one a row, thinnest first within a series. */
export interface GuardData {
  readonly sizes: string;
  readonly areaMm2: string;
  readonly ohmsPerM: string;
  /** 1 for a size that may be suggested, else 0; its place among those. */
  readonly choose: string;
  readonly order: string;
  /** The greatest fuse that a size may have, 0 where it may not be chosen. */
  readonly chooseFuseA: string;
  readonly metresPer: string;
}

/** The table of fuse types: a row a type. */
export interface TypeData {
  readonly fromA: string;
  readonly names: string;
  readonly breakingA: string;
  /** A row of multiples of the rating, and the longest times at them. */
  readonly multiples: string;
  readonly times: string;
  /** The chords between the points, seconds = factor x multiple ^ -steepness; the last of them is level. */
  readonly factors: string;
  readonly steepness: string;
  /** The multiple at which a fuse may open within the surge of a load. */
  readonly mayOpen: string;
}

export interface ProtectionReferences extends ProtectionCellReferences {
  /** Figures of all sources, each a row of the Supply sheet. */
  readonly sources: Readonly<Record<SupplyKey, string>>;
  /** Cells of the same row. */
  readonly own: Readonly<Record<ProtectionKey, string>>;
  /** Columns of this sheet. */
  readonly ownColumn: Readonly<Record<ProtectionKey, string>>;
  /** Columns of the schedule. */
  readonly column: Readonly<Record<ColumnKey, string>>;
  readonly sizes: GuardData;
  readonly types: TypeData;
  /** The cell above the first row. */
  readonly header: string;
}

export type ProtectionFormula = (row: ProtectionReferences) => string;

export const WITHIN = `(1+${RELATIVE_SLACK})`;

/** Most wire before the fuse, 33 CFR 183.455(b) (from memory): 7 in, and 40 in in a sheath or conduit. */
const UNFUSED_M = { bare: 7 * 0.0254, sheathed: 40 * 0.0254 } as const;

/** The schedule's cell of the same run. */
export const there = ({ column, own }: ProtectionReferences, key: ColumnKey) =>
  `INDEX(${column[key]},${own.place})`;

const is = ({ own }: ProtectionReferences, ...states: (keyof typeof STATE)[]) => {
  const tests = states.map((state) => `${own.state}=${text(STATE[state])}`);
  return tests.length === 1 ? tests[0]! : `OR(${tests.join(',')})`;
};
/** Rows with a current, whether or not their faults can be told. */
export const hasCurrent = (row: ProtectionReferences) =>
  is(row, 'judged', 'panel', 'charger', 'supply', 'source', 'deep');
export const isJudged = (row: ProtectionReferences) => is(row, 'judged');
/** Rows of which it can be told what a dead short draws: of a battery, or of a power supply that gives no more. */
const hasFault = (row: ProtectionReferences) => is(row, 'judged', 'supply');
/** The wire carries all that the power supply can give: it needs no fuse. */
const supplyBears = (row: ProtectionReferences) =>
  `AND(${is(row, 'supply')},IF(ISNUMBER(${there(row, 'ampacity')}),${row.supply.mostAmps}<=${there(row, 'ampacity')}*${WITHIN},FALSE))`;
/** It switches off instead. */
const supplyTrips = (row: ProtectionReferences) =>
  `AND(${is(row, 'supply')},${row.supply.whenOver}=${text(WHEN_OVER[1])})`;

/** It brings a battery at its other end the current of a charger, which has no more than that. */
const isCharging = (row: ProtectionReferences) =>
  `AND(${there(row, 'endBattery')}>0,${there(row, 'endBattery')}=${there(row, 'source')},INDEX(${row.column.ownSource},${there(row, 'root')})<>${there(row, 'endBattery')})`;
/** It starts at a battery. */
const onBattery = (row: ProtectionReferences) =>
  `AND(${there(row, 'battery')}>0,NOT(${isCharging(row)}))`;
/** The battery is only the assumed one. */
const isAssumed = (row: ProtectionReferences) =>
  `AND(${onBattery(row)},${row.supply.stated}<>"yes")`;
const isOwn = (row: ProtectionReferences) =>
  `AND(ISNUMBER(${row.own.fuse}),${row.own.fuseFrom}=${text(PROTECTION_FIGURES.own)})`;

/** At its source end or at the other, both of one rating. */
const hasFuseOfItsOwn = (row: ProtectionReferences) =>
  `OR(${isOwn(row)},ISNUMBER(${row.own.endFuse}))`;
const ownRating = ({ own }: ProtectionReferences) =>
  `IF(ISNUMBER(${own.endFuse}),${own.endFuse},${own.fuse})`;

/** A fuse at a panel of which not all is known that would tell its most volts, and that is not wrong already. */
const isUndescribed = (row: ProtectionReferences) =>
  `AND(${is(row, 'panel')},${isOwn(row)},${row.supply.openCircuitVolts}="",${row.own.lowRated}=0)`;

/** A fault of a source of so many volts and milliohms, by the ohms before it. */
function fault(row: ProtectionReferences, volts: string, milliohms: string, ohms: string): string {
  const { supply } = row;
  return (
    `IF(${isJudged(row)},IF(${milliohms}/1000+${ohms}>0,${row.call('FAULT_AMPS', volts, milliohms, ohms)},${text(PROTECTION_FIGURES.noLimit)}),` +
    `IF(${is(row, 'panel')},IF(${supply.shortCircuitAmps}="","",${supply.shortCircuitAmps}),IF(${is(row, 'supply')},${supply.mostAmps},"")))`
  );
}

/** A fuse: its rating, the row of its type, its maker's I2t. */
interface Fuse {
  readonly rating: string;
  readonly type: string;
  readonly i2t: string;
}

/** The fuse that protects the run, and the one at its other end. */
const protector = ({ own }: ProtectionReferences): Fuse => ({
  rating: own.fuse,
  type: own.type,
  i2t: own.fuseI2t,
});
const endProtector = ({ own }: ProtectionReferences): Fuse => ({
  rating: own.endFuse,
  type: own.endType,
  i2t: own.i2t,
});

/** Times to open are published for blades. */
const isPublished = ({ types }: ProtectionReferences, { type }: Fuse) =>
  `IF(ISNUMBER(${type}),INDEX(${types.times},${type},1)<>"",FALSE)`;

/** The time that the maker's I2t gives, which holds where the fuse opens too soon to lose heat. */
const byI2t = ({ i2t }: Fuse, amps: string) => `(${i2t}/${amps}^2+${ARCING_ALLOWANCE_S})`;

/** So soon a fuse of which no times are published has no time to lose heat; ours, common practice. */
const SOON_S = 0.1;

/**
 * The longest time of a fuse at a fault, where it is asked for. A maker's I2t, where it is typed, counts instead of the estimate: beyond the last
 * published point, and for a fuse without published times where it opens soon.
 */
function opensWithin(
  row: ProtectionReferences,
  isAsked: string,
  fuse: Fuse,
  amps: string,
  seconds: string,
): string {
  const { types } = row;
  const { rating, type, i2t } = fuse;
  const last = MULTIPLES.length;
  const isBeyond = `AND(ISNUMBER(${i2t}),${amps}>INDEX(${types.multiples},1,${last})*${rating})`;
  const lastTime = `INDEX(${types.times},${type},${last})`;
  const published = `IF(${isBeyond},MIN(${lastTime},${byI2t(fuse, amps)}),${seconds})`;
  const notPublished = text(PROTECTION_FIGURES.notPublished);
  const unknown = `IF(ISNUMBER(${i2t}),IF(${byI2t(fuse, amps)}<=${SOON_S},${byI2t(fuse, amps)},${notPublished}),${notPublished})`;
  return (
    `IF(AND(${isAsked},ISNUMBER(${rating}),ISNUMBER(${amps})),` +
    `IF(${isPublished(row, fuse)},IF(INDEX(${types.multiples},1,1)*${rating}>${amps}*${WITHIN},${text(PROTECTION_FIGURES.needNotOpen)},${published}),${unknown}),"")`
  );
}

/** Of the fuse that protects the run. */
const opens = (row: ProtectionReferences, amps: string) =>
  opensWithin(
    row,
    hasFault(row),
    protector(row),
    amps,
    row.call('FUSE_SECONDS', row.own.fuse, amps),
  );

/** The chords between the points of a fuse's times: seconds = factor x multiple ^ -steepness. The greatest counts. */
const chordsOf = ({ types }: ProtectionReferences, { type }: Fuse) =>
  Array.from({ length: MULTIPLES.length - 1 }, (_, index) => ({
    factor: `INDEX(${types.factors},${type},${index + 1})`,
    steepness: `INDEX(${types.steepness},${type},${index + 1})`,
  }));

/** Of the fuse at its other end, by the table of types: few runs have one, and no call is spent on them. */
function atEndOpens(row: ProtectionReferences, amps: string): string {
  const { types } = row;
  const fuse = endProtector(row);
  const times = `(${amps}/${fuse.rating})`;
  const last = MULTIPLES.length;
  const lastTimes = `INDEX(${types.multiples},1,${last})`;
  const lastTime = `INDEX(${types.times},${fuse.type},${last})`;
  const between = chordsOf(row, fuse).map(
    ({ factor, steepness }) => `${factor}*${times}^-${steepness}`,
  );
  const seconds = `IF(${times}>=${lastTimes},MIN(${lastTime},${lastTime}*(${lastTimes}/${times})^2+${ARCING_ALLOWANCE_S}),MAX(${between.join(',')}))`;
  return opensWithin(row, isAtEnd(row), fuse, amps, seconds);
}

/** The run ends at a battery, and what it draws can be told. */
const isAtEnd = (row: ProtectionReferences) =>
  `AND(${hasCurrent(row)},${there(row, 'endBattery')}>0)`;
/** A figure of the battery at its other end. */
const ofEnd = (row: ProtectionReferences, key: SupplyKey) =>
  `INDEX(${row.sources[key]},1,${there(row, 'endBattery')})`;

const state: ProtectionFormula = (row) => {
  const { own, column, protect } = row;
  const of = (key: ColumnKey) => there(row, key);
  const isSupply = `AND(${of('sourceKind')}="power supply",INDEX(${column.volts},${of('root')})=${row.supply.volts})`;
  const known = [
    own.sourceVolts,
    own.weakVolts,
    own.strongMilliohms,
    own.nearOhms,
    own.farOhms,
    protect.k,
    protect.airC,
    protect.ratingC,
    protect.weakTimes,
    protect.warm,
  ];
  return (
    `IF(${own.place}>ROWS(${column.run}),"",IFERROR(IF(${of('runAmps')}="","",` +
    `IF(NOT(AND(ISNUMBER(${of('runAmps')}),ISNUMBER(${of('ohms')}))),${text(STATE.row)},` +
    `IF(${of('depth')}<0,${text(STATE.deep)},IF(AND(INDEX(${column.ownSource},${of('root')})>0,${of('sourceKind')}=""),${text(STATE.source)},IF(${of('sourceKind')}="panel",${text(STATE.panel)},IF(${isCharging(row)},${text(STATE.charger)},IF(${isSupply},IF(ISNUMBER(${row.supply.mostAmps}),${text(STATE.supply)},${text(STATE.source)}),` +
    `IF(AND(${known.map((cell) => `ISNUMBER(${cell})`).join(',')},IFERROR(${own.sourceVolts}>0,FALSE)),` +
    `${text(STATE.judged)},${text(STATE.source)})))))))),${text(STATE.row)}))`
  );
};

/** A figure of the battery, or the source volts of the path. */
const ofSource = (row: ProtectionReferences, battery: string) =>
  `IF(${onBattery(row)},${battery},INDEX(${row.column.volts},${there(row, 'root')}))`;

/** A column of this sheet or of the schedule, summed over the feeders above. */
const above = (row: ProtectionReferences, column: string) =>
  FEEDER_KEYS.map((key) => `IF(${there(row, key)}>0,INDEX(${column},${there(row, key)}),0)`).join(
    '+',
  );

const slower = (opens: string, bears: string) =>
  `IF(AND(ISNUMBER(${opens}),ISNUMBER(${bears})),${opens}>${bears}*${WITHIN},FALSE)`;

/**
 * 1 for each size of the series that a fuse would protect at the near and at the far end of what its source feeds. The
 * times are the greatest of all chords, so a size is protected where it bears every chord's heat; beyond the last point
 * the heat is that of a constant I2t and of the arc. A thicker wire lets more current through, so its far-end fault is its
 * own.
 */
function guardedSizes(
  row: ProtectionReferences,
  fuse: Fuse,
  near: { readonly opens: string; readonly fault: string },
  weak: { readonly volts: string; readonly otherOhms: string },
): string {
  const { own, sizes, types, protect } = row;
  const far = `(${weak.volts}/(${weak.otherOhms}+${own.wireM}*${sizes.ohmsPerM}))`;
  const bears = `(${protect.k}*${sizes.areaMm2})^2*${WITHIN}`;
  const last = MULTIPLES.length;
  const chords = chordsOf(row, fuse).map(
    ({ factor, steepness }) =>
      `(${factor}*${fuse.rating}^${steepness}*${far}^(2-${steepness})<=${bears})`,
  );
  const lastTime = `INDEX(${types.times},${fuse.type},${last})`;
  const level = `${lastTime}*${far}^2`;
  const i2t = `IF(ISNUMBER(${fuse.i2t}),${fuse.i2t},${lastTime}*(INDEX(${types.multiples},1,${last})*${fuse.rating})^2)`;
  const melts = `(${i2t}+${ARCING_ALLOWANCE_S}*${far}^2)`;
  const beyond = `((${level}+${melts}-ABS(${level}-${melts}))/2<=${bears})`;
  return [
    `(${fuse.rating}<=${sizes.chooseFuseA}*${WITHIN})`,
    `(${near.opens}*${near.fault}^2<=${bears})`,
    `(INDEX(${types.multiples},1,1)*${fuse.rating}<=${far}*${WITHIN})`,
    ...chords,
    beyond,
  ].join('*');
}

/** Ohms of the run that stay whatever its wire: joints, and a chassis at its worst. */
const fixedOhms = (row: ProtectionReferences) =>
  `${there(row, 'jointOhms')}+${worseChassisOhms(there(row, 'back'))}`;

/**
 * Place of the thinnest size that would be protected: how many of the series would not, and one more. Thicker is never
 * less protected.
 */
const guardPlaceOf = (
  row: ProtectionReferences,
  isWanting: string,
  fuse: Fuse,
  near: { readonly opens: string; readonly fault: string },
  weak: { readonly volts: string; readonly otherOhms: string },
) => {
  const { sizes } = row;
  return (
    `IF(${isWanting},IF(AND(${isPublished(row, fuse)},ISNUMBER(${near.opens})),` +
    `SUMPRODUCT(${sizes.choose}*(1-${guardedSizes(row, fuse, near, weak)}))+1,IF(${isPublished(row, fuse)},SUM(${sizes.choose})+1,"")),"")`
  );
};

const guardPlace: ProtectionFormula = (row) => {
  const { own } = row;
  return guardPlaceOf(
    row,
    `AND(${own.weak}+${own.slow}>0,${own.unbroken}=0)`,
    protector(row),
    { opens: own.nearOpens, fault: own.nearFault },
    {
      volts: own.weakVolts,
      otherOhms: own.otherOhms,
    },
  );
};

const endGuard: ProtectionFormula = (row) => {
  const { own } = row;
  return guardPlaceOf(
    row,
    `AND(${own.endWeak}+${own.endSlow}>0,${own.endUnbroken}=0)`,
    endProtector(row),
    { opens: own.endNearOpens, fault: own.endNear },
    {
      volts: ofEnd(row, 'lowRest'),
      otherOhms: own.endOhms,
    },
  );
};

/** What is typed of the fuse that protects the run; a bare reference to a blank cell would be 0. */
const saidOfFuse = ({ own, ownColumn }: ProtectionReferences, key: 'kind' | 'i2t') => {
  const said = `INDEX(${ownColumn[key]},${own.fuseAt})`;
  return `IF(ISNUMBER(${own.fuse}),IF(${said}="","",${said}),"")`;
};

/** 1 where a fuse above breaks the fault at this one's place, and this one half of it: ABYC E-11 (from memory). */
const covered: ProtectionFormula = (row) => {
  const { own, ownColumn, supply, column } = row;
  const breaksIt = (breaks: string, isThere: string) =>
    `IF(${isThere},IF(ISNUMBER(${breaks}),${breaks}*${WITHIN}>=${own.nearFault},FALSE),FALSE)`;
  const feeders = FEEDER_KEYS.map((key) => {
    const place = there(row, key);
    return `IF(${place}>0,${breaksIt(`INDEX(${ownColumn.breaks},${place})`, `AND(INDEX(${ownColumn.astray},${place})=0,${hasFuse(`INDEX(${column.fused},${place})`)},ISNUMBER(INDEX(${column.fuse},${place})))`)},FALSE)`;
  });
  const main = breaksIt(
    supply.mainFuseBreaks,
    `AND(${onBattery(row)},ISNUMBER(${supply.mainFuse}))`,
  );
  return `IF(${own.unbroken}=1,IF(AND(ISNUMBER(${own.breaks}),ISNUMBER(${own.nearFault})),IF(AND(2*${own.breaks}*${WITHIN}>=${own.nearFault},OR(${[...feeders, main].join(',')})),1,0),0),0)`;
};

/** Something is typed of the battery at the other end. */
const isEndStated = (row: ProtectionReferences) =>
  `IF(${isAtEnd(row)},${ofEnd(row, 'stated')}="yes",FALSE)`;

/** The name of the run in this row; empty where there is none. */
const nameHere = (row: ProtectionReferences) => `IFERROR(TRIM(${there(row, 'run')}),"")`;

/** What is typed of the fuse that protects the run is not said to be for the run in whose row it stands. */
const isAstray = ({ own, ownColumn }: ProtectionReferences) =>
  `OR(${own.astray}>0,IFERROR(INDEX(${ownColumn.astray},${own.fuseAt})>0,FALSE))`;

/** What to do about entries that are not said to be for the run in their row. */
const sortedOut = (row: ProtectionReferences) => {
  const { own, ownColumn, header, column } = row;
  const name = nameHere(row);
  const rowHere = `${text(VERDICT_JOINT + FIX_WORDS.entriesRow)}&ROW()`;
  const elsewhere = `${text(FIX_WORDS.entriesThere)}&(ROW(${header})+SUMPRODUCT(MAX((${ownColumn.forRun}=${name})*${ownColumn.place})))`;
  const ofFeeder = `${text(VERDICT_JOINT + FIX_WORDS.first)}&INDEX(${column.run},${own.fuseAt})`;
  return `IF(${own.astray}=1,${rowHere}&${forRunRemedy(own.forRun, name)},IF(${own.astray}=2,${rowHere}&${elsewhere},IF(${isAstray(row)},${ofFeeder},"")))`;
};

const wrong = (word: VerdictKey) => text(VERDICT_JOINT + WORD[word]);
const noted = (word: keyof typeof PROTECTION_WORDS) => text(VERDICT_JOINT + PROTECTION_WORDS[word]);
/** Figures on a shopping list are round: the next hundred amps, the next volt. */
const upToHundred = (amps: string) => `100*ROUND(${amps}/100+0.499,0)`;

export const PROTECTION_FORMULAS: Readonly<
  Record<Exclude<ProtectionKey, 'kind' | 'i2t' | 'forRun'>, ProtectionFormula>
> = {
  run: (row) => `IF(${row.own.state}="","",${there(row, 'run')}&"")`,
  size: (row) =>
    `IF(${row.own.state}="","",IFERROR(${there(row, 'size')}&"",${text(PROTECTION_FIGURES.none)}))`,
  fuse: (row) => {
    const rating = `IF(${there(row, 'fused')}="no",${there(row, 'feederFuse')},${there(row, 'fuse')})`;
    return `IF(${row.own.state}="","",IF(ISNUMBER(${rating}),${rating},${text(PROTECTION_FIGURES.none)}))`;
  },
  fuseFrom: (row) =>
    `IF(ISNUMBER(${row.own.fuse}),IF(${there(row, 'fused')}="no",${text(PROTECTION_FIGURES.upstream)},${text(PROTECTION_FIGURES.own)}),"")`,
  breaks: (row) =>
    `IF(${hasFuseOfItsOwn(row)},${figureByKind(row.own.kind, row.protect.fuseKind, ownRating(row), ({ breaksA }) => breaksA)},"")`,
  ratedVolts: (row) =>
    `IF(${hasFuseOfItsOwn(row)},${figureByKind(row.own.kind, row.protect.fuseKind, ownRating(row), ({ ratedVolts }) => ratedVolts)},"")`,
  fuseType: ({ own, types, protect }) =>
    `IF(ISNUMBER(${own.type}),INDEX(${types.names},${own.type}),IF(ISNUMBER(${own.fuse}),${kindInForce(own.fuseKind, protect.fuseKind, own.fuse)},""))`,
  farFault: (row) =>
    fault(
      row,
      row.own.weakVolts,
      `${row.supply.bankMilliohms}*${row.protect.weakTimes}`,
      row.own.farOhms,
    ),
  farOpens: (row) => opens(row, row.own.farFault),
  farBears: (row) =>
    `IF(AND(${hasFault(row)},ISNUMBER(${row.own.farFault})),${row.own.bearsI2t}/${row.own.farFault}^2,"")`,
  nearFault: (row) => fault(row, row.own.sourceVolts, row.own.strongMilliohms, row.own.nearOhms),
  nearOpens: (row) => opens(row, row.own.nearFault),
  nearBears: ({ own }) =>
    `IF(AND(ISNUMBER(${own.farBears}),ISNUMBER(${own.nearFault})),${own.farBears}*(${own.farFault}/${own.nearFault})^2,"")`,
  steady: (row) =>
    `IF(${hasCurrent(row)},${row.call('CONDUCTOR_TEMP', there(row, 'runAmps'), there(row, 'size'), row.protect.airC, '', row.rule.material)},"")`,
  insulation: (row) => `IF(${hasCurrent(row)},${row.protect.ratingC},"")`,
  // The thinnest that serves both ends.
  guarded: ({ own, sizes }) => {
    const place = `MAX(N(${own.guardPlace}),N(${own.endGuard}))`;
    return (
      `IF(${place}>0,IF(${place}>SUM(${sizes.choose}),${text(PROTECTION_FIGURES.none)},` +
      `INDEX(${sizes.sizes},MATCH(${place},${sizes.order},0))),"")`
    );
  },
  words: ({ own }) => {
    const all = `${own.wrong}&${own.confirm}&${own.note}`;
    return (
      `IF(${own.state}="","",IF(${own.state}=${text(STATE.row)},${text(PROTECTION_WORDS.rowFirst)},` +
      `IF(LEN(${all})=0,${text(PROTECTION_WORDS.guarded)},MID(${all},${VERDICT_JOINT.length + 1},1000))))`
    );
  },
  place: ({ header }) => `ROW()-ROW(${header})`,
  // What is typed over a formula is told from it; else by what is typed beside.
  entered: ({ own }) =>
    `IF(AND(${own.forRun}="",${own.kind}="",${own.i2t}="",IFERROR(ISFORMULA(${own.breaks}),TRUE),IFERROR(ISFORMULA(${own.ratedVolts}),TRUE)),0,1)`,
  astray: (row) => {
    const { own, ownColumn } = row;
    const name = nameHere(row);
    const isElsewhere = `IF(LEN(${name})=0,FALSE,SUMPRODUCT(--(${ownColumn.forRun}=${name}))>0)`;
    return `IF(${isForRun(own.forRun, name)},0,IF(${own.entered}=1,1,IF(${isElsewhere},2,0)))`;
  },
  homeless: (row) =>
    `IF(AND(${row.own.entered}=1,${row.own.state}="",LEN(${nameHere(row)})=0),ROW(),0)`,
  state,
  root: (row) => there(row, 'root'),
  sourceVolts: (row) => ofSource(row, row.supply.fullRest),
  weakVolts: (row) => ofSource(row, row.supply.lowRest),
  mostVolts: (row) => {
    const { supply, column } = row;
    const atSource =
      `IF(${is(row, 'panel')},IF(ISNUMBER(${supply.panelColdVolts}),${supply.panelColdVolts},` +
      `IF(${supply.openCircuitVolts}="",INDEX(${column.volts},${there(row, 'root')}),${supply.openCircuitVolts})),` +
      `${ofSource(row, `MAX(${supply.chargingVolts},${supply.fullRest})`)})`;
    const atEnd = `MAX(${ofEnd(row, 'chargingVolts')},${ofEnd(row, 'fullRest')})`;
    return `IF(${isAtEnd(row)},MAX(N(${atSource}),${atEnd}),${atSource})`;
  },
  strongMilliohms: ({ supply, own, ...row }) =>
    `IF(AND(ISNUMBER(${supply.bankMilliohms}),${supply.bankMilliohms}>=0),IF(${onBattery({ supply, own, ...row })},IF(ISNUMBER(${supply.breakAmps}),1000*${supply.fullRest}/${supply.breakAmps},0),${supply.bankMilliohms}),NA())`,
  nearOhms: (row) => above(row, row.column.ohms),
  warmOhms: (row) =>
    `(${there(row, 'ohms')}-${there(row, 'jointOhms')})*${row.protect.warm}+${fixedOhms(row)}`,
  farOhms: (row) => `${row.own.warmOhms}+${above(row, row.ownColumn.warmOhms)}`,
  // Place of the run whose fuse protects this one, and what is said of that fuse there.
  fuseAt: (row) =>
    FEEDER_KEYS.map((key) => there(row, key)).reduceRight(
      (further, place, index) => {
        const from = index === 0 ? row.own.place : there(row, FEEDER_KEYS[index - 1]!);
        return `IF(${hasFuse(`INDEX(${row.column.fused},${from})`)},${from},IF(${place}>0,${further},NA()))`;
      },
      there(row, FEEDER_KEYS.at(-1)!),
    ),
  fuseKind: (row) => saidOfFuse(row, 'kind'),
  fuseI2t: (row) => saidOfFuse(row, 'i2t'),
  type: ({ own, types, protect }) =>
    `IF(ISNUMBER(${own.fuse}),IF(${kindInForce(own.fuseKind, protect.fuseKind, own.fuse)}="blade",MATCH(${own.fuse},${types.fromA},1),""),"")`,
  weak: (row) =>
    `IF(AND(${row.own.farOpens}=${text(PROTECTION_FIGURES.needNotOpen)},NOT(${supplyBears(row)}),NOT(${supplyTrips(row)})),1,0)`,
  // At the source end a time holds for a fault that is known and that the fuse breaks.
  slow: (row) => {
    const { own } = row;
    const near = `AND(${own.unbroken}=0,NOT(${isAssumed(row)}),${slower(own.nearOpens, own.nearBears)})`;
    // Where no times are published a maker's I2t is the least that it takes: longer than the wire bears is too long.
    const atLeast = (amps: string, bears: string) =>
      `IF(AND(ISNUMBER(${own.fuseI2t}),ISNUMBER(${amps}),ISNUMBER(${bears}),NOT(${isPublished(row, protector(row))})),${byI2t(protector(row), amps)}>${bears}*${WITHIN},FALSE)`;
    const least = `OR(${atLeast(own.farFault, own.farBears)},AND(${own.unbroken}=0,NOT(${isAssumed(row)}),${atLeast(own.nearFault, own.nearBears)}))`;
    return `IF(AND(OR(${slower(own.farOpens, own.farBears)},${near},${least}),NOT(${supplyBears(row)})),1,0)`;
  },
  unbroken: (row) => {
    const { own } = row;
    const isKnown = `AND(ISNUMBER(${own.nearFault}),ISNUMBER(${own.breaks}))`;
    return `IF(AND(${hasFault(row)},${isOwn(row)},NOT(${isAssumed(row)})),IF(${isKnown},IF(${own.nearFault}>${own.breaks}*${WITHIN},1,0),1),0)`;
  },
  covered,
  lowRated: (row) => {
    const { own } = row;
    const judged = `AND(${is(row, 'judged', 'panel', 'charger', 'supply')},${hasFuseOfItsOwn(row)})`;
    return `IF(${judged},IF(AND(ISNUMBER(${own.mostVolts}),ISNUMBER(${own.ratedVolts})),IF(${own.mostVolts}>${own.ratedVolts}*${WITHIN},1,0),1),0)`;
  },
  tooLong: (row) => {
    const unfused = there(row, 'unfused');
    const limit = `IF(OR(${row.rule.installed}="",${row.rule.installed}="cable"),${UNFUSED_M.sheathed},${UNFUSED_M.bare})`;
    return `IF(AND(${hasCurrent(row)},${onBattery(row)},${there(row, 'depth')}=0,ISNUMBER(${unfused})),IF(${unfused}*${row.sizes.metresPer}>${limit}*${WITHIN},1,0),0)`;
  },
  hot: ({ own }) =>
    `IF(ISNA(${own.steady}),1,IF(AND(ISNUMBER(${own.steady}),ISNUMBER(${own.insulation})),` +
    `IF(${own.steady}>${own.insulation}*${WITHIN},1,0),0))`,
  bearsI2t: (row) =>
    `IF(${hasCurrent(row)},${row.call(
      'WITHSTAND_SECONDS',
      there(row, 'size'),
      '1',
      row.protect.startC,
      row.protect.limitC,
      row.rule.material,
    )},"")`,
  surgeAmps: (row) => {
    const most = `MAX(${there(row, 'surgeAdds')},${there(row, 'surgeBelow')})`;
    return `IF(AND(${hasCurrent(row)},${isOwn(row)}),IF(${most}>0,${there(row, 'once')}+${most},""),"")`;
  },
  mayStart: ({ own, types }) =>
    `IF(ISNUMBER(${own.surgeAmps}),IF(${own.surgeAmps}>${own.fuse}*IF(ISNUMBER(${own.type}),INDEX(${types.mayOpen},${own.type}),1)*${WITHIN},1,0),0)`,
  endFuse: (row) =>
    `IF(${isAtEnd(row)},IF(AND(${there(row, 'endFused')}="yes",ISNUMBER(${there(row, 'fitting')})),${there(row, 'fitting')},${text(PROTECTION_FIGURES.none)}),"")`,
  endType: ({ own, types, protect }) =>
    `IF(ISNUMBER(${own.endFuse}),IF(${kindInForce(own.kind, protect.fuseKind, own.endFuse)}="blade",MATCH(${own.endFuse},${types.fromA},1),""),"")`,
  endNear: (row) => `IF(${isAtEnd(row)},${ofEnd(row, 'breakAmps')},"")`,
  endFar: (row) =>
    `IF(${isAtEnd(row)},${ofEnd(row, 'lowRest')}/(${ofEnd(row, 'bankMilliohms')}*${row.protect.weakTimes}/1000+${row.own.warmOhms}),"")`,
  endNearOpens: (row) => atEndOpens(row, row.own.endNear),
  endFarOpens: (row) => atEndOpens(row, row.own.endFar),
  endBears: (row) =>
    `IF(AND(${isAtEnd(row)},ISNUMBER(${row.own.endFar})),${row.own.bearsI2t}/${row.own.endFar}^2,"")`,
  endUnbroken: (row) => {
    const { own } = row;
    const isKnown = `AND(ISNUMBER(${own.endNear}),ISNUMBER(${own.breaks}))`;
    return `IF(AND(ISNUMBER(${own.endFuse}),${isEndStated(row)}),IF(${isKnown},IF(${own.endNear}>${own.breaks}*${WITHIN},1,0),1),0)`;
  },
  endCovered: (row) => {
    const { own } = row;
    const breaks = ofEnd(row, 'mainFuseBreaks');
    return `IF(${own.endUnbroken}=1,IF(AND(ISNUMBER(${own.breaks}),ISNUMBER(${own.endNear}),ISNUMBER(${ofEnd(row, 'mainFuse')}),ISNUMBER(${breaks})),IF(AND(2*${own.breaks}*${WITHIN}>=${own.endNear},${breaks}*${WITHIN}>=${own.endNear}),1,0),0),0)`;
  },
  endSlow: (row) => {
    const { own } = row;
    const nearBears = `${own.endBears}*(${own.endFar}/${own.endNear})^2`;
    const near = `IF(AND(${own.endUnbroken}=0,ISNUMBER(${own.endNearOpens}),ISNUMBER(${own.endBears}),${isEndStated(row)}),${own.endNearOpens}>${nearBears}*${WITHIN},FALSE)`;
    return `IF(OR(${slower(own.endFarOpens, own.endBears)},${near}),1,0)`;
  },
  endWeak: ({ own }) => `IF(${own.endFarOpens}=${text(PROTECTION_FIGURES.needNotOpen)},1,0)`,
  otherOhms: (row) =>
    `IF(${isJudged(row)},${row.supply.bankMilliohms}*${row.protect.weakTimes}/1000+(${above(row, row.ownColumn.warmOhms)})+${fixedOhms(row)},"")`,
  wireM: (row) =>
    `IF(ISNUMBER(${there(row, 'oneWay')}),${conductorsOf(there(row, 'back'))}*${there(row, 'oneWay')}*${row.sizes.metresPer}*${row.protect.warm},"")`,
  guardPlace,
  endOhms: (row) =>
    `IF(${isAtEnd(row)},${ofEnd(row, 'bankMilliohms')}*${row.protect.weakTimes}/1000+${fixedOhms(row)},"")`,
  endGuard,
  wrong: (row) => {
    const { own } = row;
    const told = (test: string, word: VerdictKey) => `IF(${test},${wrong(word)},"")`;
    const isEndUnknown = `AND(${isAtEnd(row)},NOT(AND(ISNUMBER(${own.endNear}),ISNUMBER(${own.endFar}))))`;
    const main = `IF(AND(${onBattery(row)},${there(row, 'depth')}=0,${hasCurrent(row)}),IF(LEN(${row.supply.mainState})=0,"",${text(VERDICT_JOINT)}&${row.supply.mainState}),"")`;
    return [
      main,
      told(`AND(${isAtEnd(row)},NOT(ISNUMBER(${own.endFuse})))`, 'endUnfused'),
      told(
        `OR(AND(${own.unbroken}=1,${own.covered}=0),AND(${own.endUnbroken}=1,${own.endCovered}=0))`,
        'mayNotBreak',
      ),
      told(`${own.lowRated}=1`, 'fuseVolts'),
      told(isAstray(row), 'entriesAstray'),
      told(`${own.slow}+${own.endSlow}>0`, 'fuseTooSlow'),
      told(`${own.weak}+${own.endWeak}>0`, 'faultTooWeak'),
      told(isUndescribed(row), 'panelMissing'),
      told(`${own.tooLong}=1`, 'unfusedTooLong'),
      told(`${own.hot}=1`, 'tooHot'),
      told(`OR(${is(row, 'source', 'deep')},${isEndUnknown})`, 'notJudged'),
      told(`IFERROR(${own.steady}=${text(PROTECTION_FIGURES.notComputed)},FALSE)`, 'heatUnknown'),
    ].join('&');
  },
  // Never empty where there is a run: a blank row of this sheet must not pass for one that is well.
  verdict: ({ own }) =>
    `IF(${own.state}="","",IF(LEN(${own.wrong})=0,${text(PROTECTION_FIGURES.none)},${own.wrong}))`,
  confirm: (row) => {
    const { own } = row;
    return (
      `IF(${own.covered}+${own.endCovered}>0,${wrong('coveredByMain')},"")` +
      `&IF(${own.mayStart}=1,${wrong('startFuse')},"")` +
      `&IF(OR(AND(${isJudged(row)},${isAssumed(row)}),AND(${isAtEnd(row)},NOT(${isEndStated(row)}))),${wrong('batteryAssumed')},"")` +
      `&IF(AND(${supplyTrips(row)},${own.farOpens}=${text(PROTECTION_FIGURES.needNotOpen)},NOT(${supplyBears(row)})),${wrong('supplyTrips')},"")`
    );
  },
  buy: (row) => {
    const { own } = row;
    const breaks = `${text(VERDICT_JOINT + FIX_WORDS.buyBreaks)}&${upToHundred(own.nearFault)}&" A for "&ROUND(${own.mostVolts}+0.499,0)&" V"&${text(FIX_WORDS.buyWhere)}`;
    const volts = `${text(VERDICT_JOINT + FIX_WORDS.buyVolts)}&ROUND(${own.mostVolts}+0.499,0)&" V"&${text(FIX_WORDS.buyWhere)}`;
    const atEnd = `${text(VERDICT_JOINT + FIX_WORDS.buyBreaks)}&${upToHundred(own.endNear)}&" A for "&ROUND(${own.mostVolts}+0.499,0)&" V"&${text(FIX_WORDS.buyEnd)}`;
    return `IFERROR(IF(AND(${own.unbroken}=1,${own.covered}=0),${breaks},IF(AND(${own.lowRated}=1,OR(${own.endUnbroken}=0,${own.endCovered}=1)),${volts},""))&IF(AND(${own.endUnbroken}=1,${own.endCovered}=0),${atEnd},""),"")`;
  },
  note: (row) => {
    const { own, supply } = row;
    const ofFuse = `IF(ISNUMBER(${own.fuse}),IF(${isPublished(row, protector(row))},"",${noted('noTime')}),${noted('noFuse')})`;
    const why =
      `IF(${is(row, 'supply')},IF(${supplyBears(row)},${noted('supplyBears')},${noted('supply')}),IF(${is(row, 'panel')},${noted('panel')},IF(${is(row, 'charger')},${noted('charger')},IF(${is(row, 'deep')},${noted('tooDeep')},` +
      `IF(${is(row, 'source')},${noted('sourceUnknown')},${ofFuse})))))`;
    const unfused = `IF(AND(${onBattery(row)},${there(row, 'depth')}=0,${there(row, 'unfused')}="",${supply.stated}="yes"),${noted('unfusedUnknown')},"")`;
    const atEnd = `IF(ISNUMBER(${own.endFuse}),${noted('endFuse')}&${own.endFuse},"")`;
    return `IF(${hasCurrent(row)},${why}&${atEnd}&${unfused},"")`;
  },
  guardedFrom: (row) => {
    const { own } = row;
    const wire =
      `IF(${own.guarded}="","",${text(VERDICT_JOINT)}&IF(${own.guarded}=${text(PROTECTION_FIGURES.none)},${text(FIX_WORDS.unprotected)},` +
      `${text(FIX_WORDS.take)}&${own.guarded}&${text(FIX_WORDS.orThicker)}))`;
    return `MID(${sortedOut(row)}&${own.buy}&${wire},${VERDICT_JOINT.length + 1},200)`;
  },
};
