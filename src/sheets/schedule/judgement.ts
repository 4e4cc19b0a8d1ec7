/** What is to be said of a run, and how grave it is. */
import { VERDICT_JOINT } from '../../core/verdict';
import { text } from '../plan/formula';
import { RETURNS } from '../station/parameters';
import { PROTECTION_FIGURES } from '../station/protection-words';
import type { RowReferences } from '../station/references';
import { COLUMN_KEYS, type ColumnKey } from '../station/schedule-keys';
import { LEVELS, WORD, type VerdictKey } from '../station/verdicts';
import { SCHEDULE_COLUMNS } from './columns';
import {
  fuseFor,
  isCraft,
  isFused,
  isOnBattery,
  isPanel,
  isWatts,
  over,
  there,
  whenReady,
  type RowFormula,
} from './row';
import { isUsable } from './sizing';
import { isShortAtStart } from './volts';

/** A load of more watts than this may be an inverter; ours. */
const INVERTER_WATTS = 100;

/** Nothing is said of the run, and no other hangs on it. */
const isEmptyRow = ({ cell, column }: RowReferences) =>
  `IF(AND(${cell.peak}="",${cell.length}=""),IF(${cell.run}="",TRUE,SUMPRODUCT(--(${column.feeder}=TRIM(${cell.run})))=0),FALSE)`;

/** What is typed into a cell can be used, or nothing is. */
function understood(
  cell: string,
  { parameter, choices }: { parameter?: unknown; choices?: unknown },
) {
  const known = (choices ?? (parameter as { choices?: unknown } | undefined)?.choices) as
    readonly string[] | undefined;
  const bounds = (parameter as { bounds?: Record<string, number> } | undefined)?.bounds;
  const words = known?.map((choice) => `${cell}=${text(choice)}`).join(',');
  if (bounds === undefined) return words === undefined ? undefined : `OR(${cell}="",${words})`;
  const tests = [
    `ISNUMBER(${cell})`,
    ...(bounds['least'] === undefined ? [] : [`${cell}>=${bounds['least']}`]),
    ...(bounds['above'] === undefined ? [] : [`${cell}>${bounds['above']}`]),
    ...(bounds['most'] === undefined ? [] : [`${cell}<=${bounds['most']}`]),
    ...(bounds['below'] === undefined ? [] : [`${cell}<${bounds['below']}`]),
  ];
  const isWord = words === undefined ? '' : `IF(OR(${words}),TRUE,`;
  return `IF(${cell}="",TRUE,${isWord}AND(${tests.join(',')}))${isWord === '' ? '' : ')'}`;
}

/** The last of the errors that a formula can come to for good, #N/A. */
const LAST_ERROR_TYPE = 7;

/** An error that only says that the answer is still to come, as #BUSY! does in Excel: no fault of the entries. */
const isBeingCalculated = (cell: string) => `IFERROR(ERROR.TYPE(${cell})>${LAST_ERROR_TYPE},FALSE)`;

/** Columns that hold what typed quantities come to. */
const READ_IN: Readonly<Partial<Record<ColumnKey, ColumnKey>>> = { peak: 'draw', length: 'oneWay' };

/** How a quantity is written, said where one could not be read. */
const WRITTEN_AS: Readonly<Partial<Record<ColumnKey, string>>> = {
  peak: ' (as 22 A, 60 W or 800 mA; no mark for thousands)',
  length: ' (as 10 ft, 2.5 m or 8\' 6"; no mark for thousands)',
  // A bare figure that was pasted stands there as hundreds of per cent.
  target: ' (as 3%, which is 0.03)',
  atOnce: ' (as 50%, which is 0.5)',
  efficiency: ' (as 85%, which is 0.85)',
};

/** Headings of the typed cells of the row that cannot be used. */
const entries: RowFormula = ({ cell }) => {
  const parts = COLUMN_KEYS.flatMap((key) => {
    const column = SCHEDULE_COLUMNS[key];
    if (column.kind !== 'typed' && column.kind !== 'usual') return [];
    // A wire is known by what it comes to.
    const test =
      key === 'ownSize'
        ? `IF(OR(${cell.ownSize}="",ISERROR(${cell.ownAmps})),TRUE,OR(ISNUMBER(${cell.ohms}),ISERROR(${cell.runAmps}),${cell.depth}<0,${cell.ownAmps}="",${cell.oneWay}="",${cell.volts}="",${cell.target}=""))`
        : understood(cell[READ_IN[key] ?? key], column);
    return test === undefined
      ? []
      : [`IF(IFERROR(${test},FALSE),"",${text(`, ${column.heading}${WRITTEN_AS[key] ?? ''}`)})`];
  });
  return parts.join('&');
};

/**
 * A fuse at the battery that the run ends at is enough where its source has no more than the wire bears: a panel or a
 * power supply by what they give at most, a charger of that battery by the current that the run is drawn up for.
 */
