/** The formulas of the schedule's computed columns, in our functions and plain arithmetic. */
import { RELATIVE_SLACK } from '../../core/limits';
import { VERDICT_JOINT } from '../../core/verdict';
import { BAD_ENTRY, text } from '../plan/formula';
import { ambientInForce, conductorTempInForce } from '../station/house-rules';
import type { RowReferences } from '../station/references';
import { FEEDER_KEYS, type ColumnKey } from '../station/schedule-keys';
import { PROTECTION_FIGURES } from '../station/protection-words';
import {
  LEVELS,
  MEND_WORDS,
  PANEL,
  VERDICT_KEYS,
  VERDICTS,
  WORD,
  type Level,
  type VerdictKey,
} from '../station/verdicts';

/** A formula without its leading "=", for one row. */
export type RowFormula = (row: RowReferences) => string;

/** Shows nothing until the row can be computed, whatever a spreadsheet makes of blanks. */
export function whenReady({ cell }: RowReferences, expression: string): string {
  const blanks = [cell.ownAmps, cell.length, cell.volts, cell.target];
  return `IF(OR(${blanks.map((blank) => `${blank}=""`).join(',')}),"",${expression})`;
}

const isPanel = ({ cell }: RowReferences) => `TRIM(${cell.fedFrom})=${text(PANEL)}`;
/** The panel's figure or the rule's; nothing where that cell is blank, which a bare reference would make 0. */
const usual = (row: RowReferences, panel: string, rule: string) =>
  `IF(${isPanel(row)},IF(${panel}="","",${panel}),IF(${rule}="","",${rule}))`;
const onBattery = ({ cell, rule }: RowReferences) =>
  `AND(TRIM(${cell.fedFrom})="",${cell.volts}=${rule.volts})`;
/** Nothing is said of the run, and no other hangs on it. */
const isEmptyRow = ({ cell, column }: RowReferences) =>
  `IF(AND(${cell.peak}="",${cell.length}=""),IF(${cell.run}="",TRUE,SUMPRODUCT(--(${column.feeder}=TRIM(${cell.run})))=0),FALSE)`;
export const isContinuous = ({ rule }: RowReferences) => `${rule.duty}<>"bursts"`;

const wireArguments = ({ cell, rule }: RowReferences) => [
  rule.material,
  conductorTempInForce(rule),
  cell.joints,
];

const heatArguments = ({ rule }: RowReferences) => [
  rule.insulationC,
  ambientInForce(rule),
  rule.conductors,
  rule.installed,
];

/** The arguments that MINGAUGE and GAUGE_LIMIT share. */
function gaugeArguments(row: RowReferences): readonly string[] {
  const { cell, rule } = row;
  return [
    cell.runAmps,
    cell.length,
    rule.unit,
    cell.volts,
    cell.target,
    ...wireArguments(row),
    ...heatArguments(row),
    isContinuous(row),
    rule.series,
  ];
}

/** A column's cell in the row at a place. */
const there = (column: string, place: string) => `INDEX(${column},${place})`;

/** Where a feeder that is not in the list stands; a run that is fed by none has 0 for its feeder's place. */
const NOT_LISTED = -1;

/** The place of a feeder's own feeder. */
const placeAbove =
  (below: 'place1' | 'place2' | 'place3'): RowFormula =>
  ({ cell, column }) =>
    `IF(${cell[below]}>0,MAX(0,${there(column.place1, cell[below])}),0)`;

/** A column summed over all that hangs below the run, itself left out. */
export const sumBelow = (
  { column, place }: Pick<RowReferences, 'column' | 'place'>,
  summed: string,
) => FEEDER_KEYS.map((key) => `SUMIF(${column[key]},${place},${summed})`).join('+');

/** Some feeder above the run is the run itself. */
export const comesRound = ({ cell, place }: Pick<RowReferences, 'cell' | 'place'>) =>
  `OR(${FEEDER_KEYS.map((key) => `${cell[key]}=${place}`).join(',')})`;

/** A volts column: solved for the whole tree, or for an unnamed run by itself. */
const voltsFrom =
  (feed: 'fullVolts' | 'lowVolts', source: ColumnKey): RowFormula =>
  (row) =>
    whenReady(
      row,
      `IF(${row.cell.run}="",${row.cell[source]}-${row.cell.dropVolts},INDEX(${row.feed[feed]},${row.place}))`,
    );

/** Volts where the run starts: the battery's at a state of charge where it hangs on the battery, its own otherwise. */
const sourceVolts =
  (terminal: 'fullTerminal' | 'lowTerminal'): RowFormula =>
  (row) =>
    whenReady(row, `IF(${onBattery(row)},${row.supply[terminal]},${row.cell.volts})`);

