/**
 * What each run may lose, and the wire for it. The target counts from the source to the load, and the runs of a path share
 * it by their weights, length times the root of the amps, which for one path is the split of least copper. Sizes are
 * found from the source outwards, a step for each number of runs above, since what is left for a run depends on the wires
 * in use above it: a wire typed over above is answered by thicker suggestions below. Each step reads the columns of the
 * steps before it only, so that no column leads back to itself.
 */
import { MOST_DROP_SHARE, RELATIVE_SLACK } from '../../core/limits';
import { CRAFT_FUSE_MOST_SHARE, CRAFT_FUSE_SHARE_BELOW_V } from '../../core/tables/33cfr-183-455';
import { BAD_ENTRY, text } from '../plan/formula';
import { fuseLimitInForce } from '../station/house-rules';
import { RETURNS, USUAL_CHASSIS_MILLIOHMS } from '../station/parameters';
import type { RowReferences } from '../station/references';
import { DEPTHS, FEEDER_KEYS, type Depth } from '../station/schedule-keys';
import {
  columnAbove,
  countsEach,
  fuseFor,
  heatArguments,
  isContinuous,
  numberOr0,
  isCraft,
  over,
  sumAbove,
  there,
  whenReady,
  wireArguments,
  type RowFormula,
} from './row';

/** A size that carries every standard fuse of craft, to ask for the rating alone. */
const THICK = '4/0 AWG';

/** Just below the share that no target may reach. */
const WHOLE = MOST_DROP_SHARE * (1 - 1e-9);
/** More volts than any target: what loads that are not below a run are held to. */
const NO_LIMIT = '1E+9';
/** Keeps a division alive in rows whose answer does not count. */
const NEARLY_0 = '1E-12';

/** Targets and volts that a drop can be held against. */
export const isUsable = ({ cell }: RowReferences) =>
  `AND(ISNUMBER(${cell.runAmps}),${cell.runAmps}>=0,ISNUMBER(${cell.volts}),${cell.volts}>0,` +
  `ISNUMBER(${cell.target}),${cell.target}>0,${cell.target}<${MOST_DROP_SHARE},ISNUMBER(${cell.oneWay}),${cell.oneWay}>=0)`;

/** 1 for the rows that the run feeds, itself among them. */
const isBelow = ({ cell, column }: RowReferences) =>
  `(${(['place', ...FEEDER_KEYS] as const).map((key) => `(${column[key]}=${cell.place})`).join('+')})`;

/** The share of the source volts that a run with so many above it may lose, its joints among it. */
function room(depth: Depth): RowFormula {
  return (row) => {
    const { cell, column } = row;
    // Wires above, each found a step nearer to the source.
    const above = FEEDER_KEYS.slice(0, depth).map((key, index) => {
      const place = cell[key];
      const wire = there(column[`wire${(depth - 1 - index) as Depth}`], place);
      return { volts: `${wire}*${there(column.once, place)}`, ohms: wire };
    });
    const lost = above.length === 0 ? '0' : above.map(({ volts }) => volts).join('+');
    const ohms = above.length === 0 ? '0' : above.map(({ ohms: wire }) => wire).join('+');
    const before = depth === 0 ? '0' : there(column.pathWeight, cell.place1);
    const left = `(${column.reach}-(${lost})-${column.alone}*(${ohms}))`;
    const claim = `(${column.pathWeight}-(${before}))`;
    const perOhm = `${left}/((${cell.once}+${column.alone}+${NEARLY_0})*(${claim}+(${claim}=0)))`;
    // Both products are exact: one factor of each is 0 or 1.
    const least = `SUMPRODUCT(MIN(${isBelow(row)}*(${perOhm})+(1-${isBelow(row)})*${NO_LIMIT}))`;
    // Most runs feed no other: theirs is the one load.
    const alone = `(${cell.reach}-(${lost})-${cell.alone}*(${ohms}))/((${cell.once}+${cell.alone}+${NEARLY_0})*${cell.weight})`;
    const leastOfAll = `IF(COUNTIF(${column.place1},${cell.place})=0,${alone},${least})`;
    const share = `(${cell.weight}*${leastOfAll}+${cell.jointOhms})*${cell.runAmps}/${cell.volts}`;
    // Where the runs above leave nothing for the wire, its own joints are no room either.
    const shared = `IF(${cell.weight}=0,${WHOLE},IF(${leastOfAll}<=0,0,MIN(${WHOLE},${share})))`;
    return whenReady(
      row,
      `IF(${cell.depth}=${depth},IF(ISERROR(${cell.runAmps}),${cell.runAmps},IF(${isUsable(row)},IF(${countsEach(row)},${cell.target},${shared}),${BAD_ENTRY})),"")`,
    );
  };
}

