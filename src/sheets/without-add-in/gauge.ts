/**
 * The choice of a size where there is no add-in: how many sizes of the series are too thin for the drop, the heat and the
 * fuse, each in a column of the Workings sheet; the size is the next.
 */
import { text } from '../plan/formula';
import { fixWith, thickerWith } from '../schedule/fix';
import type { FormulaKey } from '../schedule/formulas';
import { conductorsOf, isContinuous, whenReady } from '../schedule/row';
import { DEPTHS, type ColumnKey, type Depth } from '../station/schedule-keys';
import { BAD_ENTRY } from '../plan/formula';
import { fuseNeeded, isAmount, over, sizeRow } from './native-calls';
import type { NativeFormula, NativeReferences } from './references';

/** Everything that a size is chosen by can be used. */
const demandOk = ({ cell, data }: NativeReferences) =>
  `AND(${isAmount(cell.runAmps)},${isAmount(cell.oneWay)},OR(${cell.joints}="",${isAmount(cell.joints)}),OR(${cell.back}="",ISNUMBER(${cell.back})),` +
  `ISNUMBER(${cell.volts}),${cell.volts}>0,${data.wireOk},${data.heatOk},${data.seriesOk},${data.limitOk})`;

/** How many sizes of the series lose more than a share of the source volts, plus one: the place of the thinnest that does not. */
function placeByDrop(
  { data }: NativeReferences,
  run: Readonly<Record<'amps' | 'length' | 'joints' | 'back' | 'volts' | 'share', string>>,
): string {
  const lost = `${run.amps}*(${conductorsOf(run.back)}*${run.length}*${data.metresPer}*${data.ohmsPerM}+(N(${run.joints})+N(${run.back}))/1000)`;
  return `SUMPRODUCT(${data.choose}*(${over(lost, `${run.volts}*${run.share}`)}))+1`;
}

const ownDrop = (row: NativeReferences, share: string) => {
  const { runAmps, oneWay, joints, back, volts } = row.cell;
  return placeByDrop(row, { amps: runAmps, length: oneWay, joints, back, volts, share });
};

/** A place in the series, for a demand that can be used; an error that stands in an entry goes through. */
const placed = (row: NativeReferences, place: string) => {
  const { runAmps, oneWay, volts, room, joints, back } = row.cell;
  const given = [room, runAmps, oneWay, volts, joints, back];
  const through = given.map((cell) => `IF(ISERROR(${cell}),${cell},`).join('');
  return whenReady(
    row,
    `${through}IF(${demandOk(row)},${place},${BAD_ENTRY})${')'.repeat(given.length)}`,
  );
};

/** The Workings columns that belong to a run by itself. */
export const RUN_WORKINGS = {
  sizeRow: (row) => sizeRow(row, row.cell.size),
  fuseNeeded: (row) => whenReady(row, fuseNeeded(row, row.cell.fuseAmps, 'FALSE')),
  byHeat: (row) =>
    placed(
      row,
      `SUMPRODUCT(${row.data.choose}*(${over(row.cell.runAmps, row.data.chooseAmps)}))+1`,
    ),
  byFuse: (row) => {
    const needed = fuseNeeded(row, row.cell.runAmps, isContinuous(row));
    return placed(
      row,
      `IF(ISERROR(${needed}),${needed},SUMPRODUCT(${row.data.choose}*(${over(needed, row.data.chooseFuseA)}))+1)`,
    );
  },
  byDrop: (row) => {
    const { room } = row.cell;
    const place = placed(row, ownDrop(row, room));
    return `IF(ISERROR(${room}),${room},IF(IF(ISNUMBER(${room}),${room}<=0,FALSE),NA(),${place}))`;
  },
  chosen: (row) => {
    const { byDrop, byHeat, byFuse } = row.work;
    const place = `MAX(${byDrop},${byHeat},${byFuse})`;
    return whenReady(row, `IF(${place}>SUM(${row.data.choose}),NA(),${place})`);
  },
} as const satisfies Readonly<Record<string, NativeFormula>>;

const sizeAt = ({ data }: NativeReferences, place: string) =>
  `INDEX(${data.sizes},MATCH(${place},${data.order},0))`;

/** The thinnest wire of the runs with so many above them; past the thickest of the series there is none. */
const thinnest =
  (depth: Depth): NativeFormula =>
  (row) => {
    const { cell, work } = row;
    const share = cell[`room${depth}`];
    const place = `MAX(${ownDrop(row, share)},${work.byHeat},${work.byFuse})`;
    return whenReady(
      row,
      `IF(${cell.depth}=${depth},IF(ISERROR(${share}),${share},IF(${share}<=0,NA(),IF(${demandOk(row)},${sizeAt(row, place)},${BAD_ENTRY}))),"")`,
    );
  };

/** What replaces the schedule's columns that choose a size. */
export const GAUGE_COLUMNS: Readonly<Partial<Record<FormulaKey, NativeFormula>>> = {
  ...Object.fromEntries(DEPTHS.map((depth) => [`size${depth}`, thinnest(depth)])),
  setBy: (row) => {
    const { chosen, byDrop, byHeat } = row.work;
    return whenReady(
      row,
      `IF(ISERROR(${chosen}),${chosen},IF(${byDrop}=${chosen},${text('drop')},IF(${byHeat}=${chosen},${text('heat')},${text('fuse')})))`,
    );
  },
  exactly: (row) => {
    const at = (key: ColumnKey) => `INDEX(${row.column[key]},${row.cell.mendPlace})`;
    const other = (key: 'byHeat' | 'byFuse') =>
      `INDEX(${row.workColumn[key]},${row.cell.mendPlace})`;
    return fixWith(
      row,
      thickerWith(row, (share) =>
        sizeAt(
          row,
          `MAX(${placeByDrop(row, {
            amps: at('runAmps'),
            length: at('length'),
            joints: at('joints'),
            back: at('back'),
            volts: at('volts'),
            share,
          })},${other('byHeat')},${other('byFuse')})`,
        ),
      ),
    );
  },
};
