/** The columns of the Wire list: what is bought, the runs that it is cut into, and the prices. */
import type { CellStyle } from '../plan/plan';
import type { BuyKey, PriceKey, RunKey } from './layout';

export interface WireColumn {
  readonly heading: string;
  readonly note: string;
  readonly style?: CellStyle;
}

const CENTRED: CellStyle = { align: 'centre' };
const LENGTH: CellStyle = { numberFormat: '0.00' };
const COUNT: CellStyle = { numberFormat: '0', align: 'centre' };
const MONEY: CellStyle = { numberFormat: '0.00' };

/** Both tables of the left stand in the same columns. */
export const COLUMN_WIDTHS = [17, 12, 12, 12, 10, 10, 9, 10, 10, 10, 10, 66] as const;

export const BUY_COLUMNS: Readonly<Record<BuyKey, WireColumn>> = {
  wire: {
    heading: 'Wire to buy',
    note: 'A line for each size and colour, thinnest first.',
    style: { bold: true },
  },
  material: { heading: 'Material', note: 'The conductor of the house rules.', style: CENTRED },
  colour: {
    heading: 'Colour',
    note: '"any" where neither the run nor the head of this sheet names one.',
    style: CENTRED,
  },
  pieces: {
    heading: 'Pieces',
    note: 'Single conductors: two a run, one with a chassis return.',
    style: COUNT,
  },
  length: {
    heading: 'All pieces',
    note: 'Their length together, slack and tails included.',
    style: LENGTH,
  },
  spool: { heading: 'On a spool', note: 'Length of a spool.', style: LENGTH },
  spools: {
    heading: 'Spools',
    note: 'Cut as below: longest piece first, each from the first spool that still has enough (first fit decreasing).',
    style: COUNT,
  },
  waste: { heading: 'Left over', note: 'What is left on the spools.', style: LENGTH },
  mass: {
    heading: 'Mass',
    note: 'Of the metal in the pieces, without insulation.',
    style: { numberFormat: '0.00 "kg"' },
  },
  price: {
    heading: 'Price',
    note: 'For a unit of length, from the prices at the right.',
    style: MONEY,
  },
  cost: { heading: 'Cost', note: 'Of whole spools.', style: MONEY },
  says: { heading: 'To know', note: 'What is missing, and whether fewer spools could do.' },
};

export const RUN_COLUMNS: Readonly<Record<RunKey, WireColumn>> = {
  run: {
    heading: 'Run to cut',
    note: 'As the schedule has it, row by row.',
    style: { bold: true },
  },
  size: { heading: 'Its wire', note: 'The size of the schedule.', style: CENTRED },
  plus: {
    heading: 'Plus colour',
    note: 'Colour of the conductor to plus in your own word; blank: as in the head of this sheet.',
    style: { numberFormat: '@', align: 'centre' },
  },
  minus: {
    heading: 'Minus colour',
    note: 'Colour of the conductor to minus in your own word; blank: as in the head of this sheet.',
    style: { numberFormat: '@', align: 'centre' },
  },
  oneWay: { heading: 'As listed', note: 'One way, the length of the schedule.', style: LENGTH },
  each: {
    heading: 'Cut to',
    note: 'Each conductor: its length with slack and two tails, rounded up to hundredths.',
    style: { ...LENGTH, bold: true },
  },
  conductors: {
    heading: 'Of these',
    note: 'Two conductors, or one with a chassis return.',
    style: COUNT,
  },
  fromPlus: {
    heading: 'Plus from spool',
    note: 'Number of the spool of its wire and colour that it is cut from.',
    style: COUNT,
  },
  fromMinus: {
    heading: 'Minus from spool',
    note: 'Number of the spool of its wire and colour that it is cut from.',
    style: COUNT,
  },
  together: { heading: 'Both together', note: 'What the run takes of the spools.', style: LENGTH },
  cut: { heading: 'Is cut', note: 'A box for a pen.', style: CENTRED },
  says: {
    heading: 'To know of the run',
    note: 'Why it is missing from the lines above, or that its verdict wants to be read first.',
  },
};

export const PRICE_COLUMNS: Readonly<
  Record<PriceKey, WireColumn & { readonly widthChars: number }>
> = {
  size: {
    heading: 'Prices: size',
    note: 'Sizes of the published series; others go into the free rows at the end, written as in the schedule.',
    widthChars: 12,
    style: { numberFormat: '@' },
  },
  areaMm2: {
    heading: 'Metal, mm2',
    note: 'ASTM B258 for gauges, IEC 60228 for areas; of a size of your own its metal area.',
    widthChars: 11,
    style: { numberFormat: '0.00#' },
  },
  price: {
    heading: 'Your price',
    note: "For a unit of the schedule's length, in your money.",
    widthChars: 11,
    style: MONEY,
  },
  spool: {
    heading: 'Own spool',
    note: "Length of a spool of this size, in the schedule's unit; blank: as in the head.",
    widthChars: 11,
    style: LENGTH,
  },
};