/** Rating of the nearest fuse upstream of a run that has none of its own, up to four levels. */
const feederFuse: RowFormula = (row) => {
  const { cell, column } = row;
  const nearest = FEEDER_KEYS.map((key) => cell[key]).reduceRight(
    (further, place) =>
      `IF(${place}<=0,NA(),IF(${there(column.fused, place)}="no",${further},${there(column.fuse, place)}))`,
    'NA()',
  );
  return `IF(${cell.fused}="no",${nearest},"")`;
};

/** What is wrong with a run's place among the others; empty where nothing is. */
const treeWord: RowFormula = (row) => {
  const { cell, column } = row;
  const word = (key: VerdictKey) => text(WORD[key]);
  return whenReady(
    row,
    `IF(${cell.run}="",IF(${cell.feeder}="","",${word('nameMissing')}),` +
      `IF(SUMPRODUCT(--(${column.run}=${cell.run}))>1,${word('nameTwice')},` +
      `IF(${cell.place1}=${NOT_LISTED},${word('feederNotListed')},` +
      `IF(AND(ISERROR(${cell.runAmps}),ISNUMBER(${cell.ownAmps})),` +
      `IF(${comesRound(row)},${word('inLoop')},${word('tiedToAnother')}),""))))`,
  );
};

/** 1 where a load is under its least volts or cannot be served, 0 where it works or asks for nothing. */
function shortOf(leastVolts: string, volts: string): string {
  return `IF(${leastVolts}="",0,IFERROR(IF(${volts}="",0,IF(${volts}<${leastVolts},1,0)),1))`;
}

/** Place of the run on the load's path that loses most at low charge, where the load is short of volts. */
const mendPlace: RowFormula = ({ cell, column, place }) => {
  const lost = [
    `IFERROR(${cell.lowDrop},0)`,
    ...FEEDER_KEYS.map(
      (key) => `IF(${cell[key]}>0,IFERROR(${there(column.lowDrop, cell[key])},0),0)`,
    ),
  ];
  const most = `MAX(${lost.join(',')})`;
  const places = [place, cell.place1, cell.place2, cell.place3, cell.place4];
  const which = places.reduceRight(
    (further, at, index) => `IF(${lost[index]!}=${most},${at},${further})`,
    'NA()',
  );
  return `IF(AND(${cell.shortLow}=1,ISNUMBER(${cell.lowVolts})),${which},"")`;
};

/** What the Protection sheet finds wrong with the run; a run that has no row there is not judged. */
const protection: RowFormula = (row) => {
  const found = there(row.protect.verdict, row.place);
  const notJudged = text(VERDICT_JOINT + WORD.notJudged);
  return whenReady(
    row,
    `IFERROR(IF(${found}=${text(PROTECTION_FIGURES.none)},"",IF(LEN(${found})>${VERDICT_JOINT.length},${found},${notJudged})),${notJudged})`,
  );
};

/** A blank cell counts as 0, which is shorter than any size. */
const guardedFrom: RowFormula = ({ protect, place }) => {
  const found = there(protect.guardedFrom, place);
  return (
    `IFERROR(IF(LEN(${found})<2,"",IF(${found}=${text(PROTECTION_FIGURES.none)},${text(MEND_WORDS.unguarded)},` +
    `${text(MEND_WORDS.guarded)}&${found})),"")`
  );
};

/**
 * Which thicker run would give a load its least volts: the run that loses most on its path, in the thinnest size that
 * loses so much less. The run is asked to lose, at its peak, its share of now less the share that is missing. Before it
 * stands the size that the run's fuse would guard, where that is wrong too.
 */
export function remedyWith(row: RowReferences, size: (target: string) => string): string {
  const { cell, column } = row;
  const at = (key: ColumnKey) => there(column[key], cell.mendPlace);
  const missing = `(${cell.leastVolts}-${cell.lowVolts})/${at('lowDrop')}`;
  const target = `${at('dropShare')}*(1-${missing})`;
  return (
    `IF(${cell.mendPlace}="",${cell.guardedFrom},IF(${cell.guardedFrom}="","",${cell.guardedFrom}&${text(VERDICT_JOINT)})` +
    `&IFERROR(IF(${missing}>=1,${text(MEND_WORDS.none)},` +
    `${text(MEND_WORDS.mends)}&${at('run')}&${text(MEND_WORDS.inSize)}&${size(target)}),${text(MEND_WORDS.none)}))`
  );
}

