/** What the Wire list says, as formulas; they are the same with and without the add-in. */
import { LENGTH_UNITS, METRES_PER } from '../../core/length';
import { MATERIAL_CONSTANTS, MATERIALS } from '../../core/tables/materials';
import { text } from '../plan/formula';
import { areaAddress } from '../plan/area';
import { columnReferences, ROW, runsFollowed } from '../schedule/layout';
import { doubtOf } from '../schedule/doubt';
import { conductorsOf } from '../schedule/row';
import type { Layout } from '../station/layout';
import type { ColumnKey } from '../station/schedule-keys';
import { WIRE_CELL_KEYS, type WireCellKey } from '../station/wire-list';
import { USUAL_SLACK } from './cells';
import { cuttingFormulas, GRAINS, leastSpools, MOST_ON_SPOOL } from './cutting';
import {
  LINES,
  wireCellArea,
  type BuyKey,
  type RunKey,
  type WireHeadKey,
  type WireReferences,
  type WireWorkingKey,
} from './layout';

/** The box that a pen ticks. */
export const CUT_BOX = '☐';
/** Where nobody has named a colour. */
export const ANY_COLOUR = 'any';

/** Why a run is missing from the lines. */
export const WIRE_WRONG = {
  noSize: 'no size; fix its row of the schedule',
  noLength: 'no length that can be used',
  notPriced: 'add its size to the free rows of the prices',
  badHead: 'slack, tail or length unit cannot be used',
  noSpool: 'no spool length that can be used',
  tooLong: 'longer than its spool; take a longer one',
} as const;
export const LEFT_OUT = 'NOT COUNTED ABOVE: ';

/** What a line lacks. */
export const LINE_LACKS = {
  price: 'no price: not in the cost; ',
  mass: 'no metal area: not in the mass; ',
} as const;

interface Pointers extends WireReferences {
  readonly layout: Layout;
  readonly schedule: Readonly<Record<ColumnKey, string>>;
  readonly typed: Readonly<Record<WireCellKey, string>>;
}

function pointers(layout: Layout, references: WireReferences): Pointers {
  return {
    ...references,
    layout,
    schedule: columnReferences(layout, true),
    typed: Object.fromEntries(
      WIRE_CELL_KEYS.map((key) => [key, areaAddress(wireCellArea(key), 'both')]),
    ) as Record<WireCellKey, string>,
  };
}

const priced = ({ price }: Pointers, key: keyof WireReferences['price'], place: string) =>
  `INDEX(${price[key]},${place})`;

const isPositive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}>0,FALSE)`;

function ofRuns(points: Pointers) {
  const { schedule, cell, number, head, price, run, typed } = points;
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${number})`;
  const size = there('size');
  const oneWay = there('oneWay');
  const isNamed = `LEN(TRIM(${there('run')}))>0`;
  const own = priced(points, 'spool', cell.place);
  const spool = `IF(${own}="",${head.spool},${own})`;
  const colour = (key: 'plus' | 'minus') =>
    `IF(LEN(TRIM(${run[key]}))>0,TRIM(${run[key]}),TRIM(${typed[key]}))`;
  const wrong: readonly (readonly [string, string])[] = [
    [`IFERROR(LEN(${size})=0,TRUE)`, WIRE_WRONG.noSize],
    [`NOT(ISNUMBER(${oneWay}))`, WIRE_WRONG.noLength],
    [
      `NOT(AND(ISNUMBER(${head.slack}),ISNUMBER(${head.tail}),ISNUMBER(${head.metres})))`,
      WIRE_WRONG.badHead,
    ],
    [`${cell.place}=0`, WIRE_WRONG.notPriced],
    [`${cell.spoolGrains}=0`, WIRE_WRONG.noSpool],
    [`${cell.grains}>${cell.spoolGrains}`, WIRE_WRONG.tooLong],
  ];
  return {
    there: `IF(${number}>ROWS(${schedule.level}),0,IF(ISERROR(${there('level')}),1,IF(OR(LEN(${there('level')})>0,${isNamed}),1,0)))`,
    place: `IF(${cell.there}=0,0,IFERROR(IF(LEN(${size})=0,0,IFERROR(MATCH(${size},${price.size},0),MATCH(${size}&" AWG",${price.size},0))),0))`,
    grains: `IF(${cell.there}=0,0,IF(AND(ISNUMBER(${oneWay}),ISNUMBER(${head.slack}),ISNUMBER(${head.tail})),-INT(-ROUND((N(${oneWay})*(1+N(${head.slack}))+2*N(${head.tail}))*${GRAINS},4)),0))`,
    spoolGrains: `IF(${cell.place}=0,0,IF(${isPositive(spool)},IF(${spool}>${MOST_ON_SPOOL},0,INT(ROUND(${spool}*${GRAINS},4))),0))`,
    plusIs: colour('plus'),
    minusIs: colour('minus'),
    wrong: `IF(${cell.there}=0,"",${wrong.reduceRight((further, [test, why]) => `IF(${test},${text(why)},${further})`, '""')})`,
    // Conductors of a run that is cut; 0 for one that is not.
    good: `IF(${cell.there}=0,0,IF(LEN(${cell.wrong})>0,0,${conductorsOf(there('back'))}))`,
  };
}

