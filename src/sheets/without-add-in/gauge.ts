/**
 * The choice of a size where there is no add-in: how many sizes of the series are too thin for the drop, the heat and the
 * fuse, each in a column of the Workings sheet; the size is the next.
 */
import { BAD_ENTRY } from '../plan/formula';
import { isContinuous, remedyWith, whenReady, type FormulaKey } from '../schedule/formulas';
import type { ColumnKey } from '../station/schedule-keys';
import { fuseNeeded, isAmount, over, sizeRow } from './native-calls';
import type { NativeFormula, NativeReferences } from './references';

const jointsOk = ({ cell }: NativeReferences) => `OR(${cell.joints}="",${isAmount(cell.joints)})`;
const voltsOk = ({ cell }: NativeReferences) =>
  `AND(ISNUMBER(${cell.volts}),${cell.volts}>0,ISNUMBER(${cell.target}),${cell.target}>0,${cell.target}<0.5)`;

/** Everything that a size is chosen by can be used. */
const demandOk = (row: NativeReferences) =>
  `AND(${isAmount(row.cell.runAmps)},${isAmount(row.cell.length)},${jointsOk(row)},${voltsOk(row)},${row.data.wireOk},${row.data.heatOk},${row.data.seriesOk})`;

/** How many sizes of the series lose more than the target, plus one: the place of the thinnest that does not. */
function placeByDrop(
  { data }: NativeReferences,
  run: Readonly<Record<'amps' | 'length' | 'joints' | 'volts' | 'target', string>>,
): string {
  const lost = `${run.amps}*(2*${run.length}*${data.metresPer}*${data.ohmsPerM}+N(${run.joints})/1000)`;
  return `SUMPRODUCT(${data.choose}*(${over(lost, `${run.volts}*${run.target}`)}))+1`;
}

/** A place in the series, for a demand that can be used; an error that stands in an entry goes through. */
const placed = (row: NativeReferences, place: string) => {
  const entries = [
    row.cell.runAmps,
    row.cell.length,
    row.cell.volts,
    row.cell.target,
    row.cell.joints,
  ];
  const through = entries.map((cell) => `IF(ISERROR(${cell}),${cell},`).join('');
  return whenReady(
    row,
    `${through}IF(${demandOk(row)},${place},${BAD_ENTRY})${')'.repeat(entries.length)}`,
  );
};

/** The Workings columns that belong to a run by itself. */
export const RUN_WORKINGS = {
  sizeRow: (row) => sizeRow(row, row.cell.size),
  fuseNeeded: (row) => whenReady(row, fuseNeeded(row, row.cell.runAmps, isContinuous(row))),
  byDrop: (row) =>
    placed(
      row,
      placeByDrop(row, {
        amps: row.cell.runAmps,
        length: row.cell.length,
        joints: row.cell.joints,
        volts: row.cell.volts,
        target: row.cell.target,
      }),
    ),
  byHeat: (row) =>
    placed(
      row,
      `SUMPRODUCT(${row.data.choose}*(${over(row.cell.runAmps, row.data.chooseAmps)}))+1`,
    ),
  byFuse: (row) =>
    placed(
      row,
      `SUMPRODUCT(${row.data.choose}*(${over(row.work.fuseNeeded, row.data.chooseAmps)}))+1`,
    ),
  chosen: (row) => {
    const { byDrop, byHeat, byFuse } = row.work;
    const place = `MAX(${byDrop},${byHeat},${byFuse})`;
    return whenReady(row, `IF(${place}>SUM(${row.data.choose}),NA(),${place})`);
  },
} as const satisfies Readonly<Record<string, NativeFormula>>;

const sizeAt = ({ data }: NativeReferences, place: string) =>
  `INDEX(${data.sizes},MATCH(${place},${data.order},0))`;

/** What replaces the schedule's columns that choose a size. */
export const GAUGE_COLUMNS = {
  suggested: (row) =>
    whenReady(
      row,
      `IF(ISERROR(${row.work.chosen}),${row.work.chosen},${sizeAt(row, row.work.chosen)})`,
    ),
  setBy: (row) =>
    whenReady(
      row,
      `IF(ISERROR(${row.work.chosen}),${row.work.chosen},` +
        `IF(${row.work.byDrop}=${row.work.chosen},"drop",IF(${row.work.byHeat}=${row.work.chosen},"heat","fuse")))`,
    ),
  mend: (row) => {
    const at = (key: ColumnKey) => `INDEX(${row.column[key]},${row.cell.mendPlace})`;
    const other = (key: 'byHeat' | 'byFuse') =>
      `INDEX(${row.workColumn[key]},${row.cell.mendPlace})`;
    return remedyWith(row, (target) =>
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