const isFusedAtEndAlone = ({ cell, column, supply }: RowReferences) => {
  const most = `IF(${cell.sourceKind}="panel",${supply.panelDesignAmps},IF(${cell.sourceKind}="power supply",${supply.mostAmps},IF(AND(${cell.endBattery}=${cell.source},${there(column.ownSource, cell.root)}<>${cell.endBattery}),${cell.runAmps},NA())))`;
  return `IF(AND(${cell.endBattery}>0,${cell.endFused}="yes",${cell.place1}=0),IFERROR(NOT(${over(most, cell.ampacity)}),FALSE),FALSE)`;
};

/** Worked out from the row's entries and shown, but for what is to be said of the run. */
const FIGURE_KEYS = COLUMN_KEYS.filter(
  (key) => SCHEDULE_COLUMNS[key].kind === 'computed' && key !== 'verdict' && key !== 'mend',
);

/** Headings of the figures that somebody typed where a formula was; none in a spreadsheet that cannot tell. */
const typedOver: RowFormula = ({ cell }) =>
  FIGURE_KEYS.map(
    (key) =>
      `IF(IFERROR(ISFORMULA(${cell[key]}),TRUE),"",${text(`, ${SCHEDULE_COLUMNS[key].heading}`)})`,
  ).join('&');

/** What the Protection sheet says of the run at the same place; a run that has no row there is not judged. */
const protectionSays =
  (of: 'verdict' | 'confirm', otherwise: VerdictKey | undefined): RowFormula =>
  (row) => {
    const found = there(row.protect[of], row.cell.place);
    const none = otherwise === undefined ? '""' : text(VERDICT_JOINT + WORD[otherwise]);
    return whenReady(
      row,
      `IFERROR(IF(${found}=${text(PROTECTION_FIGURES.none)},"",IF(LEN(${found})>${VERDICT_JOINT.length},${found},${none})),${none})`,
    );
  };

/** Everything that is to be said of the row, each word after VERDICT_JOINT, gravest first; empty where nothing is. */
const words: RowFormula = (row) => {
  const { cell, column, supply } = row;
  const word = (key: VerdictKey) => text(VERDICT_JOINT + WORD[key]);
  const when = (test: string, key: VerdictKey) => `IF(${test},${word(key)},"")`;
  const heat = `IF(ISNA(${cell.ampacity}),${word('noAmpacity')},${when(over(cell.runAmps, cell.ampacity), 'heat')})`;
  const fuse = when(`AND(${isFused(row)},ISERROR(${cell.fitting}))`, 'fuse');
  const branch = when(
    // A rating that the wire may have is its own answer.
    `AND(${cell.fused}="no",NOT(${isFusedAtEndAlone(row)}),NOT(ISNUMBER(IF(ISNUMBER(${cell.feederFuse}),${fuseFor(row, cell.feederFuse, cell.size)},NA()))))`,
    'needsFuse',
  );
  const served =
    `IF(ISNA(${cell.lowVolts}),${word('cannotBeServed')},IF(ISERROR(${cell.lowVolts}),${word('voltsUnknown')},` +
    `${when(`${cell.shortLow}=1`, 'tooFewVolts')}))`;
  const drop = when(`${cell.overDrop}>0`, 'drop');
  const fewer = when(`${cell.fewer}=1`, 'fewerVolts');
  const battery = when(`AND(${cell.battery}>0,${supply.fits}=0)`, 'batteryVolts');
  const craft = when(
    `AND(${isFused(row)},ISNUMBER(${cell.fitting}),IFERROR(${over(cell.fitting, cell.ampacity)},FALSE))`,
    'craftFuse',
  );
  const watts = when(
    `AND(${isWatts(row)},${cell.leastVolts}="",${cell.efficiency}="",IFERROR(${cell.ownLoad}>${INVERTER_WATTS},FALSE))`,
    'wattsUnknown',
  );
  const unsettled = when(
    `IF(AND(${cell.run}<>"",ISNUMBER(${cell.lowVolts})),IFERROR(${row.notSettled},FALSE),FALSE)`,
    'notSettled',
  );
  const starts = when(isShortAtStart(row), 'startVolts');
  const endUnknown = when(
    `OR(${cell.endSource}<0,AND(${cell.endSource}>0,${cell.endSource}=${there(column.ownSource, cell.root)}))`,
    'endUnknown',
  );
  const returns = `IF(${cell.returns}="",${row.rule.returns},${cell.returns})`;
  const inCraft = when(
    `AND(${isCraft(row)},${returns}<>"",${returns}<>${text(RETURNS[0])})`,
    'chassisInCraft',
  );
  // Whatever is wrong above: what its own wire and fuse are can be told.
  const isOwn = `${cell.ownSize}<>""`;
  const ownHeat = `IF(${isOwn},${heat},"")`;
  const ownFuse = `IF(${isOwn},${fuse},"")`;
  const ownBranch = `IF(AND(${isOwn},ISNUMBER(${cell.feederFuse})),${branch},"")`;
  const differs = when(
    `IF(${cell.place1}>0,IFERROR(${there(column.volts, cell.root)}<>${cell.volts},FALSE),FALSE)`,
    'voltsDiffer',
  );
  const most = `IF(${isOnBattery(row)},MAX(${supply.chargingVolts},${supply.fullRest}),IF(${isPanel(row)},${supply.panelColdVolts},${cell.volts}))`;
  const tooMany = when(
    `IF(ISNUMBER(${cell.mostVolts}),IFERROR(${over(most, cell.mostVolts)},FALSE),FALSE)`,
    'tooManyVolts',
  );
  // What is wrong with the source, and with the battery on its output.
  const own = there(column.ownSource, cell.root);
  const told = (said: string) => `IF(LEN(${said})=0,"",${text(VERDICT_JOINT)}&${said})`;
  const ownSays = told(`INDEX(${row.sources.says},1,${own})`);
  const source = `IF(${own}=0,"",${ownSays}&IF(OR(${own}=${cell.source},${cell.sourceKind}=""),"",${told(supply.says)}))`;
  return whenReady(
    row,
    `IF(${cell.treeWord}<>"",${text(VERDICT_JOINT)}&${cell.treeWord},` +
      `IF(AND(ISERROR(${cell.room}),NOT(ISERROR(${cell.runAmps})),${isUsable(row)}),${[ownHeat, ownFuse, ownBranch, word('tiedToAnother')].join('&')},` +
      `IF(ISNA(${cell.size}),IF(AND(${cell.room}<=0,${cell.place1}>0),${word('noRoom')},${word('noSize')}),` +
      `${[heat, fuse, branch, cell.protection, source, served, starts, fewer, drop, tooMany, endUnknown, inCraft, differs, battery, unsettled, craft, watts, cell.confirm].join('&')})))`,
  );
};

