/**
 * The Workings columns that solve a tree of runs with SUMIF and look-ups: currents, and volts in rounds for loads of steady
 * power. They reach four levels up and down from any run.
 */
import { RELATIVE_SLACK } from '../../core/limits';
import { BAD_ENTRY } from '../plan/formula';
import { comesRound, sumBelow } from '../schedule/row';
import { FEEDER_KEYS } from '../station/schedule-keys';
import {
  AHEAD_AFTER,
  CHARGES,
  LAST_ROUND,
  ROUNDS,
  SETTLED_V,
  type AheadRound,
  type Charge,
  type NativeFormula,
  type NativeReferences,
  type Round,
  type WorkKey,
} from './references';

const places = ({ cell }: NativeReferences) => FEEDER_KEYS.map((key) => cell[key]);

/** A column summed over the feeders above; what is no number counts as 0. */
const above = (row: NativeReferences, column: string) =>
  places(row)
    .map((place) => `IF(${place}>0,IFERROR(INDEX(${column},${place})+0,0),0)`)
    .join('+');

/** A column summed over the run itself and all that hangs below it. */
const fed = (row: NativeReferences, own: string, column: string) =>
  `${own}+${sumBelow(row, column)}`;

/** The figure of the run nearest the source on this one's path. */
const atRoot = (row: NativeReferences, column: string) => `INDEX(${column},${row.work.root})`;

const isTwice = ({ cell, column }: NativeReferences) =>
  `IF(${cell.run}="",FALSE,SUMPRODUCT(--(${column.run}=${cell.run}))>1)`;

/** Volts that a run can start from. */
const isSource = (volts: string) => `IFERROR(AND(ISNUMBER(${volts}),${volts}>0),FALSE)`;

const sourceKey = { full: 'fullSource', low: 'lowSource' } as const satisfies Record<
  Charge,
  string
>;

type Columns = Partial<Record<WorkKey, NativeFormula>>;

const merged = (parts: readonly Columns[]): Columns =>
  Object.fromEntries(parts.flatMap((part) => Object.entries(part)));

/** Where each run stands in the tree, and what is not known of it. */
const STANDING: Columns = {
  root: ({ cell }) => cell.root,
  // 1 where the run has no place: a name or a feeder that does not hold, or a loop.
  misplaced: (row) => `IF(OR(${isTwice(row)},${row.cell.place1}<0,${comesRound(row)}),1,0)`,
  startDrop: ({ cell }) => `IFERROR(${cell.ohms}*${cell.once},0)`,
  load: ({ cell }) => `IF(ISNUMBER(${cell.ownAmps}),${cell.ownAmps},0)`,
  unknown: (row) => {
    const { cell, column } = row;
    const unread = `IF(ISERROR(${cell.ownAmps}),TRUE,IF(${cell.ownAmps}="",FALSE,NOT(AND(ISNUMBER(${cell.ownAmps}),${cell.ownAmps}>=0))))`;
    const ambiguous = `IF(${isTwice(row)},SUMPRODUCT(--(${column.feeder}=${cell.run}))>0,FALSE)`;
    return `IF(OR(${unread},${ambiguous}),1,0)`;
  },
};

const isMisplaced = (row: NativeReferences) =>
  `${row.work.misplaced}+${above(row, row.workColumn.misplaced)}>0`;

const CURRENTS: Columns = {
  // What FEED_AMPS answers.
  amps: (row) => {
    const { cell, work, workColumn } = row;
    return (
      `IF(${cell.run}="","",IF(ISERROR(${cell.ownAmps}),${cell.ownAmps},` +
      `IF(OR(${isMisplaced(row)},${fed(row, work.unknown, workColumn.unknown)}>0),${BAD_ENTRY},${fed(row, work.load, workColumn.load)})))`
    );
  },
  unknownVolts: (row) => {
    const { cell, work, column } = row;
    const kindOk = `OR(${cell.kind}="",${cell.kind}="A",${cell.kind}="W")`;
    const ohmsOk = `OR(ISNUMBER(${cell.ohms}),IFERROR(${work.amps}=0,FALSE))`;
    const sourceOk = `ISNUMBER(${atRoot(row, column.fullSource)})`;
    return `IF(AND(${work.unknown}=0,${kindOk},${ohmsOk},${sourceOk}),0,1)`;
  },
  branchUnknown: ({ work, workColumn }) =>
    `SUMIF(${workColumn.root},${work.root},${workColumn.unknownVolts})`,
};

/** What a round starts from. */
const before = (charge: Charge, number: Round): WorkKey => {
  const last = (number - 1) as 0 | Round;
  const ahead = AHEAD_AFTER.find((round) => round === last);
  return ahead === undefined ? `${charge}${last}volts` : `${charge}${ahead}ahead`;
};

/**
 * One fixed-point round: currents at the volts of the round before, summed up the tree, and the volts they leave. A
 * branch without loads in watts needs none.
 */
function round(charge: Charge, number: Round): Columns {
  const key = <Part extends 'amps' | 'drop' | 'volts'>(part: Part) =>
    `${charge}${number}${part}` as const;
  const start = before(charge, number);
  const needed = ({ work }: NativeReferences, otherwise: string, expression: string) =>
    `IF(${work[`${charge}Rounds`]}=0,${otherwise},${expression})`;
  return {
    [key('amps')]: (row: NativeReferences) => {
      const { cell, work } = row;
      return needed(
        row,
        '0',
        `IF(AND(ISNUMBER(${cell.onceLoad}),${work[`${charge}Served`]}=1),IF(${cell.kind}="W",IF(${work[start]}>0,${cell.onceLoad}/${work[start]},0),${cell.onceLoad}),0)`,
      );
    },
    [key('drop')]: (row: NativeReferences) =>
      needed(
        row,
        '0',
        `IF(ISNUMBER(${row.cell.ohms}),${row.cell.ohms},0)*(${fed(row, row.work[key('amps')], row.workColumn[key('amps')])})`,
      ),
    [key('volts')]: (row: NativeReferences) =>
      needed(
        row,
        row.work[start],
        `IFERROR(${atRoot(row, row.column[sourceKey[charge]])}+0,0)-${row.work[key('drop')]}-(${above(row, row.workColumn[key('drop')])})`,
      ),
  };
}

