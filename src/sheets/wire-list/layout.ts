/** Where the parts of the Wire list stand: lines to buy over the runs, prices right of them, workings out of sight. */
import { formatSize, listedSizes } from '../../core/size';
import { area, areaAddress, cellAddress, quotedSheetName, type Area } from '../plan/area';
import { runsFollowed } from '../schedule/layout';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import { namedCellArea, type CellPlaces } from '../station/named-cells';
import type { ScheduleNames } from '../station/naming';
import { WIRE_CELL_KEYS, type WireCellKey } from '../station/wire-list';

/** Lines that the sheet has room for; where there are more it says so. */
export const LINES = 24;

/** Zero-based rows of the sheet's parts. */
export const WIRE_ROW = {
  title: 0,
  about: 1,
  cells: 2,
  missing: 7,
  header: 8,
  total: 9,
  firstLine: 10,
  runHeader: 11 + LINES,
  firstRun: 12 + LINES,
} as const;

export const CELL_PLACES: CellPlaces = { first: WIRE_ROW.cells, label: 0, value: 1, note: 2 };

export const BUY_KEYS = [
  'wire',
  'material',
  'colour',
  'pieces',
  'length',
  'spool',
  'spools',
  'waste',
  'mass',
  'price',
  'cost',
  'says',
] as const;
export type BuyKey = (typeof BUY_KEYS)[number];

export const RUN_KEYS = [
  'run',
  'size',
  'plus',
  'minus',
  'oneWay',
  'each',
  'conductors',
  'fromPlus',
  'fromMinus',
  'together',
  'cut',
  'says',
] as const;
export type RunKey = (typeof RUN_KEYS)[number];

export const PRICE_KEYS = ['size', 'areaMm2', 'price', 'spool'] as const;
export type PriceKey = (typeof PRICE_KEYS)[number];

/** Nothing ever stands in this column, so that formulas may count by its rows. */
export const GAP_COLUMN = BUY_KEYS.length;
const PRICES_FROM = GAP_COLUMN + 1;
const WORKINGS_FROM = PRICES_FROM + PRICE_KEYS.length + 1;

/** Rows for sizes of the user's own. */
const FREE_PRICES = 8;

/** By the row of the schedule. */
const BY_RUN = [
  'there',
  'place',
  'grains',
  'spoolGrains',
  'plusIs',
  'minusIs',
  'wrong',
  'good',
] as const;
/** By the piece: two of each run, in the order of the schedule. */
const BY_PIECE = ['number', 'ofRun', 'piece', 'key', 'first', 'nth', 'line', 'rank'] as const;
/** By the order of cutting: line by line, longest first. */
const BY_ORDER = [
  'cutPiece',
  'cutLine',
  'cutGrains',
  'cutSpool',
  'opened',
  'fits',
  'from',
  'rooms',
] as const;
/** By the line to buy. */
const BY_LINE = ['lineRun', 'linePlace', 'lineColour', 'least'] as const;

type ByRunKey = (typeof BY_RUN)[number];
type ByPieceKey = (typeof BY_PIECE)[number];
type ByOrderKey = (typeof BY_ORDER)[number];
type ByLineKey = (typeof BY_LINE)[number];
export type WireWorkingKey = ByRunKey | ByPieceKey | ByOrderKey | ByLineKey;
export const WIRE_WORKING_KEYS: readonly WireWorkingKey[] = [
  ...BY_RUN,
  ...BY_PIECE,
  ...BY_ORDER,
  ...BY_LINE,
];
export const WIRE_WORKING_COLUMNS: readonly number[] = WIRE_WORKING_KEYS.map(
  (_, index) => WORKINGS_FROM + index,
);

/** Single cells over the workings: figures in force, metres in the unit, density, and counts. */
const HEAD_KEYS = [
  'slack',
  'tail',
  'spool',
  'metres',
  'gramsPerCm3',
  'pieces',
  'lines',
  'lost',
  'unseen',
] as const;
export type WireHeadKey = (typeof HEAD_KEYS)[number];

export function wireListName(names: ScheduleNames): string {
  return names.sheetNamed(EXTRAS.wireList.sheetName);
}

