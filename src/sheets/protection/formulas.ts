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
import { PANEL, WORD, type VerdictKey } from '../station/verdicts';

/** Sizes to choose among, one a row, thinnest first within a series. */
export interface GuardData {
  readonly sizes: string;
  readonly areaMm2: string;
  readonly ohmsPerM: string;
  /** 1 for a size that may be suggested, else 0; its place among those; its ampacity, 0 where it may not. */
  readonly choose: string;
  readonly order: string;
  readonly chooseAmps: string;
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
}

export interface ProtectionReferences extends ProtectionCellReferences {
  /** Cells of the same row. */
  readonly own: Readonly<Record<ProtectionKey, string>>;
  /** Columns of the schedule. */
  readonly column: Readonly<Record<ColumnKey, string>>;
  readonly sizes: GuardData;
  readonly types: TypeData;
  /** The cell above the first row. */
  readonly header: string;
}

export type ProtectionFormula = (row: ProtectionReferences) => string;

export const WITHIN = `(1+${RELATIVE_SLACK})`;

/** The schedule's cell of the same run. */
export const there = ({ column, own }: ProtectionReferences, key: ColumnKey) =>
  `INDEX(${column[key]},${own.place})`;

const is = ({ own }: ProtectionReferences, ...states: (keyof typeof STATE)[]) => {
  const tests = states.map((state) => `${own.state}=${text(STATE[state])}`);
  return tests.length === 1 ? tests[0]! : `OR(${tests.join(',')})`;
};
/** Rows with a current, whether or not their faults can be told. */
export const hasCurrent = (row: ProtectionReferences) =>
  is(row, 'judged', 'panel', 'source', 'deep');
export const isJudged = (row: ProtectionReferences) => is(row, 'judged');

/** A fault, by the ohms before it: `amps` is worked out where anything limits it. */
export function faultAt(row: ProtectionReferences, ohms: string, amps: string): string {
  const { supply } = row;
  return (
    `IF(${isJudged(row)},IF(${supply.milliohms}/1000+${ohms}>0,${amps},${text(PROTECTION_FIGURES.noLimit)}),` +
    `IF(${is(row, 'panel')},IF(${supply.shortCircuitAmps}="","",${supply.shortCircuitAmps}),""))`
  );
}

/** The fuse's longest time at a fault, `seconds` where the standard has one. */
export function opensWithin(row: ProtectionReferences, fault: string, seconds: string): string {
  const { own, types } = row;
  return (
    `IF(AND(${isJudged(row)},ISNUMBER(${own.type}),ISNUMBER(${fault})),` +
    `IF(INDEX(${types.times},${own.type},1)="",${text(PROTECTION_FIGURES.notPublished)},` +
    `IF(INDEX(${types.multiples},1,1)*${own.fuse}>${fault}*${WITHIN},${text(PROTECTION_FIGURES.needNotOpen)},${seconds})),"")`
  );
}

/** How long the wire bears the far-end fault. */
export const bearsFor = (row: ProtectionReferences, seconds: string) =>
  `IF(AND(${isJudged(row)},ISNUMBER(${row.own.farFault})),${seconds},"")`;

const state: ProtectionFormula = (row) => {
  const { own, column, protect } = row;
  const of = (key: ColumnKey) => there(row, key);
  const known = [
    own.sourceVolts,
    own.nearOhms,
    own.farOhms,
    protect.k,
    protect.airC,
    protect.ratingC,
  ];
  const tooDeep = `IF(${of('place4')}>0,INDEX(${column.place1},${of('place4')})<>0,FALSE)`;
  return (
    `IF(${own.place}>ROWS(${column.run}),"",IFERROR(IF(${of('runAmps')}="","",` +
    `IF(NOT(AND(ISNUMBER(${of('runAmps')}),ISNUMBER(${of('ohms')}))),${text(STATE.row)},` +
    `IF(${tooDeep},${text(STATE.deep)},IF(TRIM(INDEX(${column.fedFrom},${own.root}))=${text(PANEL)},${text(STATE.panel)},` +
    `IF(AND(${known.map((cell) => `ISNUMBER(${cell})`).join(',')},IFERROR(${own.sourceVolts}>0,FALSE)),` +
    `${text(STATE.judged)},${text(STATE.source)}))))),${text(STATE.row)}))`
  );
};

const root: ProtectionFormula = (row) =>
  FEEDER_KEYS.reduce(
    (nearer, key) => `IF(${there(row, key)}>0,${there(row, key)},${nearer})`,
    row.own.place,
  );

