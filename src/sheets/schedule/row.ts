/** Small pieces that the formulas of a row share. */
import { RELATIVE_SLACK } from '../../core/limits';
import { text } from '../plan/formula';
import { ambientInForce, conductorTempInForce, fuseLimitInForce } from '../station/house-rules';
import { BAD_CHASSIS_TIMES, COUNTS } from '../station/parameters';
import type { RowReferences } from '../station/references';
import { FEEDER_KEYS, type ColumnKey } from '../station/schedule-keys';

/** A formula without its leading "=", for one row. */
export type RowFormula = (row: RowReferences) => string;

/** Shows nothing until the row can be computed, whatever a spreadsheet makes of blanks. */
export function whenReady({ cell }: RowReferences, expression: string): string {
  const blanks = [cell.ownAmps, cell.oneWay, cell.volts, cell.target];
  return `IF(OR(${blanks.map((blank) => `${blank}=""`).join(',')}),"",${expression})`;
}

/** Over a limit that it may equal. */
export const over = (value: string, limit: string) => `${value}>${limit}*(1+${RELATIVE_SLACK})`;

/** A cell's number, and 0 for anything else: sums over a column must not meet an error. */
export const numberOr0 = (cell: string) => `IF(ISNUMBER(${cell}),${cell},0)`;

/** A column's cell in the row at a place. */
export const there = (column: string, place: string) => `INDEX(${column},${place})`;

/** Its path starts at a panel of the Supply sheet. */
export const isPanel = ({ cell }: RowReferences) => `${cell.sourceKind}="panel"`;
/** Its path starts at a battery of the Supply sheet, with that one's volts. */
export const isOnBattery = ({ cell }: Pick<RowReferences, 'cell'>) => `${cell.battery}>0`;
export const isContinuous = ({ rule }: RowReferences) => `${rule.duty}<>"bursts"`;
/** A fuse of its own: blank counts as yes, what is neither yes nor no as none that could protect. */
export const hasFuse = (fused: string) => `OR(${fused}="",${fused}="yes")`;
export const isFused = ({ cell }: RowReferences) => hasFuse(cell.fused);
/** The target counts in each run by itself; else from the source to the load. */
export const countsEach = ({ rule }: RowReferences) => `${rule.counts}=${text(COUNTS[1])}`;
export const isWatts = ({ cell }: RowReferences) => `${cell.kind}="W"`;

export const isCraft = ({ rule }: RowReferences) =>
  `OR(${rule.installed}="craft",${rule.installed}="engine space")`;

/** Milliohms that a run's chassis has beyond the usual when a fault is judged; 0 for a second wire. */
export const worseChassisOhms = (back: string) => `${BAD_CHASSIS_TIMES - 1}*N(${back})/1000`;

/** Conductors that count: two, or one where the chassis brings the current back. */
export const conductorsOf = (back: string) => `IF(ISNUMBER(${back}),1,2)`;

/** A feeder that is not in the list has this for its place; a run that is fed by none has 0. */
export const NOT_LISTED = -1;

/** A column summed over all that hangs below the run, itself left out. */
export const sumBelow = (
  { column, cell }: Pick<RowReferences, 'column' | 'cell'>,
  summed: string,
) => FEEDER_KEYS.map((key) => `SUMIF(${column[key]},${cell.place},${summed})`).join('+');

/** Some feeder above the run is the run itself. */
export const comesRound = ({ cell }: Pick<RowReferences, 'cell'>) =>
  `OR(${FEEDER_KEYS.map((key) => `${cell[key]}=${cell.place}`).join(',')})`;

/** A figure of each feeder above, added up; an error among them goes through. */
export const sumAbove = ({ cell }: Pick<RowReferences, 'cell'>, of: (place: string) => string) =>
  FEEDER_KEYS.map((key) => `IF(${cell[key]}>0,${of(cell[key])},0)`).join('+');

/** The same of one column. */
export const columnAbove = (row: RowReferences, key: ColumnKey) =>
  sumAbove(row, (place) => there(row.column[key], place));

/** Material and temperature of a run's wire. */
export const wireArguments = ({ rule }: RowReferences) => [
  rule.material,
  conductorTempInForce(rule),
];

/** The smallest standard fuse that carries so many amps and that a size may have. */
export const fuseFor = (row: RowReferences, amps: string, size: string) =>
  row.call(
    'FUSE_FOR',
    amps,
    size,
    ...heatArguments(row),
    row.rule.material,
    // The share of a continuous load stands in the amps already.
    'FALSE',
    fuseLimitInForce(row.rule),
  );

export const heatArguments = ({ rule }: RowReferences) => [
  rule.insulationC,
  ambientInForce(rule),
  rule.conductors,
  rule.installed,
];