const gaugeArguments = (row: RowReferences, share: string): readonly string[] => {
  const { cell, rule } = row;
  return [
    cell.runAmps,
    cell.oneWay,
    rule.unit,
    cell.volts,
    share,
    ...wireArguments(row),
    cell.joints,
    ...heatArguments(row),
    isContinuous(row),
    rule.series,
    fuseLimitInForce(rule),
    cell.back,
  ];
};

/** A room that is nothing has no size. */
const where = (share: string, expression: string) =>
  `IF(ISERROR(${share}),${share},IF(${share}<=0,NA(),${expression}))`;

/** The thinnest wire of the runs with so many above them. */
const thinnest =
  (depth: Depth): RowFormula =>
  (row) => {
    const share = row.cell[`room${depth}`];
    return whenReady(
      row,
      `IF(${row.cell.depth}=${depth},${where(share, row.call('MINGAUGE', ...gaugeArguments(row, share)))},"")`,
    );
  };

/** Ohms of the wire in use, without joints and chassis. */
const wireOhms =
  (depth: Depth): RowFormula =>
  (row) => {
    const { cell, rule } = row;
    const inUse = `IF(${cell.ownSize}="",${cell[`size${depth}`]},${cell.ownSize})`;
    return whenReady(
      row,
      `IF(${cell.depth}=${depth},${row.call('RUN_OHMS', cell.oneWay, rule.unit, inUse, ...wireArguments(row), '', cell.back)}-N(${cell.back})/1000,"")`,
    );
  };

/** The figure of the step that the run belongs to. */
const step = ({ cell }: RowReferences, of: 'room' | 'size' | 'wire') =>
  DEPTHS.reduceRight(
    (further, depth) => `IF(${cell.depth}=${depth},${cell[`${of}${depth}`]},${further})`,
    'NA()',
  );

const steps = {
  ...(Object.fromEntries(
    DEPTHS.flatMap((depth) => [
      [`room${depth}`, room(depth)],
      [`size${depth}`, thinnest(depth)],
      [`wire${depth}`, wireOhms(depth)],
    ]),
  ) as Record<`${'room' | 'size' | 'wire'}${Depth}`, RowFormula>),
};