function ofLines(points: Pointers) {
  const { cell, column, lineNumber, head } = points;
  const piece = `MATCH(${lineNumber},${column.nth},0)`;
  const spoolGrains = `INDEX(${column.spoolGrains},${cell.lineRun})`;
  const isPlus = `INDEX(${column.ofRun},${piece})*2>${piece}`;
  return {
    lineRun: `IF(${lineNumber}>${head.lines},0,INDEX(${column.ofRun},${piece}))`,
    linePlace: `IF(${cell.lineRun}=0,0,INDEX(${column.place},${cell.lineRun}))`,
    lineColour: `IF(${cell.lineRun}=0,"",IF(${isPlus},INDEX(${column.plusIs},${cell.lineRun}),INDEX(${column.minusIs},${cell.lineRun})))`,
    least: `IF(${cell.lineRun}=0,0,${leastSpools(points, spoolGrains)})`,
  };
}

export function wireWorkingFormulas(
  layout: Layout,
  references: WireReferences,
): Readonly<Record<WireWorkingKey, string>> {
  const points = pointers(layout, references);
  return { ...ofRuns(points), ...cuttingFormulas(references), ...ofLines(points) };
}

/** A line to buy, in its first row; empty where there is none. */
export function buyFormulas(
  layout: Layout,
  references: WireReferences,
): Readonly<Record<BuyKey, string>> {
  const points = pointers(layout, references);
  const { cell, column, head, buy, lineNumber } = points;
  const { rule } = layout.names;
  const whereLine = (formula: string) => `IF(${cell.lineRun}=0,"",${formula})`;
  const ofSize = (key: keyof WireReferences['price']) => priced(points, key, cell.linePlace);
  const hasPrice = isPositive(ofSize('price'));
  const hasArea = isPositive(ofSize('areaMm2'));
  const fewer = `IF(${buy.spools}>${cell.least},"no plan has fewer spools than "&${cell.least},"no plan has fewer spools")`;
  return {
    wire: whereLine(ofSize('size')),
    material: whereLine(`IF(${rule.material}="",${text(MATERIALS[0])},${rule.material})`),
    colour: whereLine(`IF(LEN(${cell.lineColour})=0,${text(ANY_COLOUR)},${cell.lineColour})`),
    pieces: whereLine(`COUNTIF(${column.line},${lineNumber})`),
    length: whereLine(`SUMIF(${column.line},${lineNumber},${column.piece})/${GRAINS}`),
    spool: whereLine(`INDEX(${column.spoolGrains},${cell.lineRun})/${GRAINS}`),
    spools: whereLine(`SUMPRODUCT(MAX((${column.cutLine}=${lineNumber})*${column.from}))`),
    waste: whereLine(`${buy.spools}*${buy.spool}-${buy.length}`),
    // A square millimetre a metre long is a cubic centimetre.
    mass: whereLine(
      `IF(${hasArea},${buy.length}*${head.metres}*${ofSize('areaMm2')}*${head.gramsPerCm3}/1000,"")`,
    ),
    price: whereLine(`IF(${hasPrice},${ofSize('price')},"")`),
    cost: whereLine(`IF(${hasPrice},${buy.spools}*${buy.spool}*${ofSize('price')},"")`),
    says: whereLine(
      `IF(${hasPrice},"",${text(LINE_LACKS.price)})&IF(${hasArea},"",${text(LINE_LACKS.mass)})&${fewer}`,
    ),
  };
}

/** All lines together. */
export function totalFormulas({
  buyColumn,
}: WireReferences): Readonly<Partial<Record<BuyKey, string>>> {
  const summed = ['pieces', 'length', 'spools', 'waste', 'mass', 'cost'] as const;
  return Object.fromEntries(summed.map((key) => [key, `SUM(${buyColumn[key]})`]));
}

