/**
 * What readings of a finished run tell, as formulas: the same as judgeJoints of the core, which a test holds them to. They
 * are the same with and without the add-in, and know a return through the chassis as the schedule does.
 */
import { JOINT_FINDINGS } from '../../core/joints';
import { saidOfRun } from '../crew/said';
import { text } from '../plan/formula';
import { columnReferences, runsFollowed } from '../schedule/layout';
import { forRunRemedy, isForRun } from '../station/for-run';
import { conductorTempInForce } from '../station/house-rules';
import type { Layout } from '../station/layout';
import type { ColumnKey } from '../station/schedule-keys';
import { READING_KEYS } from '../station/as-built';
import { warmthOver } from '../station/warmth';
import type { BuiltKey, BuiltReferences } from './layout';

/** Why readings cannot be used. */
export const BUILT_WRONG = {
  missing: 'a reading is missing: volts at both ends and amps are wanted',
  notRead: 'a reading is not a number',
  backwards: 'volts the wrong way round: look at the leads and the polarity',
  noAmps: 'no current: measure while the load runs',
  swapped: 'more volts at the load than at the source: readings swapped, or not of one moment',
  noWire: 'its wire or length is not known: fix its row of the schedule',
  badHead: 'the limit, the meter or the temperature above cannot be used',
  noRun: 'no run stands in this row of the schedule',
} as const;

export const BUILT_WORDS = {
  ...JOINT_FINDINGS,
  less: 'resists less than its wire: check length, wire and readings',
} as const;

/** Before the row that readings stand in, where they are not said to be for its run. */
const ROW_WORD = 'row ';

type FormulaKey = Exclude<BuiltKey, (typeof READING_KEYS)[number] | 'forRun'>;

/** How the wire resists at the temperature of the reading, over how it does at that of the house rules. */
function warmth({ names: { rule } }: Layout, { typed }: BuiltReferences): string {
  const reading = `IF(${typed.tempC}="",${conductorTempInForce(rule)},${typed.tempC})`;
  return warmthOver(rule, reading);
}

