/** The volts that arrive, and whether they are enough. */
import { BAD_ENTRY } from '../plan/formula';
import type { RowReferences } from '../station/references';
import { FEEDER_KEYS, type ColumnKey } from '../station/schedule-keys';
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

/** Amps that the start of one load at a place, or of one below it, adds at most. */
const startsAt = ({ column }: RowReferences, place: string) =>
  `MAX(${there(column.surgeAdds, place)},${there(column.surgeBelow, place)})`;

/** The load asks for its minimum volts, and some load of the schedule surges. */
const isHeldAtStart = ({ cell, column }: RowReferences) =>
  `AND(ISNUMBER(${cell.leastVolts}),MAX(${column.surgeAdds})>0,ISNUMBER(${cell.lowVolts}))`;

/** It has enough while nothing starts, and too few volts when a load does. */
export const isShortAtStart = ({ cell }: RowReferences) =>
  `IF(AND(ISNUMBER(${cell.surgeVolts}),${cell.shortLow}=0),${cell.surgeVolts}<${cell.leastVolts},FALSE)`;

/** Where the way of a starting load may run together with this one's: the volts that it takes there, and its place. */
function shared(row: RowReferences): readonly { readonly volts: string; readonly by: string }[] {
  const { cell, column, supply } = row;
  const inside = `IF(${isOnBattery(row)},${supply.bankMilliohms}/1000,0)`;
  const own = `IF(ISNUMBER(${cell.surge}),MAX(0,${cell.surge}-${cell.ownAmps}),0)`;
  const below = (place: string) => FEEDER_KEYS.map((key) => `(${column[key]}=${place})`).join('+');
  const placeOf = (rows: string, amps: string) =>
    `SUMPRODUCT(MAX((${rows})*(${column.surgeAdds}=${amps})*${column.place}))`;
  const ofBattery = `(${column.battery}=${cell.battery})`;
  const most = `SUMPRODUCT(MAX(${ofBattery}*${column.surgeAdds}))`;
  return [
    {
      volts: `MAX(${own},${cell.surgeBelow})*(${inside}+${cell.pathOhms})`,
      by: `IF(${own}>=${cell.surgeBelow},${cell.place},${placeOf(below(cell.place), cell.surgeBelow)})`,
    },
    ...FEEDER_KEYS.map((key) => {
      const place = cell[key];
      return {
        volts: `IF(${place}>0,${startsAt(row, place)}*(${inside}+${there(column.pathOhms, place)}),0)`,
        by: placeOf(`(${column.place}=${place})+${below(place)}`, startsAt(row, place)),
      };
    }),
    {
      volts: `IF(${isOnBattery(row)},${most}*${inside},0)`,
      by: placeOf(ofBattery, most),
    },
  ];
}

/**
 * 1 where a load is under its minimum volts or cannot be served, 0 where it works or asks for nothing. One of which no
 * source can be told counts at none.
 */
function shortOf({ leastVolts, depth }: RowReferences['cell'], volts: string): string {
  return `IF(OR(${leastVolts}="",${depth}<0),0,IFERROR(IF(${volts}="",0,IF(${volts}<${leastVolts},1,0)),1))`;
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
  shortFull: ({ cell }) => shortOf(cell, cell.loadVolts),
  shortLow: ({ cell }) => shortOf(cell, cell.lowVolts),
  // A load that is never on with the others does not start beside them either.
  surgeAdds: ({ cell }) =>
    `IF(AND(ISNUMBER(${cell.surge}),ISNUMBER(${cell.ownAmps})),IF(AND(ISNUMBER(${cell.atOnce}),${cell.atOnce}=0),0,MAX(0,${cell.surge}-${cell.onceOwn})),0)`,
  surgeBelow: ({ cell, column }) => {
    const below = FEEDER_KEYS.map((key) => `(${column[key]}=${cell.place})`).join('+');
    return `IF(MAX(${column.surgeAdds})=0,0,IF(COUNTIF(${column.place1},${cell.place})=0,0,SUMPRODUCT(MAX((${below})*${column.surgeAdds}))))`;
  },
  // One load starts at a time. What it takes from this one is lost where their ways run together: in the source, and in
  // the runs that both hang on, which are the nearer to the source the less they share.
  surgeSag: (row) =>
    `IF(${isHeldAtStart(row)},MAX(${shared(row)
      .map(({ volts }) => volts)
      .join(',')}),0)`,
  surgeVolts: (row) => {
    const { cell, supply } = row;
    // Loads in watts draw more as their volts sink, by so much at most as the way loses already.
    const source = `IF(${isOnBattery(row)},${supply.lowRest},${cell.volts})`;
    const more = `IF(COUNTIF(${row.column.kind},"W")=0,1,1/MAX(0.5,1-(${source}-${cell.lowVolts})/${cell.lowVolts}))`;
    return `IF(${cell.surgeSag}>0,${cell.lowVolts}-${cell.surgeSag}*${more},"")`;
  },
  startsBy: (row) => {
    const by = shared(row).reduceRight(
      (further, way) => `IF(${way.volts}>=${row.cell.surgeSag},${way.by},${further})`,
      '0',
    );
    return `IF(${isShortAtStart(row)},${by},0)`;
  },
  fewer: (row) => {
    const { cell } = row;
    const isFewer = `IF(ISNUMBER(${cell.lowVolts}),${cell.lowVolts}<${cell.assumedVolts}*(1-${RELATIVE_SLACK}),FALSE)`;
    return `IF(AND(${isWatts(row)},${cell.leastVolts}="",ISNUMBER(${cell.assumedVolts})),IF(${isFewer},1,0),0)`;
  },
  // Nothing where the drop holds; the target counts to a load, or in every run.
  heldTo: ({ rule }) => rule.counts,
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
