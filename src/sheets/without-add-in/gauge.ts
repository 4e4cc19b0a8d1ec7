/**
 * The schedule's formulas in functions that every spreadsheet knows (Excel 2016, Excel for the web, LibreOffice 7.4): what
 * our worksheet functions answer, from the Conductors, Fuses and Workings sheets that travel along. A bad entry gives
 * #VALUE! and a question without an answer #N/A, as the functions do, so that verdicts read the same.
 */
import { fuseShare } from '../../core/fuse';
import { RELATIVE_SLACK } from '../../core/limits';
import { VERDICT_JOINT, VERDICT_WORDS } from '../../core/verdict';
import { text } from '../plan/formula';
import type { NativeFormula, NativeReferences } from '../station/native-references';
import type { ColumnKey } from '../station/schedule-keys';
import { mendWith, whenReady, type FormulaKey } from '../schedule/formulas';

/** #VALUE! in every spreadsheet. */
export const BAD_ENTRY = 'VALUE("check")';
const WITHIN = `(1+${RELATIVE_SLACK})`;

/** Over a limit that it may equal. */
const over = (value: string, limit: string) => `${value}>${limit}*${WITHIN}`;

const isAmount = (cell: string) => `AND(ISNUMBER(${cell}),${cell}>=0)`;

const ampsOk = ({ cell }: NativeReferences) => isAmount(cell.runAmps);
const lengthOk = ({ cell }: NativeReferences) => isAmount(cell.length);
const jointsOk = ({ cell }: NativeReferences) =>
  `OR(${cell.joints}="",AND(ISNUMBER(${cell.joints}),${cell.joints}>=0))`;
const voltsOk = ({ cell }: NativeReferences) =>
  `AND(ISNUMBER(${cell.volts}),${cell.volts}>0,ISNUMBER(${cell.target}),${cell.target}>0,${cell.target}<0.5)`;

/** Everything that a size is chosen by can be used. */
const demandOk = (row: NativeReferences) =>
  `AND(${ampsOk(row)},${lengthOk(row)},${jointsOk(row)},${voltsOk(row)},${row.data.wireOk},${row.data.heatOk})`;

/** An error that stands in a cell goes through; else the expression. */
const through = (cell: string, expression: string) => `IF(ISERROR(${cell}),${cell},${expression})`;

/** How many sizes of the series lose more than the target, plus one: the place of the thinnest that does not. */
function placeByDrop(
  { data }: NativeReferences,
  run: Readonly<Record<'amps' | 'length' | 'joints' | 'volts' | 'target', string>>,
): string {
  const lost = `${run.amps}*(2*${run.length}*${data.metresPer}*${data.ohmsPerM}+N(${run.joints})/1000)`;
  return `SUMPRODUCT(${data.choose}*(${over(lost, `${run.volts}*${run.target}`)}))+1`;
}

/** The Workings columns that belong to a run by itself. */
export const RUN_WORKINGS = {
  sizeRow: ({ cell, data }) =>
    `IF(ISERROR(${cell.size}),${cell.size},IF(${cell.size}="","",` +
    `IFERROR(MATCH(${cell.size},${data.sizes},0),IFERROR(MATCH(${cell.size}&" AWG",${data.sizes},0),${BAD_ENTRY}))))`,
  fuseNeeded: (row) => {
    const needed = `${row.cell.runAmps}*IF(${row.rule.duty}="bursts",${fuseShare(false)},${fuseShare(true)})`;
    const short = `SUMPRODUCT(--(${over(needed, row.data.fuses)}))`;
    return whenReady(
      row,
      `IF(${ampsOk(row)},IF(${short}=ROWS(${row.data.fuses}),NA(),INDEX(${row.data.fuses},${short}+1)),${BAD_ENTRY})`,
    );
  },
  byDrop: (row) =>
    whenReady(
      row,
      `IF(${demandOk(row)},${placeByDrop(row, {
        amps: row.cell.runAmps,
        length: row.cell.length,
        joints: row.cell.joints,
        volts: row.cell.volts,
        target: row.cell.target,
      })},${BAD_ENTRY})`,
    ),
  byHeat: (row) =>
    whenReady(
      row,
      `IF(${demandOk(row)},SUMPRODUCT(${row.data.choose}*(${over(row.cell.runAmps, row.data.chooseAmps)}))+1,${BAD_ENTRY})`,
    ),
  byFuse: (row) =>
    whenReady(
      row,
      `IF(${demandOk(row)},SUMPRODUCT(${row.data.choose}*(${over(row.work.fuseNeeded, row.data.chooseAmps)}))+1,${BAD_ENTRY})`,
    ),
  chosen: (row) => {
    const { byDrop, byHeat, byFuse } = row.work;
    const place = `MAX(${byDrop},${byHeat},${byFuse})`;
    return whenReady(
      row,
      `IF(${row.data.seriesOk},IF(${place}>SUM(${row.data.choose}),NA(),${place}),${BAD_ENTRY})`,
    );
  },
} as const satisfies Readonly<Record<string, NativeFormula>>;

