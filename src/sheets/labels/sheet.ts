/** The Labels sheet: two labels for each run of a schedule, laid out for the stock that is described on it. */
import { area } from '../plan/area';
import { PALETTE, QUIET_STYLE, SMALL_STYLE } from '../plan/palette';
import type { Block, SheetPlan } from '../plan/plan';
import type { StationContent } from '../station/content';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import { LABEL_CELL_KEYS } from '../station/labels';
import { namedCellBlocks, namedCellEntries } from '../station/named-cells';
import { LABEL_CELLS } from './cells';
import {
  labelHeadFormulas,
  labelWarning,
  labelWorkingFormulas,
  slotFormula,
  type LabelChars,
} from './formulas';
import {
  CELL_PLACES,
  ENDS,
  LABEL_ROW as ROW,
  LABEL_WORKING_KEYS,
  labelCellArea,
  labelHeadArea,
  labelReferences,
  labelsName,
  labelWorkingArea,
  slotCells,
  slotsOf,
  workingsFrom,
  type LabelHeadKey,
  type LabelReferences,
  type Slots,
} from './layout';
import { drawnStock, type Stock } from './stock';

/** Names the schedule that the sheet belongs to, by which a reader finds it again. */
export const labelsOf = (sheet: string) =>
  `Two labels for each run of the sheet "${sheet}", one for either end. Describe your label stock here; only what stands below this head is printed.`;

const MM_PER_INCH = 25.4;
const POINTS_PER_INCH = 72;
/** Rounded widths and heights may come to a trace more than the paper has. */
const SPARE_MM = 2;
/** ECMA-376 part 1, 18.3.1.13: a character of a column is 7 pixels in Arial 10 and Calibri 11, and 5 go to its edges; 96 to the inch. */
const PIXELS = { inch: 96, character: 7, edges: 5 } as const;

/** Share of a label's height that its name takes. */
const NAME_SHARE = 0.34;
/** Type on labels of this height and more; smaller ones have smaller type. */
const ROOMY_MM = 32;
const TYPE_PT = { name: 13, text: 9.5 } as const;
const LEAST_TYPE_PT = 5;
/** Width of a character over the size of its type, with some to spare: of common sans-serif faces, from memory. */
const CHARACTER_EM = 0.56;

const heightPt = (mm: number) => Number(((mm / MM_PER_INCH) * POINTS_PER_INCH).toFixed(2));

/**
 * Lengths side by side as pixels, which rows and columns are drawn in: each edge where it belongs, so that what rounding
 * takes from one length the next has more.
 */
function pixelsOf(lengthsMm: readonly number[]): readonly number[] {
  let edgeMm = 0;
  let drawn = 0;
  return lengthsMm.map((lengthMm) => {
    edgeMm += lengthMm;
    const pixels = Math.round((edgeMm / MM_PER_INCH) * PIXELS.inch) - drawn;
    drawn += pixels;
    return pixels;
  });
}

/** Widths in characters, rounded down: columns a trace too wide would not fit the paper. */
function columnWidths(stock: Stock, { columns, columnsEach }: Slots): readonly number[] {
  const lengthsMm = Array.from(
    { length: columns },
    (_, column) => (column % columnsEach === 0 ? stock.labelWidthMm : stock.across) * stock.widths,
  );
  return pixelsOf(lengthsMm).map((pixels) =>
    Math.max(0.1, Math.floor(((pixels - PIXELS.edges) / PIXELS.character) * 100) / 100),
  );
}

function typeSizes({ labelHeightMm, labelWidthMm }: Stock) {
  const share = Math.min(1, labelHeightMm / ROOMY_MM);
  const size = (full: number) => Math.max(LEAST_TYPE_PT, Math.round(full * share * 2) / 2);
  const sizes = { name: size(TYPE_PT.name), text: size(TYPE_PT.text) };
  const fit = (typePt: number) =>
    Math.max(6, Math.floor(heightPt(labelWidthMm) / (typePt * CHARACTER_EM)) - 1);
  const chars: LabelChars = { name: fit(sizes.name), line: fit(sizes.text) };
  return { sizes, chars };
}

function slotBlocks(stock: Stock, slots: Slots, references: LabelReferences): Block[] {
  const { sizes } = typeSizes(stock);
  return Array.from({ length: slots.pages * slots.perPage }, (_, slot): Block[] => {
    const { name, text } = slotCells(slots, stock.columns, slot);
    const of = (key: 'labelName' | 'labelText') => [
      [{ formula: `=${slotFormula(references, key, slot + 1)}` }],
    ];
    return [
      {
        area: name,
        cells: of('labelName'),
        style: { bold: true, align: 'centre', fontSizePt: sizes.name, shrink: true },
      },
      {
        area: text,
        cells: of('labelText'),
        style: { align: 'centre', wrap: true, fontSizePt: sizes.text },
      },
    ];
  }).flat();
}