export const JUDGEMENT_FORMULAS = {
  protection: protectionSays('verdict', 'notJudged'),
  confirm: protectionSays('confirm', undefined),
  // 1 where the run has every figure that it is judged by.
  judged: (row) => {
    const { cell } = row;
    const figures = [cell.pathVolts, cell.ampacity, cell.lowVolts];
    return whenReady(
      row,
      `IF(AND(${isUsable(row)},${figures.map((figure) => `ISNUMBER(${figure})`).join(',')}),1,0)`,
    );
  },
  entries,
  typedOver,
  words,
  // "ok" has to be earned: a row of which nothing could be judged is not ok.
  finding: (row) => {
    const { cell } = row;
    const word = (key: VerdictKey) => text(WORD[key]);
    const said = `MID(${cell.words},${VERDICT_JOINT.length + 1},1000)`;
    const isPanelRow = isPanel(row);
    const calculating = [
      cell.runAmps,
      cell.size,
      cell.ohms,
      cell.ampacity,
      cell.fitting,
      cell.lowVolts,
    ]
      .map((answer) => `IF(${isBeingCalculated(answer)},${answer},`)
      .join('');
    const ends = ')'.repeat(6);
    return (
      `IF(${isEmptyRow(row)},"",IF(LEN(${cell.typedOver})>0,${word('typedOver')},${calculating}IF(LEN(${cell.entries})>0,${word('checkEntries')},` +
      `IF(${cell.oneWay}="",${word('lengthMissing')},` +
      `IF(IFERROR(${cell.ownLoad}="",FALSE),${word('peakMissing')},` +
      `IF(OR(${cell.volts}="",${cell.target}=""),IF(${isPanelRow},${word('panelMissing')},${word('voltsMissing')}),` +
      `IFERROR(IF(${cell.words}="",IF(${cell.judged}=1,${word('ok')},${word('checkEntries')}),` +
      `IF(LEN(${cell.words})<=${VERDICT_JOINT.length},${word('checkEntries')},${said})),${word('checkEntries')})))))))${ends}`
    );
  },
  verdict: ({ cell }) => cell.finding,
  // 1 to 5 as LEVELS stand; what is none of the listed verdicts is unclear.
  level: ({ cell, verdicts }) => {
    const grave = `SUMPRODUCT(MAX(ISNUMBER(SEARCH(${verdicts.words},${cell.finding}))*${verdicts.gravity}))`;
    const unclear = LEVELS.indexOf('unclear') + 1;
    return (
      `IF(LEN(${cell.finding})=0,"",IF(${cell.finding}=${text(WORD.ok)},${LEVELS.length},` +
      `IF(${grave}=0,${unclear},${LEVELS.length}-${grave})))`
    );
  },
} as const satisfies Record<string, RowFormula>;