/** What is missing from the lines and their totals; empty where nothing is. */
export function missingFormula({ head, buyColumn, column }: WireReferences): string {
  const lacking = (key: 'price' | 'mass') =>
    `SUMPRODUCT((LEN(${buyColumn.wire})>0)*(LEN(${buyColumn[key]})=0))`;
  const told = (count: string, one: string, many: string) =>
    `IF(${count}=0,"",${count}&IF(${count}=1,${text(one)},${text(many)}))`;
  return [
    told(
      head.lost,
      ' run is missing from these lines and totals: see its row below. ',
      ' runs are missing from these lines and totals: see their rows below. ',
    ),
    told(
      lacking('price'),
      ' line without a price is missing from the cost. ',
      ' lines without a price are missing from the cost. ',
    ),
    told(
      lacking('mass'),
      ' line without a metal area is missing from the mass. ',
      ' lines without a metal area are missing from the mass. ',
    ),
    `IF(${head.lines}>${LINES},(${head.lines}-${LINES})&${text(' lines find no room here and are missing: name fewer colours. ')},"")`,
    `IF(${head.unseen}>0,${text('The schedule has more runs than this sheet follows: take a new copy. ')},"")`,
    `IF(SUMPRODUCT(--ISERROR(${column.wrong}))>0,${text('Some rows could not be computed. ')},"")`,
  ].join('&');
}

/** The row of a run, in its first row; plus and minus are typed. */
export function runFormulas(
  layout: Layout,
  references: WireReferences,
): Readonly<Record<Exclude<RunKey, 'plus' | 'minus'>, string>> {
  const { cell, column, schedule, number, price, run } = pointers(layout, references);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${number})`;
  const whereThere = (formula: string) => `IF(${cell.there}=0,"",${formula})`;
  const whereGood = (formula: string) => `IF(${cell.good}=0,"",${formula})`;
  const from = (piece: string) => `INDEX(${column.from},INDEX(${column.rank},${piece}))`;
  const size = there('size');
  const level = there('level');
  return {
    run: whereThere(
      `IF(LEN(TRIM(${there('run')}))=0,"row "&(${number}+${ROW.first}),TRIM(${there('run')}))`,
    ),
    size: whereThere(
      `IF(${cell.place}>0,INDEX(${price.size},${cell.place}),IFERROR(IF(LEN(${size})=0,"?",${size}&""),"none fits"))`,
    ),
    oneWay: whereThere(`IF(ISNUMBER(${there('oneWay')}),${there('oneWay')},"?")`),
    each: whereGood(`${cell.grains}/${GRAINS}`),
    conductors: whereGood(cell.good),
    fromPlus: whereGood(from(`2*${number}-1`)),
    fromMinus: whereGood(`IF(${cell.good}=2,${from(`2*${number}`)},"chassis")`),
    together: whereGood(`${run.each}*${cell.good}`),
    cut: whereGood(text(CUT_BOX)),
    says: whereThere(`IF(LEN(${cell.wrong})>0,${text(LEFT_OUT)}&${cell.wrong},${doubtOf(level)})`),
  };
}

export function wireHeadFormulas(
  layout: Layout,
  references: WireReferences,
): Readonly<Record<WireHeadKey, string>> {
  const { typed, column, schedule } = pointers(layout, references);
  const { rule } = layout.names;
  const ofMaterial = MATERIALS.reduceRight(
    (further, material) =>
      `IF(${rule.material}=${text(material)},${MATERIAL_CONSTANTS[material].gramsPerCm3},${further})`,
    String(MATERIAL_CONSTANTS[MATERIALS[0]].gramsPerCm3),
  );
  return {
    slack: `IF(${typed.slack}="",${USUAL_SLACK},${typed.slack})`,
    tail: typed.tail,
    spool: typed.spool,
    metres: LENGTH_UNITS.reduceRight(
      (further, unit) => `IF(${rule.unit}=${text(unit)},${METRES_PER[unit]},${further})`,
      'NA()',
    ),
    gramsPerCm3: ofMaterial,
    pieces: `SUMPRODUCT(--(${column.line}>0))`,
    lines: `MAX(${column.nth})`,
    lost: `SUMPRODUCT(--(LEN(${column.wrong})>0))`,
    unseen: `MAX(0,ROWS(${schedule.level})-${runsFollowed(layout)})`,
  };
}