const sizeAt = ({ data }: NativeReferences, place: string) =>
  `INDEX(${data.sizes},MATCH(${place},${data.order},0))`;

/** The judgement of RUN_VERDICT. */
const judged: NativeFormula = (row) => {
  const { cell } = row;
  const word = (wrong: 'drop' | 'heat' | 'fuse') => text(VERDICT_JOINT + VERDICT_WORDS[wrong]);
  const wrong =
    `IF(${over(`${cell.runAmps}*${cell.ohms}`, `${cell.volts}*${cell.target}`)},${word('drop')},"")` +
    `&IF(${over(cell.runAmps, cell.ampacity)},${word('heat')},"")` +
    `&IF(IFERROR(${over(row.work.fuseNeeded, cell.ampacity)},TRUE),${word('fuse')},"")`;
  return whenReady(
    row,
    through(
      cell.ampacity,
      `IF(${demandOk(row)},IF(LEN(${wrong})=0,${text(VERDICT_WORDS.ok)},MID(${wrong},${VERDICT_JOINT.length + 1},200)),${BAD_ENTRY})`,
    ),
  );
};

/** What replaces the formulas that call our functions. */
export const NATIVE_FORMULAS = {
  suggested: (row) => whenReady(row, through(row.work.chosen, sizeAt(row, row.work.chosen))),
  setBy: (row) =>
    whenReady(
      row,
      through(
        row.work.chosen,
        `IF(${row.work.byDrop}=${row.work.chosen},"drop",IF(${row.work.byHeat}=${row.work.chosen},"heat","fuse"))`,
      ),
    ),
  ohms: (row) =>
    whenReady(
      row,
      through(
        row.work.sizeRow,
        `IF(AND(${lengthOk(row)},${jointsOk(row)},${row.data.wireOk}),` +
          `2*${row.cell.length}*${row.data.metresPer}*INDEX(${row.data.ohmsPerM},${row.work.sizeRow})+N(${row.cell.joints})/1000,${BAD_ENTRY})`,
      ),
    ),
  ampacity: (row) =>
    whenReady(
      row,
      through(
        row.work.sizeRow,
        `IF(${row.data.heatOk},INDEX(${row.data.ampacity},${row.work.sizeRow}),${BAD_ENTRY})`,
      ),
    ),
  fuse: (row) =>
    whenReady(
      row,
      `IF(${row.cell.fused}="no","none",${through(
        row.cell.ampacity,
        through(
          row.work.fuseNeeded,
          `IF(${over(row.work.fuseNeeded, row.cell.ampacity)},NA(),${row.work.fuseNeeded})`,
        ),
      )})`,
    ),
  judged,
  mend: (row) => {
    const at = (key: ColumnKey) => `INDEX(${row.column[key]},${row.cell.mendPlace})`;
    const other = (key: 'byHeat' | 'byFuse') =>
      `INDEX(${row.workColumn[key]},${row.cell.mendPlace})`;
    return mendWith(row, (target) =>
      sizeAt(
        row,
        `MAX(${placeByDrop(row, {
          amps: at('runAmps'),
          length: at('length'),
          joints: at('joints'),
          volts: at('volts'),
          target,
        })},${other('byHeat')},${other('byFuse')})`,
      ),
    );
  },
} as const satisfies Readonly<Partial<Record<FormulaKey, NativeFormula>>>;