const mend: RowFormula = (row) => {
  const at = (key: ColumnKey) => there(row.column[key], row.cell.mendPlace);
  return remedyWith(row, (target) =>
    row.call(
      'MINGAUGE',
      at('runAmps'),
      at('length'),
      row.rule.unit,
      at('volts'),
      target,
      row.rule.material,
      conductorTempInForce(row.rule),
      at('joints'),
      ...heatArguments(row),
      isContinuous(row),
      row.rule.series,
    ),
  );
};

/** Over a limit that it may equal. */
const over = (value: string, limit: string) => `${value}>${limit}*(1+${RELATIVE_SLACK})`;

/** What RUN_VERDICT would say of the run by itself, from the figures that stand in its row. */
const judged: RowFormula = (row) => {
  const { cell } = row;
  const word = (wrong: 'drop' | 'heat' | 'fuse') => text(VERDICT_JOINT + WORD[wrong]);
  const wrong =
    `IF(${over(cell.dropVolts, `${cell.volts}*${cell.target}`)},${word('drop')},"")` +
    `&IF(${over(cell.runAmps, cell.ampacity)},${word('heat')},"")` +
    `&IF(ISERROR(${cell.fitting}),${word('fuse')},"")`;
  const usable =
    `AND(ISNUMBER(${cell.runAmps}),${cell.runAmps}>=0,ISNUMBER(${cell.volts}),${cell.volts}>0,` +
    `ISNUMBER(${cell.target}),${cell.target}>0,${cell.target}<0.5)`;
  return whenReady(
    row,
    `IF(ISERROR(${cell.ampacity}),${cell.ampacity},IF(ISERROR(${cell.dropVolts}),${cell.dropVolts},` +
      `IF(${usable},IF(LEN(${wrong})=0,${text(WORD.ok)},MID(${wrong},${VERDICT_JOINT.length + 1},1000)),${BAD_ENTRY})))`,
  );
};

/** What is wrong with the row, each word after VERDICT_JOINT; empty where nothing is. */
const words: RowFormula = (row) => {
  const { cell } = row;
  const word = (key: VerdictKey) => text(VERDICT_JOINT + WORD[key]);
  const alone =
    `IF(ISNA(${cell.ampacity}),${word('noAmpacity')},` +
    `IF(${cell.judged}=${text(WORD.ok)},"",${text(VERDICT_JOINT)}&${cell.judged}))`;
  const served =
    `IF(ISNA(${cell.lowVolts}),${word('cannotBeServed')},IF(ISERROR(${cell.lowVolts}),${word('voltsUnknown')},` +
    `IF(${cell.shortLow}=1,${word('tooFewVolts')},"")))`;
  const guarded =
    `IF(${cell.fused}="no",IF(IFERROR(${cell.feederFuse}<=${cell.ampacity},FALSE),"",` +
    `${word('needsFuse')}),"")`;
  return whenReady(
    row,
    `IF(${cell.treeWord}<>"",${text(VERDICT_JOINT)}&${cell.treeWord},` +
      `IF(ISNA(${cell.size}),${word('noSize')},${alone}&${served}&${guarded}&${cell.protection}))`,
  );
};

/** How grave the verdict is: the place of its level in LEVELS. What the table does not know is unclear. */
const level: RowFormula = ({ cell }) => {
  const says = (of: Level) =>
    `OR(${VERDICT_KEYS.filter((key) => VERDICTS[key].level === of)
      .map((key) => `ISNUMBER(SEARCH(${text(WORD[key])},${cell.verdict}))`)
      .join(',')})`;
  const place = (of: Level) => String(LEVELS.indexOf(of) + 1);
  return (
    `IF(LEN(${cell.verdict})=0,"",IF(${cell.verdict}=${text(WORD.ok)},${place('ok')},` +
    `IF(${says('danger')},${place('danger')},IF(${says('fails')},${place('fails')},${place('unclear')}))))`
  );
};

/**
 * Formulas by column. Five of them call a function of ours in every row, so a row costs five calls; a load that is short
 * of volts costs one more.
 */