const sourceVolts: ProtectionFormula = ({ own, column, rule, supply }) => {
  const at = (key: ColumnKey) => `INDEX(${column[key]},${own.root})`;
  return `IF(AND(TRIM(${at('fedFrom')})="",${at('volts')}=${rule.volts}),${supply.fullRest},${at('volts')})`;
};

const nearOhms: ProtectionFormula = (row) => {
  const { column, supply } = row;
  const above = FEEDER_KEYS.map(
    (key) => `IF(${there(row, key)}>0,INDEX(${column.ohms},${there(row, key)}),0)`,
  );
  return `IF(AND(ISNUMBER(${supply.milliohms}),${supply.milliohms}>=0),${above.join('+')},NA())`;
};

const slower = (opens: string, bears: string) =>
  `IF(AND(ISNUMBER(${opens}),ISNUMBER(${bears})),${opens}>${bears}*${WITHIN},FALSE)`;

/**
 * Place of the thinnest size that the fuse would guard at both ends: how many of the series it would not, and one more.
 * Thicker is never less guarded. The times are the greatest of all chords, so a size is guarded where it bears every
 * chord's heat; a thicker wire lets more current through, so its far-end fault is its own.
 */
const guardPlace: ProtectionFormula = (row) => {
  const { own, sizes, types, protect, supply } = row;
  const others = `${supply.milliohms}/1000+${own.nearOhms}+N(${there(row, 'joints')})/1000`;
  const wireM = `2*${there(row, 'length')}*${sizes.metresPer}`;
  const far = `(${own.sourceVolts}/(${others}+${wireM}*${sizes.ohmsPerM}))`;
  const bears = `(${protect.k}*${sizes.areaMm2})^2*${WITHIN}`;
  const chords = [1, 2, 3, 4, 5].map((chord) => {
    const of = (table: string) => `INDEX(${table},${own.type},${chord})`;
    return `(${of(types.factors)}*${own.fuse}^${of(types.steepness)}*${far}^(2-${of(types.steepness)})<=${bears})`;
  });
  const guarded = [
    `(${own.fuse}<=${sizes.chooseAmps}*${WITHIN})`,
    `(${own.nearOpens}*${own.nearFault}^2<=${bears})`,
    `(INDEX(${types.multiples},1,1)*${own.fuse}<=${far}*${WITHIN})`,
    ...chords,
  ].join('*');
  return (
    `IF(AND(${own.weak}+${own.slow}>0,${own.unbroken}=0),IF(ISNUMBER(${own.nearOpens}),` +
    `SUMPRODUCT(${sizes.choose}*(1-${guarded}))+1,SUM(${sizes.choose})+1),"")`
  );
};

const wrong = (word: VerdictKey) => text(VERDICT_JOINT + WORD[word]);
const noted = (word: keyof typeof PROTECTION_WORDS) => text(VERDICT_JOINT + PROTECTION_WORDS[word]);