export const SIZING_FORMULAS = {
  ...steps,
  // A row that is refused for its chassis is computed with a second wire.
  back: (row) => {
    const { cell, rule } = row;
    const [wire, chassis] = RETURNS.map(text);
    const house = `IF(ISNUMBER(${rule.chassis}),IF(${rule.chassis}>0,${rule.chassis},${BAD_ENTRY}),IF(${rule.chassis}="",${USUAL_CHASSIS_MILLIOHMS},${BAD_ENTRY}))`;
    const own = `IF(ISNUMBER(${cell.returns}),IF(${cell.returns}>0,${cell.returns},${BAD_ENTRY}),IF(${cell.returns}=${chassis!},${house},IF(${cell.returns}=${wire!},"",${BAD_ENTRY})))`;
    return `IF(${isCraft(row)},"",IF(${cell.returns}="",IF(${rule.returns}=${chassis!},${house},""),${own}))`;
  },
  jointOhms: ({ cell }) =>
    `IF(ISNUMBER(${cell.joints}),MAX(0,${cell.joints})/1000,0)+IF(ISNUMBER(${cell.back}),${cell.back}/1000,0)`,
  weight: ({ cell }) =>
    `IF(AND(ISNUMBER(${cell.oneWay}),ISNUMBER(${cell.runAmps})),MIN(${NO_LIMIT},MAX(0,${cell.oneWay}))*SQRT(MIN(${NO_LIMIT},MAX(0,${cell.runAmps})))*IF(ISNUMBER(${cell.back}),0.5,1),0)`,
  pathWeight: (row) => `${row.cell.weight}+${columnAbove(row, 'weight')}`,
  // What all wires on the path of a load may lose together, its own target less what the joints lose.
  reach: (row) => {
    const { cell, column } = row;
    const joints = (factor: (place: string) => string, own: string) =>
      `${cell.jointOhms}*${own}+${sumAbove(row, (place) => `${there(column.jointOhms, place)}*${factor(place)}`)}`;
    const lost = joints((place) => there(column.once, place), cell.once);
    const alone = `${cell.alone}*(${joints(() => '1', '1')})`;
    const isLoad = `AND(${numberOr0(cell.ownAmps)}>0,ISNUMBER(${cell.volts}),ISNUMBER(${cell.target}))`;
    return `IF(${isLoad},${cell.volts}*${cell.target}-(${lost})-${alone},${NO_LIMIT})`;
  },
  room: (row) => whenReady(row, step(row, 'room')),
  suggested: (row) => whenReady(row, step(row, 'size')),
  setBy: (row) =>
    whenReady(
      row,
      where(row.cell.room, row.call('GAUGE_LIMIT', ...gaugeArguments(row, row.cell.room))),
    ),
  size: (row) =>
    whenReady(row, `IF(${row.cell.ownSize}="",${row.cell.suggested},${row.cell.ownSize})`),
  ohms: (row) => whenReady(row, `${step(row, 'wire')}+${row.cell.jointOhms}`),
  dropVolts: (row) => whenReady(row, `${row.cell.runAmps}*${row.cell.ohms}`),
  dropShare: (row) => whenReady(row, `${row.cell.dropVolts}/${row.cell.volts}`),
  pathOhms: (row) => whenReady(row, `${row.cell.ohms}+${columnAbove(row, 'ohms')}`),
  pathVolts: (row) => {
    const { cell, column } = row;
    const above = sumAbove(
      row,
      (place) => `${there(column.ohms, place)}*${there(column.once, place)}`,
    );
    return whenReady(row, `${cell.ohms}*${cell.once}+${above}+${cell.alone}*${cell.pathOhms}`);
  },
  pathDrop: (row) => whenReady(row, `${row.cell.pathVolts}/${row.cell.volts}`),
  ampacity: (row) =>
    whenReady(row, row.call('AMPACITY', row.cell.size, ...heatArguments(row), row.rule.material)),
  // In craft a fuse may stand above the ampacity.
  fitting: (row) => {
    const { cell } = row;
    const standard = fuseFor(row, cell.fuseAmps, text(THICK));
    const most = `${CRAFT_FUSE_MOST_SHARE}*${cell.ampacity}`;
    const inCraft = `IFERROR(IF(${standard}<=${most}*(1+${RELATIVE_SLACK}),${standard},NA()),NA())`;
    const mayExceed = `AND(${isCraft(row)},${fuseLimitInForce(row.rule)}="none",ISNUMBER(${cell.ampacity}),${cell.volts}<${CRAFT_FUSE_SHARE_BELOW_V})`;
    const fuse = fuseFor(row, cell.fuseAmps, cell.size);
    return whenReady(
      row,
      `IF(${mayExceed},IF(${over(cell.runAmps, cell.ampacity)},NA(),IFERROR(${fuse},${inCraft})),${fuse})`,
    );
  },
  fuse: (row) => whenReady(row, `IF(${row.cell.fused}="no","none",${row.cell.fitting})`),
  heat: (row) => whenReady(row, `${row.cell.runAmps}*${row.cell.dropVolts}`),
} as const satisfies Record<string, RowFormula>;