export const SCHEDULE_FORMULAS = {
  volts: (row) =>
    `IF(${row.cell.length}="","",${usual(row, row.supply.panelVolts, row.rule.volts)})`,
  target: (row) =>
    `IF(${row.cell.length}="","",${usual(row, row.supply.panelTarget, row.rule.target)})`,
  feeder: (row) => `IF(${isPanel(row)},"",TRIM(${row.cell.fedFrom}))`,
  ownLoad: ({ cell, column }) =>
    `IF(${cell.peak}<>"",${cell.peak},IF(${cell.length}="","",` +
    `IF(${cell.run}="","",IF(SUMPRODUCT(--(${column.feeder}=TRIM(${cell.run})))>0,0,""))))`,
  ownAmps: ({ cell }) =>
    `IF(${cell.ownLoad}="","",IF(${cell.kind}="W",` +
    `${cell.ownLoad}/IF(${cell.leastVolts}="",${cell.volts}*(1-${cell.target}),${cell.leastVolts}),${cell.ownLoad}))`,
  runAmps: (row) =>
    whenReady(
      row,
      `IF(${row.cell.run}="",${row.cell.ownAmps},INDEX(${row.feed.amps},${row.place}))`,
    ),
  suggested: (row) => whenReady(row, row.call('MINGAUGE', ...gaugeArguments(row))),
  setBy: (row) => whenReady(row, row.call('GAUGE_LIMIT', ...gaugeArguments(row))),
  size: (row) =>
    whenReady(row, `IF(${row.cell.ownSize}="",${row.cell.suggested},${row.cell.ownSize})`),
  ohms: (row) =>
    whenReady(
      row,
      row.call('RUN_OHMS', row.cell.length, row.rule.unit, row.cell.size, ...wireArguments(row)),
    ),
  dropVolts: (row) => whenReady(row, `${row.cell.runAmps}*${row.cell.ohms}`),
  dropShare: (row) => whenReady(row, `${row.cell.dropVolts}/${row.cell.volts}`),
  fullSource: sourceVolts('fullTerminal'),
  lowSource: sourceVolts('lowTerminal'),
  // A row that cannot be computed says so itself; it must not take the battery's figures with it.
  batteryAmps: (row) =>
    whenReady(
      row,
      `IF(AND(${onBattery(row)},ISNUMBER(${row.cell.runAmps})),MAX(0,${row.cell.runAmps}),0)`,
    ),
  loadVolts: voltsFrom('fullVolts', 'fullSource'),
  lowVolts: voltsFrom('lowVolts', 'lowSource'),
  ampacity: (row) =>
    whenReady(row, row.call('AMPACITY', row.cell.size, ...heatArguments(row), row.rule.material)),
  fuse: (row) => whenReady(row, `IF(${row.cell.fused}="no","none",${row.cell.fitting})`),
  fitting: (row) =>
    whenReady(
      row,
      row.call(
        'FUSE_FOR',
        row.cell.runAmps,
        row.cell.size,
        ...heatArguments(row),
        row.rule.material,
        isContinuous(row),
      ),
    ),
  heat: (row) => whenReady(row, `${row.cell.runAmps}*${row.cell.dropVolts}`),
  place1: ({ cell, column }) =>
    `IF(${cell.feeder}="",0,IFERROR(MATCH(${cell.feeder},${column.run},0),${NOT_LISTED}))`,
  place2: placeAbove('place1'),
  place3: placeAbove('place2'),
  place4: placeAbove('place3'),
  feederFuse,
  treeWord,
  judged,
  shortFull: ({ cell }) => shortOf(cell.leastVolts, cell.loadVolts),
  shortLow: ({ cell }) => shortOf(cell.leastVolts, cell.lowVolts),
  lowDrop: (row) =>
    whenReady(
      row,
      `IF(${row.cell.place1}>0,${there(row.column.lowVolts, row.cell.place1)},${row.cell.lowSource})-${row.cell.lowVolts}`,
    ),
  mendPlace,
  protection,
  guardedFrom,
  words,
  // "ok" has to be earned: a row of which nothing could be judged is not ok.
  verdict: (row) => {
    const { cell } = row;
    const check = text(WORD.checkEntries);
    const ok = text(WORD.ok);
    return (
      `IF(${isEmptyRow(row)},"",IF(${cell.length}="",${text(WORD.lengthMissing)},` +
      `IF(${cell.ownLoad}="",${text(WORD.peakMissing)},` +
      `IF(OR(${cell.volts}="",${cell.target}=""),${text(WORD.voltsMissing)},` +
      `IFERROR(IF(${cell.words}="",IF(${cell.judged}=${ok},${ok},${check}),` +
      `IF(LEN(${cell.words})<=${VERDICT_JOINT.length},${check},MID(${cell.words},${VERDICT_JOINT.length + 1},1000))),${check})))))`
    );
  },
  level,
  mend,
} as const satisfies Partial<Record<ColumnKey, RowFormula>>;

export type FormulaKey = keyof typeof SCHEDULE_FORMULAS;
