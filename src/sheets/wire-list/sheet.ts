/** The Wire list of a schedule: what to buy of each wire and colour, and what to cut from which spool. */
import { parseSize, sizeAreaMm2 } from '../../core/size';
import { isRefusal } from '../../core/outcome';
import { area } from '../plan/area';
import { PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { HEADING_STYLE, PALETTE, QUIET_STYLE, SMALL_STYLE } from '../plan/palette';
import type { Block, CellContent, SheetPlan } from '../plan/plan';
import { runsFollowed } from '../schedule/layout';
import type { StationContent } from '../station/content';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import { namedCellBlocks, namedCellEntries } from '../station/named-cells';
import {
  COLOUR_KEYS,
  WIRE_CELL_KEYS,
  type WireListTyped,
  type WirePrice,
} from '../station/wire-list';
import { wireCells } from './cells';
import { BUY_COLUMNS, COLUMN_WIDTHS, PRICE_COLUMNS, RUN_COLUMNS } from './columns';
import {
  buyFormulas,
  missingFormula,
  runFormulas,
  totalFormulas,
  wireHeadFormulas,
  wireWorkingFormulas,
} from './formulas';
import { wireHighlights } from './highlights';
import {
  BUY_KEYS,
  buyColumn,
  CELL_PLACES,
  GAP_COLUMN,
  LINES,
  PRICE_KEYS,
  priceArea,
  pricedSizes,
  RUN_KEYS,
  runArea,
  runColumn,
  WIRE_ROW as ROW,
  WIRE_WORKING_COLUMNS,
  WIRE_WORKING_KEYS,
  wireCellArea,
  wireHeadArea,
  wireListName,
  wireReferences,
  wireWorkingArea,
  type PriceKey,
  type WireHeadKey,
  type WireReferences,
  type WireWorkingKey,
} from './layout';

/** Names the schedule that the sheet belongs to, by which a reader finds it again. */
export const wiresOf = (sheet: string) =>
  `Wires of the runs on the sheet "${sheet}", both conductors, lengths in its unit. Green cells are yours; all else follows the schedule.`;

/** What the columns that look at the row above begin with. */
const SEEDS: Readonly<Partial<Record<WireWorkingKey, number | null>>> = { cutLine: 0, rooms: null };

function titleBlocks({ names }: Layout): Block[] {
  return [
    {
      area: area(ROW.title, 0),
      cells: [[EXTRAS.wireList.sheetName]],
      style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
    },
    { area: area(ROW.about, 0), cells: [[wiresOf(names.sheet)]], style: QUIET_STYLE },
  ];
}

function lineBlocks(layout: Layout, references: WireReferences): Block[] {
  const formulas = buyFormulas(layout, references);
  const totals = totalFormulas(references);
  return [
    {
      area: area(ROW.missing, 0),
      cells: [[{ formula: `=${missingFormula(references)}` }]],
      style: { bold: true, fontColour: PALETTE.danger },
      afterTable: true,
    },
    {
      area: area(ROW.header, 0, 1, BUY_KEYS.length),
      cells: [BUY_KEYS.map((key) => BUY_COLUMNS[key].heading)],
      style: HEADING_STYLE,
    },
    ...BUY_KEYS.flatMap((key): Block[] => {
      const style = { ...BUY_COLUMNS[key].style, border: 'all' } as const;
      const total = totals[key];
      const content: CellContent =
        key === 'wire' ? 'All lines' : total === undefined ? null : { formula: `=${total}` };
      return [
        {
          area: area(ROW.total, buyColumn(key)),
          cells: [[content]],
          style: { ...style, bold: true, fill: PALETTE.band },
          afterTable: true,
        },
        {
          area: area(ROW.firstLine, buyColumn(key), LINES, 1),
          fill: [`=${formulas[key]}`],
          style,
          afterTable: true,
        },
      ];
    }),
  ];
}

function runBlocks(layout: Layout, references: WireReferences, typed: WireListTyped): Block[] {
  const rows = runsFollowed(layout);
  const formulas = runFormulas(layout, references);
  const runs = typed.runs ?? [];
  return [
    {
      area: area(ROW.runHeader, 0, 1, RUN_KEYS.length),
      cells: [RUN_KEYS.map((key) => RUN_COLUMNS[key].heading)],
      style: HEADING_STYLE,
    },
    ...RUN_KEYS.map((key): Block => {
      const style = { ...RUN_COLUMNS[key].style, border: 'all' } as const;
      return key === 'plus' || key === 'minus'
        ? {
            area: runArea(key, rows),
            cells: Array.from({ length: rows }, (_, index) => [runs[index]?.[key] ?? null]),
            style: { ...style, fill: PALETTE.input },
          }
        : { area: runArea(key, rows), fill: [`=${formulas[key]}`], style, afterTable: true };
    }),
  ];
}

/** The sizes with what is said of them; sizes of the user's own that are not listed stand in the free rows. */
function priceBlocks(sizes: readonly string[], prices: readonly WirePrice[]): Block[] {
  const said = new Map(prices.map((price) => [price.size, price]));
  const others = prices.filter(({ size }) => !sizes.includes(size));
  const rows = priceArea('size', sizes.length).rows;
  const contentOf = (key: PriceKey, index: number): CellContent => {
    const size = sizes[index];
    if (size === undefined) return others[index - sizes.length]?.[key] ?? null;
    if (key === 'size') return size;
    const parsed = parseSize(size);
    return key === 'areaMm2' && !isRefusal(parsed)
      ? sizeAreaMm2(parsed)
      : (said.get(size)?.[key] ?? null);
  };
  return PRICE_KEYS.flatMap((key): Block[] => {
    const of = priceArea(key, sizes.length);
    const isTyped = key === 'price' || key === 'spool';
    const { heading, style } = PRICE_COLUMNS[key];
    return [
      { area: area(ROW.header, of.column), cells: [[heading]], style: HEADING_STYLE },
      {
        area: of,
        cells: Array.from({ length: rows }, (_, index) => [contentOf(key, index)]),
        style: { ...style, border: 'all', ...(isTyped ? { fill: PALETTE.input } : {}) },
      },
      ...(isTyped
        ? []
        : [
            {
              area: area(of.row + sizes.length, of.column, rows - sizes.length, 1),
              style: { fill: PALETTE.input },
            },
          ]),
    ];
  });
}

function workingBlocks(layout: Layout, references: WireReferences): Block[] {
  const formulas = wireWorkingFormulas(layout, references);
  const heads = wireHeadFormulas(layout, references);
  return [
    ...(Object.keys(heads) as WireHeadKey[]).map((key): Block => ({
      area: wireHeadArea(key),
      cells: [[{ formula: `=${heads[key]}` }]],
      style: SMALL_STYLE,
      afterTable: true,
    })),
    ...WIRE_WORKING_KEYS.flatMap((key): Block[] => {
      const of = wireWorkingArea(key, layout);
      const seed = SEEDS[key];
      return [
        {
          area: area(of.row - 1, of.column),
          cells: [[seed === undefined ? key : seed]],
          style: SMALL_STYLE,
        },
        { area: of, fill: [`=${formulas[key]}`], style: SMALL_STYLE, afterTable: true },
      ];
    }),
  ];
}

/** The plan of the Wire list. */
export function wireListSheet(layout: Layout, content: StationContent): SheetPlan {
  const typed = content.wireList ?? {};
  const sizes = pricedSizes(
    content.runs.flatMap(({ ownSize }) => (ownSize === undefined ? [] : [ownSize])),
  );
  const references = wireReferences(layout, sizes.length);
  const rows = runsFollowed(layout);
  const cells = wireCells(layout.names.rule);
  const named = layout.names.named(EXTRAS.wireList.stem, WIRE_CELL_KEYS);
  return {
    name: wireListName(layout.names),
    columnWidths: [
      ...COLUMN_WIDTHS,
      3,
      ...PRICE_KEYS.map((key) => PRICE_COLUMNS[key].widthChars),
      3,
      ...WIRE_WORKING_KEYS.map(() => 6),
    ],
    hiddenColumns: WIRE_WORKING_COLUMNS,
    blocks: [
      ...titleBlocks(layout),
      ...namedCellBlocks(cells, WIRE_CELL_KEYS, CELL_PLACES, typed.cells ?? {}),
      ...lineBlocks(layout, references),
      ...runBlocks(layout, references, typed),
      ...priceBlocks(sizes, typed.prices ?? []),
      ...workingBlocks(layout, references),
    ],
    names: WIRE_CELL_KEYS.map((key) => ({ name: named[key], area: wireCellArea(key) })),
    entries: [
      ...namedCellEntries(cells, WIRE_CELL_KEYS, CELL_PLACES),
      ...COLOUR_KEYS.map((key) => {
        const { heading, note } = RUN_COLUMNS[key];
        return entry(runArea(key, rows), { title: heading, sentences: [note] }, {});
      }),
      ...PRICE_KEYS.map((key) => {
        const { heading, note } = PRICE_COLUMNS[key];
        return entry(priceArea(key, sizes.length), { title: heading, sentences: [note] }, {});
      }),
    ],
    highlights: wireHighlights(references, rows),
    notes: [
      ...BUY_KEYS.map((key) => ({
        area: area(ROW.header, buyColumn(key)),
        text: BUY_COLUMNS[key].note,
      })),
      ...RUN_KEYS.map((key) => ({
        area: area(ROW.runHeader, runColumn(key)),
        text: RUN_COLUMNS[key].note,
      })),
      ...PRICE_KEYS.map((key) => ({
        area: area(ROW.header, priceArea(key, sizes.length).column),
        text: PRICE_COLUMNS[key].note,
      })),
    ],
    frozenRows: 0,
    frozenColumns: 1,
    rowHeightsPt: { [ROW.title]: 24, [ROW.header]: 30, [ROW.runHeader]: 30 },
    print: {
      landscape: true,
      area: area(0, 0, ROW.firstRun + (layout.printedRows ?? rows), GAP_COLUMN),
      repeatRows: { first: ROW.runHeader, last: ROW.runHeader },
      footer: PRINT_FOOTER,
    },
  };
}