/** The row of a run, in its first row; readings are typed. */
export function builtFormulas(
  layout: Layout,
  references: BuiltReferences,
): Readonly<Record<FormulaKey, string>> {
  const { cell, typed, number } = references;
  const schedule = columnReferences(layout, true);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${number})`;
  const said = saidOfRun(layout, number);
  const readings = [cell.voltsIn, cell.voltsOut, cell.amps];
  const typedIn = READING_KEYS.map((key) => `LEN(TRIM(${cell[key]}))`).join('+');
  const isBad = (key: keyof BuiltReferences['typed']) =>
    `IF(ISNUMBER(${typed[key]}),${typed[key]}${key === 'tempC' ? '<-100' : '<0'},TRUE)`;
  const tempBad = `IF(${typed.tempC}="",FALSE,${isBad('tempC')})`;
  const wrong: readonly (readonly [string, string])[] = [
    [`AND(${cell.there}=0,LEN(TRIM(${cell.forRun}))=0)`, text(BUILT_WRONG.noRun)],
    [`${cell.astray}=1`, `${text(ROW_WORD)}&ROW()&${forRunRemedy(cell.forRun, cell.name)}`],
    [
      `OR(${readings.map((reading) => `LEN(TRIM(${reading}))=0`).join(',')})`,
      text(BUILT_WRONG.missing),
    ],
    [
      `NOT(AND(${readings.map((reading) => `ISNUMBER(${reading})`).join(',')}))`,
      text(BUILT_WRONG.notRead),
    ],
    [`OR(${cell.voltsIn}<=0,${cell.voltsOut}<0)`, text(BUILT_WRONG.backwards)],
    [`${cell.amps}<=0`, text(BUILT_WRONG.noAmps)],
    [`${cell.voltsOut}>${cell.voltsIn}`, text(BUILT_WRONG.swapped)],
    [
      `OR(${isBad('excess')},${isBad('voltsStep')},${isBad('ampsStep')},${isBad('wireDoubt')},${tempBad})`,
      text(BUILT_WRONG.badHead),
    ],
    [`NOT(ISNUMBER(${cell.wireMilliohms}))`, text(BUILT_WRONG.noWire)],
  ];
  const usable = `AND(${typedIn}>0,LEN(${cell.wrong})=0)`;
  const where = (formula: string) => `IF(${usable},${formula},"")`;
  const lost = `(${cell.voltsIn}-${cell.voltsOut})`;
  const { wireMilliohms } = cell;
  const range = `"between "&ROUND(MAX(0,${cell.least}),1)&" and "&IF(ISNUMBER(${cell.most}),ROUND(${cell.most},1)&" mΩ","any number of mΩ")`;
  return {
    run: `IF(${cell.there}=0,"",${said.name})`,
    wire: `IF(${cell.there}=0,"",${said.wire}&", "&${said.length})`,
    drop: where(lost),
    expected: where(`${cell.amps}*(${wireMilliohms}+${cell.planned})/1000`),
    beyond: where(`1000*${lost}/${cell.amps}-${wireMilliohms}`),
    // Joints as planned, and the chassis where one brings the current back.
    planned: `IF(${cell.there}=0,"",IFERROR(1000*${there('jointOhms')},""))`,
    // What was lost is at least nothing: the run has no source of its own.
    least: where(
      `1000*MAX(0,${lost}-2*${typed.voltsStep})/(${cell.amps}+${typed.ampsStep})-${wireMilliohms}*(1+${typed.wireDoubt})`,
    ),
    most: where(
      `IF(${cell.amps}>${typed.ampsStep},1000*(${lost}+2*${typed.voltsStep})/(${cell.amps}-${typed.ampsStep})-${wireMilliohms}*(1-${typed.wireDoubt}),"no limit")`,
    ),
    heat: where(
      `IF(ISNUMBER(${there('runAmps')}),MAX(0,${cell.beyond})/1000*${there('runAmps')}^2,"")`,
    ),
    verdict: `IF(${typedIn}=0,"",IF(LEN(${cell.wrong})>0,${cell.wrong},IF(${cell.finding}=${text(BUILT_WORDS.unsure)},${cell.finding}&": "&${range}&"; more amps, or a finer meter",${cell.finding})))`,
    there: `IF(${number}>ROWS(${schedule.level}),0,IF(ISERROR(${there('level')}),1,IF(OR(LEN(${there('level')})>0,LEN(TRIM(${there('run')}))>0),1,0)))`,
    name: `IFERROR(TRIM(${there('run')}),"")`,
    astray: `IF(${typedIn}=0,0,IF(${isForRun(cell.forRun, cell.name)},0,1))`,
    wireMilliohms: `IF(${cell.there}=0,"",IFERROR(IF(ISNUMBER(${there('ohms')}),1000*(${there('ohms')}-${there('jointOhms')})*${warmth(layout, references)},""),""))`,
    limit: where(`${cell.planned}+${typed.excess}`),
    wrong: `IF(${typedIn}=0,"",${wrong.reduceRight((further, [test, why]) => `IF(${test},${why},${further})`, '""')})`,
    finding: `IF(NOT(${usable}),"",IF(${cell.least}>${cell.limit},${text(BUILT_WORDS.look)},IF(ISNUMBER(${cell.most}),IF(${cell.most}<0,${text(BUILT_WORDS.less)},IF(${cell.most}<=${cell.limit},${text(BUILT_WORDS.sound)},${text(BUILT_WORDS.unsure)})),${text(BUILT_WORDS.unsure)})))`,
  };
}

/** How many runs are measured, and what came of it; first of all, whether readings are not for the run in their row. */
export function summaryFormula(layout: Layout, { column }: BuiltReferences): string {
  const schedule = columnReferences(layout, true);
  const found = (word: string) => `COUNTIF(${column.finding},${text(word)})`;
  const unusable = `SUMPRODUCT(--(LEN(${column.wrong})>0))`;
  const measured = `SUMPRODUCT(--(LEN(${column.finding})>0))`;
  const astray = `SUM(${column.astray})`;
  const first = `INDEX(${column.wrong},MATCH(1,${column.astray},0))`;
  return [
    `IF(${astray}=0,"","Not judged: "&IF(${astray}=1,"",${astray}&" rows; ")&${first}&". ")`,
    `${measured}&" of "&SUM(${column.there})&" runs measured: "`,
    `${found(BUILT_WORDS.look)}&${text(`: ${BUILT_WORDS.look}, `)}`,
    `${found(BUILT_WORDS.unsure)}&${text(`: ${BUILT_WORDS.unsure}, `)}`,
    `${found(BUILT_WORDS.less)}&${text(': less than the wire, ')}`,
    `${found(BUILT_WORDS.sound)}&${text(`: ${BUILT_WORDS.sound}`)}`,
    `IF(${unusable}=0,"",". Not usable: "&${unusable})`,
    `IF(ROWS(${schedule.level})>${runsFollowed(layout)},${text('. The schedule has more runs than this sheet follows: take a new copy')},"")`,
  ].join('&');
}