function workingBlocks(
  layout: Layout,
  slots: Slots,
  references: LabelReferences,
  chars: LabelChars,
): Block[] {
  const formulas = labelWorkingFormulas(layout, references, chars);
  const heads = labelHeadFormulas(references);
  return [
    ...(Object.keys(heads) as LabelHeadKey[]).map((key): Block => ({
      area: labelHeadArea(key, slots),
      cells: [[{ formula: `=${heads[key]}` }]],
      style: SMALL_STYLE,
    })),
    ...LABEL_WORKING_KEYS.map((key): Block => ({
      area: labelWorkingArea(key, layout, slots),
      fill: [`=${formulas[key]}`],
      style: SMALL_STYLE,
      afterTable: true,
    })),
  ];
}

function rowHeights(stock: Stock, slots: Slots): Readonly<Record<number, number>> {
  const lengthsMm = [
    NAME_SHARE * stock.labelHeightMm,
    (1 - NAME_SHARE) * stock.labelHeightMm,
    stock.down,
  ];
  const page = pixelsOf(
    Array.from({ length: slots.rowsPerPage }, (_, row) => lengthsMm[row % slots.rowsEach]!),
  );
  return Object.fromEntries(
    Array.from({ length: slots.pages * slots.rowsPerPage }, (_, row) => [
      ROW.first + row,
      (page[row % slots.rowsPerPage]! * POINTS_PER_INCH) / PIXELS.inch,
    ]),
  );
}

/** The plan of the Labels sheet. */
export function labelsSheet(layout: Layout, content: StationContent): SheetPlan {
  const typed = content.labels ?? {};
  const stock = drawnStock(typed);
  const slots = slotsOf(stock, layout);
  const references = labelReferences(layout, slots);
  const { chars } = typeSizes(stock);
  const already = Number(typed.cells?.used ?? 0) || 0;
  const printedPages = Math.min(
    slots.pages,
    Math.max(1, Math.ceil((ENDS * content.runs.length + Math.max(0, already)) / slots.perPage)),
  );
  const named = layout.names.named(EXTRAS.labels.stem, LABEL_CELL_KEYS);
  const from = workingsFrom(slots);
  const warning = labelWarning(layout, references, stock, printedPages * slots.perPage);
  return {
    name: labelsName(layout.names),
    columnWidths: [
      ...columnWidths(stock, slots),
      ...Array.from({ length: from + LABEL_WORKING_KEYS.length - slots.columns }, () => 10),
    ],
    hiddenColumns: LABEL_WORKING_KEYS.map((_, index) => from + index),
    blocks: [
      {
        area: area(ROW.title, 0),
        cells: [[EXTRAS.labels.sheetName]],
        style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
      },
      { area: area(ROW.about, 0), cells: [[labelsOf(layout.names.sheet)]], style: QUIET_STYLE },
      ...namedCellBlocks(LABEL_CELLS, LABEL_CELL_KEYS, CELL_PLACES, typed.cells ?? {}),
      {
        area: area(ROW.warning, 0),
        cells: [[{ formula: `=${warning}` }]],
        style: { bold: true, fontColour: PALETTE.danger },
        afterTable: true,
      },
      ...slotBlocks(stock, slots, references),
      ...workingBlocks(layout, slots, references, chars),
    ],
    names: LABEL_CELL_KEYS.map((key) => ({ name: named[key], area: labelCellArea(key) })),
    entries: namedCellEntries(LABEL_CELLS, LABEL_CELL_KEYS, CELL_PLACES),
    highlights: [],
    notes: LABEL_CELL_KEYS.map((key) => ({
      area: labelCellArea(key),
      text: LABEL_CELLS[key].note,
    })),
    frozenRows: 0,
    frozenColumns: 0,
    rowHeightsPt: { [ROW.title]: 24, ...rowHeights(stock, slots) },
    print: {
      landscape: false,
      area: area(ROW.first, 0, printedPages * slots.rowsPerPage, slots.columns),
      footer: '',
      stock: {
        paper: stock.paper,
        marginsMm: {
          top: stock.top,
          bottom: Math.max(0, stock.bottom - SPARE_MM),
          left: stock.left,
          right: Math.max(0, stock.right - SPARE_MM),
        },
        rowsPerPage: slots.rowsPerPage,
      },
    },
  };
}