export const PROTECTION_FORMULAS: Readonly<Record<ProtectionKey, ProtectionFormula>> = {
  run: (row) => `IF(${row.own.state}="","",${there(row, 'run')}&"")`,
  size: (row) =>
    `IF(${row.own.state}="","",IFERROR(${there(row, 'size')}&"",${text(PROTECTION_FIGURES.none)}))`,
  fuse: (row) => {
    const rating = `IF(${there(row, 'fused')}="no",${there(row, 'feederFuse')},${there(row, 'fuse')})`;
    return `IF(${row.own.state}="","",IF(ISNUMBER(${rating}),${rating},${text(PROTECTION_FIGURES.none)}))`;
  },
  fuseFrom: (row) =>
    `IF(ISNUMBER(${row.own.fuse}),IF(${there(row, 'fused')}="no",${text(PROTECTION_FIGURES.upstream)},${text(PROTECTION_FIGURES.own)}),"")`,
  fuseType: ({ own, types }) => `IF(ISNUMBER(${own.type}),INDEX(${types.names},${own.type}),"")`,
  farFault: (row) =>
    faultAt(
      row,
      row.own.farOhms,
      row.call('FAULT_AMPS', row.own.sourceVolts, row.supply.milliohms, row.own.farOhms),
    ),
  farOpens: (row) =>
    opensWithin(row, row.own.farFault, row.call('FUSE_SECONDS', row.own.fuse, row.own.farFault)),
  farBears: (row) =>
    bearsFor(
      row,
      row.call(
        'WITHSTAND_SECONDS',
        there(row, 'size'),
        row.own.farFault,
        row.protect.startC,
        row.protect.limitC,
        row.rule.material,
      ),
    ),
  nearFault: (row) =>
    faultAt(
      row,
      row.own.nearOhms,
      row.call('FAULT_AMPS', row.own.sourceVolts, row.supply.milliohms, row.own.nearOhms),
    ),
  nearOpens: (row) =>
    opensWithin(row, row.own.nearFault, row.call('FUSE_SECONDS', row.own.fuse, row.own.nearFault)),
  nearBears: ({ own }) =>
    `IF(AND(ISNUMBER(${own.farBears}),ISNUMBER(${own.nearFault})),${own.farBears}*(${own.farFault}/${own.nearFault})^2,"")`,
  steady: (row) =>
    `IF(${hasCurrent(row)},${row.call('CONDUCTOR_TEMP', there(row, 'runAmps'), there(row, 'size'), row.protect.airC, '', row.rule.material)},"")`,
  insulation: (row) => `IF(${hasCurrent(row)},${row.protect.ratingC},"")`,
  guardedFrom: ({ own, sizes }) =>
    `IF(ISNUMBER(${own.guardPlace}),IF(${own.guardPlace}>SUM(${sizes.choose}),${text(PROTECTION_FIGURES.none)},` +
    `INDEX(${sizes.sizes},MATCH(${own.guardPlace},${sizes.order},0))),"")`,
  words: ({ own }) =>
    `IF(${own.state}="","",IF(${own.state}=${text(STATE.row)},${text(PROTECTION_WORDS.rowFirst)},` +
    `IF(LEN(${own.wrong}&${own.note})=0,${text(PROTECTION_WORDS.guarded)},MID(${own.wrong}&${own.note},${VERDICT_JOINT.length + 1},250))))`,
  place: ({ header }) => `ROW()-ROW(${header})`,
  state,
  root,
  sourceVolts,
  nearOhms,
  farOhms: (row) => `${row.own.nearOhms}+${there(row, 'ohms')}`,
  type: ({ own, types }) => `IF(ISNUMBER(${own.fuse}),MATCH(${own.fuse},${types.fromA},1),"")`,
  weak: ({ own }) => `IF(${own.farOpens}=${text(PROTECTION_FIGURES.needNotOpen)},1,0)`,
  slow: ({ own }) =>
    `IF(OR(${slower(own.farOpens, own.farBears)},${slower(own.nearOpens, own.nearBears)}),1,0)`,
  unbroken: (row) => {
    const { own, types } = row;
    return (
      `IF(AND(${isJudged(row)},ISNUMBER(${own.type})),IF(ISNUMBER(${own.nearFault}),` +
      `IF(${own.nearFault}>INDEX(${types.breakingA},${own.type})*${WITHIN},1,0),1),0)`
    );
  },
  hot: ({ own }) =>
    `IF(ISNA(${own.steady}),1,IF(AND(ISNUMBER(${own.steady}),ISNUMBER(${own.insulation})),` +
    `IF(${own.steady}>${own.insulation}*${WITHIN},1,0),0))`,
  guardPlace,
  wrong: (row) => {
    const { own } = row;
    const told = (cell: string, word: VerdictKey) => `IF(${cell}=1,${wrong(word)},"")`;
    return (
      `IF(${is(row, 'source', 'deep')},${wrong('notJudged')},"")&${told(own.slow, 'fuseTooSlow')}` +
      `&${told(own.weak, 'faultTooWeak')}&${told(own.unbroken, 'mayNotBreak')}&${told(own.hot, 'tooHot')}`
    );
  },
  // Never empty where there is a run: a blank row of this sheet must not pass for one that is well.
  verdict: ({ own }) =>
    `IF(${own.state}="","",IF(LEN(${own.wrong})=0,${text(PROTECTION_FIGURES.none)},${own.wrong}))`,
  note: (row) => {
    const { own, types } = row;
    const ofFuse =
      `IF(ISNUMBER(${own.type}),IF(INDEX(${types.times},${own.type},1)="",${noted('noTime')},""),` +
      `${noted('noFuse')})`;
    const why =
      `IF(${is(row, 'panel')},${noted('panel')},IF(${is(row, 'deep')},${noted('tooDeep')},` +
      `IF(${is(row, 'source')},${noted('sourceUnknown')},${ofFuse})))`;
    const heat = `IF(ISTEXT(${own.steady}),IF(${own.steady}="","",${noted('tempNotComputed')}),"")`;
    return `IF(${hasCurrent(row)},${why}&${heat},"")`;
  },
};
