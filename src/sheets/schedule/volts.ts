/** The volts that arrive, and whether they are enough. */
import { BAD_ENTRY } from '../plan/formula';
import type { RowReferences } from '../station/references';
import type { ColumnKey } from '../station/schedule-keys';
import {
  countsEach,
  isOnBattery,
  isWatts,
  numberOr0,
  over,
  there,
  whenReady,
  type RowFormula,
} from './row';
import { isInDeepTree } from './places';
import { RELATIVE_SLACK } from '../../core/limits';

/** Volts of the tree as it is solved for what counts at once, or of an unnamed run by itself. */
const solved = (row: RowReferences, of: 'fullVolts' | 'lowVolts', source: ColumnKey) => {
  const { cell, feed } = row;
  return `IF(${cell.run}="",${cell[source]}-${cell.dropVolts},IF(${isInDeepTree(row)},${BAD_ENTRY},${there(feed[of], cell.place)}))`;
};

/** The same with the whole own load. */
const voltsFrom =
  (of: 'fullVolts' | 'lowVolts', source: ColumnKey): RowFormula =>
  (row) => {
    const { cell, supply } = row;
    const inside = `IF(${isOnBattery(row)},${supply.bankMilliohms}/1000,0)`;
    const rest = `IF(${cell.alone}=0,0,${cell.alone}*(${cell.pathOhms}+${inside}))`;
    return whenReady(row, `${solved(row, of, source)}-${rest}`);
  };

/** Volts where the path starts: the battery's at a state of charge, or those of its own source. */
const sourceVolts =
  (terminal: 'fullTerminal' | 'lowTerminal'): RowFormula =>
  (row) =>
    whenReady(row, `IF(${isOnBattery(row)},${row.supply[terminal]},${row.cell.volts})`);

/** 1 where a load is under its minimum volts or cannot be served, 0 where it works or asks for nothing. */
function shortOf(minimumVolts: string, volts: string): string {
  return `IF(${minimumVolts}="",0,IFERROR(IF(${volts}="",0,IF(${volts}<${minimumVolts},1,0)),1))`;
}

export const VOLTS_FORMULAS = {
  fullSource: sourceVolts('fullTerminal'),
  lowSource: sourceVolts('lowTerminal'),
  loadVolts: voltsFrom('fullVolts', 'fullSource'),
  lowVolts: voltsFrom('lowVolts', 'lowSource'),
  lowDrop: (row) => {
    const { cell, feed } = row;
    const above = `IF(${cell.place1}>0,${there(feed.lowVolts, cell.place1)},${cell.lowSource})`;
    return whenReady(row, `${above}-${solved(row, 'lowVolts', 'lowSource')}`);
  },
  shortFull: ({ cell }) => shortOf(cell.leastVolts, cell.loadVolts),
  shortLow: ({ cell }) => shortOf(cell.leastVolts, cell.lowVolts),
  fewer: (row) => {
    const { cell } = row;
    const isFewer = `IF(ISNUMBER(${cell.lowVolts}),${cell.lowVolts}<${cell.assumedVolts}*(1-${RELATIVE_SLACK}),FALSE)`;
    return `IF(AND(${isWatts(row)},${cell.leastVolts}="",ISNUMBER(${cell.assumedVolts})),IF(${isFewer},1,0),0)`;
  },
  // Nothing where the drop holds; the target counts to a load, or in every run.
  overDrop: (row) => {
    const { cell } = row;
    const target = `${cell.volts}*${cell.target}`;
    const beyond = (lost: string) =>
      `IF(ISERROR(${lost}),${lost},IF(ISNUMBER(${target}),IF(${over(lost, target)},${lost}-${target},0),${BAD_ENTRY}))`;
    return whenReady(
      row,
      `IF(${countsEach(row)},${beyond(cell.dropVolts)},IF(${numberOr0(cell.ownAmps)}>0,${beyond(cell.pathVolts)},0))`,
    );
  },
} as const satisfies Record<string, RowFormula>;