/**
 * Aitken's step: moves that shrink by a steady share come to rest at a point that three rounds tell. None where they do
 * not shrink like that.
 */
function ahead(charge: Charge, number: AheadRound): Columns {
  return {
    [`${charge}${number}ahead`]: ({ work }: NativeReferences) => {
      const volts = work[`${charge}${number}volts`];
      const middle = work[`${charge}${(number - 1) as Round}volts`];
      const first = work[`${charge}${(number - 2) as Round}volts`];
      const [moved, movedBefore] = [`(${volts}-${middle})`, `(${middle}-${first})`];
      return (
        `IF(AND(${moved}*${movedBefore}>0,ABS${moved}<${STEADY_SHARE}*ABS${movedBefore}),` +
        `${volts}+${moved}^2/(${movedBefore}-${moved}),${volts})`
      );
    },
  };
}

/** Moves that shrink by less than this from round to round say too little of where they lead. */
const STEADY_SHARE = 0.95;

/**
 * 1 where the volts may lie further than SETTLED_V from where the rounds lead: by the last move, or by the sum of all that
 * would follow if they go on shrinking as they did.
 */
function unsettled(charge: Charge): Columns {
  return {
    [`${charge}Unsettled`]: ({ work }: NativeReferences) => {
      const volts = work[`${charge}${LAST_ROUND}volts`];
      const middle = work[`${charge}${(LAST_ROUND - 1) as Round}volts`];
      const first = work[before(charge, (LAST_ROUND - 1) as Round)];
      const [moved, movedBefore] = [`ABS(${volts}-${middle})`, `ABS(${middle}-${first})`];
      const rest = `IF(${movedBefore}>${moved},${moved}^2/(${movedBefore}-${moved})>${SETTLED_V},${moved}>0.000000001)`;
      return `IF(${work[`${charge}Rounds`]}=0,0,IF(OR(${volts}<0,${moved}>${SETTLED_V},${rest}),1,0))`;
    },
  };
}

/** The volts of a branch are not settled, as a formula. */
export function branchUnsettled({ work, workColumn }: NativeReferences): string {
  return CHARGES.map(
    (charge) => `SUMIF(${workColumn.root},${work.root},${workColumn[`${charge}Unsettled`]})`,
  ).join('+');
}

/** Volts at one state of charge, as FEED_VOLTS answers. */
function volts(charge: Charge): Columns {
  const solved = `${charge}${LAST_ROUND}volts` as const;
  return {
    // 0 where the load could not be served even if it were alone on its path; the others are solved without it.
    [`${charge}Served`]: (row: NativeReferences) => {
      const { cell, column } = row;
      const root = atRoot(row, column[sourceKey[charge]]);
      const path = `(IF(ISNUMBER(${cell.ohms}),${cell.ohms},0)+${above(row, column.ohms)})`;
      const demand = `${cell.onceLoad}*${path}`;
      return (
        `IF(IFERROR(IF(${cell.kind}="W",4*${demand}>${root}*${root}*(1+${RELATIVE_SLACK}),` +
        `${demand}>${root}),FALSE),0,1)`
      );
    },
    // 0 where the currents of the whole branch are known from the start.
    [`${charge}Rounds`]: ({ column, work, workColumn }: NativeReferences) =>
      `SUMPRODUCT((${workColumn.root}=${work.root})*((${column.kind}="W")+(${workColumn[`${charge}Served`]}=0)))`,
    [`${charge}0volts`]: (row: NativeReferences) =>
      `IFERROR(${atRoot(row, row.column[sourceKey[charge]])}+0,0)-IFERROR(${row.cell.ohms}*${row.cell.once},0)-(${above(row, row.workColumn.startDrop)})`,
    ...merged(
      ROUNDS.flatMap((number) => [
        round(charge, number),
        ...AHEAD_AFTER.filter((after) => after === number).map((after) => ahead(charge, after)),
      ]),
    ),
    ...unsettled(charge),
    [`${charge}Volts`]: (row: NativeReferences) => {
      const { cell, work } = row;
      const source = cell[sourceKey[charge]];
      const root = atRoot(row, row.column[sourceKey[charge]]);
      const settled = [source, cell.ohms, cell.onceLoad]
        .map((of) => `IF(ISERROR(${of}),${of},`)
        .join('');
      return (
        `IF(${cell.run}="","",${settled}IF(OR(${source}="",${cell.ohms}=""),"",` +
        `IF(OR(${isMisplaced(row)},${work.branchUnknown}>0,NOT(${isSource(source)}),NOT(${isSource(root)})),${BAD_ENTRY},` +
        `IF(OR(${work[`${charge}Served`]}=0,${work[solved]}<0),NA(),${work[solved]})))))))`
      );
    },
  };
}

/** Every column that the tree takes, in an order in which each needs only those before it. */
export const TREE_WORKINGS: Readonly<Columns> = {
  ...STANDING,
  ...CURRENTS,
  ...merged(CHARGES.map(volts)),
};