export function wireCellArea(key: WireCellKey): Area {
  return namedCellArea(WIRE_CELL_KEYS, CELL_PLACES, key);
}

export function buyColumn(key: BuyKey): number {
  return BUY_KEYS.indexOf(key);
}

export function runColumn(key: RunKey): number {
  return RUN_KEYS.indexOf(key);
}

export function runArea(key: RunKey, rows: number): Area {
  return area(WIRE_ROW.firstRun, runColumn(key), rows, 1);
}

/** Sizes among the prices: the published ones, and those that runs have of their own. */
export function pricedSizes(ownSizes: readonly string[]): readonly string[] {
  return listedSizes(ownSizes).map(formatSize);
}

export function priceArea(key: PriceKey, sizes: number): Area {
  return area(WIRE_ROW.total, PRICES_FROM + PRICE_KEYS.indexOf(key), sizes + FREE_PRICES, 1);
}

export function wireHeadArea(key: WireHeadKey): Area {
  return area(0, WORKINGS_FROM + HEAD_KEYS.indexOf(key));
}

/** The column of a working, over its rows. */
export function wireWorkingArea(key: WireWorkingKey, layout: Layout): Area {
  const column = WORKINGS_FROM + WIRE_WORKING_KEYS.indexOf(key);
  if ((BY_LINE as readonly string[]).includes(key))
    return area(WIRE_ROW.firstLine, column, LINES, 1);
  const runs = runsFollowed(layout);
  const isByRun = (BY_RUN as readonly string[]).includes(key);
  return area(WIRE_ROW.firstRun, column, isByRun ? runs : 2 * runs, 1);
}

export interface WireReferences {
  readonly cell: Readonly<Record<WireWorkingKey, string>>;
  readonly above: Readonly<Record<WireWorkingKey, string>>;
  readonly column: Readonly<Record<WireWorkingKey, string>>;
  readonly head: Readonly<Record<WireHeadKey, string>>;
  readonly price: Readonly<Record<PriceKey, string>>;
  readonly run: Readonly<Record<RunKey, string>>;
  readonly buy: Readonly<Record<BuyKey, string>>;
  /** The columns of the lines. */
  readonly buyColumn: Readonly<Record<BuyKey, string>>;
  /** The row's number from 1, among runs, pieces or places of the order, and among lines. */
  readonly number: string;
  readonly lineNumber: string;
}

function keyed<Key extends string>(keys: readonly Key[], point: (key: Key) => string) {
  return Object.fromEntries(keys.map((key) => [key, point(key)])) as Record<Key, string>;
}

export function wireReferences(layout: Layout, sizes: number): WireReferences {
  const { firstRun, firstLine, runHeader, total } = WIRE_ROW;
  const ofWorking = (point: (of: Area) => string) =>
    keyed(WIRE_WORKING_KEYS, (key) => point(wireWorkingArea(key, layout)));
  const below = (row: number) => `(ROW()-ROW(${cellAddress(row, 0, 'both')}))`;
  return {
    cell: ofWorking(({ row, column }) => cellAddress(row, column, 'column')),
    above: ofWorking(({ row, column }) => cellAddress(row - 1, column, 'column')),
    column: ofWorking((of) => areaAddress(of, 'both')),
    head: keyed(HEAD_KEYS, (key) => areaAddress(wireHeadArea(key), 'both')),
    price: keyed(PRICE_KEYS, (key) => areaAddress(priceArea(key, sizes), 'both')),
    run: keyed(RUN_KEYS, (key) => cellAddress(firstRun, runColumn(key), 'column')),
    buy: keyed(BUY_KEYS, (key) => cellAddress(firstLine, buyColumn(key), 'column')),
    buyColumn: keyed(BUY_KEYS, (key) =>
      areaAddress(area(firstLine, buyColumn(key), LINES, 1), 'both'),
    ),
    number: below(runHeader),
    lineNumber: below(total),
  };
}

/** Where the sheet's runs stand, from another sheet. */
export function wireColumnElsewhere(key: RunKey, layout: Layout): string {
  const sheet = quotedSheetName(wireListName(layout.names));
  return `${sheet}!${areaAddress(runArea(key, runsFollowed(layout)), 'both')}`;
}
