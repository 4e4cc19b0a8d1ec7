/** What each load takes, and what hangs on it: amps to size for, amps that count at once, the rating of the fuse. */
import { fuseShare } from '../../core/fuse';
import { BAD_ENTRY } from '../plan/formula';
import { isInDeepTree } from './places';
import {
  countsEach,
  isContinuous,
  isFused,
  isPanel,
  isWatts,
  numberOr0,
  sumAbove,
  sumBelow,
  there,
  whenReady,
  type RowFormula,
} from './row';
import type { RowReferences } from '../station/references';

/** Share that the volts assumed for a load in watts lie lower than worked out; ours. */
const RESERVE = 0.01;

/** A load in watts draws so much more as its own current makes the battery sag; ours. */
const ALONE_MORE = 1.15;

/**
 * The source's figure for all that hangs on it, or the rule's; nothing where that cell is blank, which a bare reference
 * would make 0.
 */
const usual = (row: RowReferences, isOfSource: string, source: string, rule: string) =>
  `IF(${row.cell.oneWay}="","",IF(${isOfSource},IF(${source}="","",${source}),IF(${rule}="","",${rule})))`;

export const LOAD_FORMULAS = {
  volts: (row) => usual(row, `${row.cell.sourceKind}<>""`, row.supply.volts, row.rule.volts),
  target: (row) => usual(row, isPanel(row), row.supply.panelTarget, row.rule.target),
  joints: (row) =>
    `IF(${row.cell.oneWay}="","",IF(${isFused(row)},${numberOr0(row.rule.joints)},0))`,
  feeder: (row) => `IF(${row.cell.ownSource}>0,"",TRIM(${row.cell.fedFrom}))`,
  // Watts of an output become those of the input.
  ownLoad: (row) => {
    const { cell, column } = row;
    // A share that cannot be used spoils the load, so that no run above it is judged by a wrong one.
    const isShare = (share: string, least: string) =>
      `IF(${share}="",TRUE,IF(ISNUMBER(${share}),AND(${least},${share}<=1),FALSE))`;
    const sound = `AND(${isShare(cell.atOnce, `${cell.atOnce}>=0`)},${isShare(cell.efficiency, `${cell.efficiency}>0`)})`;
    const input = `IF(AND(${isWatts(row)},${cell.efficiency}<>""),${cell.draw}/${cell.efficiency},${cell.draw})`;
    return (
      `IF(${cell.draw}<>"",IF(${sound},${input},${BAD_ENTRY}),IF(${cell.oneWay}="","",` +
      `IF(${cell.run}="","",IF(SUMPRODUCT(--(${column.feeder}=TRIM(${cell.run})))>0,0,""))))`
    );
  },
  onceLoad: ({ cell }) =>
    `IF(OR(${cell.ownLoad}="",${cell.atOnce}=""),${cell.ownLoad},${cell.ownLoad}*${cell.atOnce})`,
  houseAmps: (row) => {
    const { cell } = row;
    return `IF(${cell.ownLoad}="","",IF(${isWatts(row)},${cell.ownLoad}/${cell.volts},${cell.ownLoad}))`;
  },
  houseOnce: ({ cell }) =>
    `IF(ISNUMBER(${cell.houseAmps}),MAX(0,${cell.houseAmps})*IF(ISNUMBER(${cell.atOnce}),${cell.atOnce},1),0)`,
  // A load in watts draws the most where its volts are fewest: at its minimum, or else where the battery is low and the
  // whole target is lost, with a little in reserve for what the battery then sags more.
  assumedVolts: (row) => {
    const { cell, supply } = row;
    // What the battery sags more while a load draws that does not count for the others.
    const sagging = `${supply.lowSagging}-${ALONE_MORE}*(${cell.houseAmps}-${cell.houseOnce})*${cell.volts}/(${supply.lowSagging}-${cell.volts}*${cell.target})*${supply.bankMilliohms}/1000`;
    const floor = `${cell.volts}/2`;
    // Where every run may lose the target by itself, the runs above lose theirs too.
    const targets = `(${cell.target}+IF(${countsEach(row)},${sumAbove(row, (place) => numberOr0(there(row.column.target, place)))},0))`;
    const least = `MAX(${floor},IF(${cell.battery}>0,${sagging},${cell.volts})-${cell.volts}*${targets})`;
    // At more than the source volts it draws less; its fuse and wire are for what it takes at those.
    return `IF(${isWatts(row)},MIN(${cell.volts},IF(ISNUMBER(${cell.leastVolts}),${cell.leastVolts},(${least})*${1 - RESERVE})),"")`;
  },
  ownAmps: (row) => {
    const { cell } = row;
    return `IF(${cell.ownLoad}="","",IF(${isWatts(row)},${cell.ownLoad}/${cell.assumedVolts},${cell.ownLoad}))`;
  },
  onceOwn: ({ cell }) => {
    const share = `IF(ISNUMBER(${cell.atOnce}),${cell.atOnce},1)`;
    return `IF(ISNUMBER(${cell.ownAmps}),MAX(0,${cell.ownAmps})*${share},0)`;
  },
  alone: ({ cell }) => `IF(ISNUMBER(${cell.ownAmps}),MAX(0,${cell.ownAmps})-${cell.onceOwn},0)`,
  once: (row) => `${row.cell.onceOwn}+${sumBelow(row, row.column.onceOwn)}`,
  // A tree that reaches deeper than the columns follow has no figures that could be trusted, in any of its rows.
  runAmps: (row) =>
    whenReady(
      row,
      `IF(${row.cell.run}="",${row.cell.ownAmps},IF(${isInDeepTree(row)},${BAD_ENTRY},${there(row.feed.amps, row.cell.place)}))`,
    ),
  // What the load may take for hours at the usual volts, and all that it may ever take.
  fuseAmps: (row) => {
    const { cell, column } = row;
    const house = `${numberOr0(cell.houseAmps)}+${sumBelow(row, column.houseAmps)}`;
    const share = `IF(${isContinuous(row)},${fuseShare(true)},${fuseShare(false)})`;
    return whenReady(row, `MAX(${share}*(${house}),${cell.runAmps})`);
  },
  // A row that cannot be computed says so itself; it must not take the battery's figures with it.
  // What charges the battery is no load of it.
  batteryAmps: ({ cell, supply }) =>
    `IF(AND(OR(${cell.endBattery}=0,${cell.endBattery}<>${cell.battery}),OR(${cell.battery}>0,AND(${cell.sourceKind}="power supply",${cell.volts}=${supply.volts})),${cell.place1}=0,ISNUMBER(${cell.runAmps})),${cell.once},0)`,
} as const satisfies Record<string, RowFormula>;
