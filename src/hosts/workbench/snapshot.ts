/** A sheet plan as the grid's own sheet data: contents, looks, widths, frozen panes. Pure: no grid needed. */
import {
  BooleanNumber,
  BorderStyleTypes,
  CellValueType,
  HorizontalAlign,
  VerticalAlign,
  WrapStrategy,
  type IBorderData,
  type ICellData,
  type IStyleData,
  type IWorksheetData,
} from '@univerjs/core';
import { CellError, type Cell } from '../../functions/cell';
import type { Calculated } from '../../sheets/calculate/calculate';
import type { Area } from '../../sheets/plan/area';
import { filledDown } from '../../sheets/plan/fill-down';
import { PLANNED } from './standing-sheets';
import type { Block, CellContent, CellStyle, SheetPlan } from '../../sheets/plan/plan';

/** Empty rows and columns around what the plan fills, so that there is room to go on typing. */
const SPARE_ROWS = 40;
const LEAST_COLUMNS = 20;

/** About as wide as Excel's own type, in whose characters a plan counts its column widths. */
const TYPEFACE = 'Arial';
const TYPE_SIZE_PT = 10;

/** Widths count characters of Excel's default type, which is 7 px wide; 5 px stand beside the text. */
const PX_PER_CHARACTER = 7;
const CELL_PADDING_PX = 5;
const PX_PER_POINT = 96 / 72;
/** The arrow of a drop-down list stands inside its cell. */
const LIST_ARROW_PX = 18;

const LINE_COLOUR = '#9aa0a6';

const ALIGNMENT: Readonly<Record<NonNullable<CellStyle['align']>, HorizontalAlign>> = {
  left: HorizontalAlign.LEFT,
  centre: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
};

function borders(kind: NonNullable<CellStyle['border']>): IBorderData {
  const line = { s: BorderStyleTypes.THIN, cl: { rgb: LINE_COLOUR } };
  return kind === 'below' ? { b: line } : { t: line, r: line, b: line, l: line };
}

/** A style as the grid writes it; only what the plan says. */
export function gridStyle(style: CellStyle): IStyleData {
  return {
    ...(style.bold !== undefined && { bl: style.bold ? BooleanNumber.TRUE : BooleanNumber.FALSE }),
    ...(style.italic !== undefined && {
      it: style.italic ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    }),
    ...(style.fontColour !== undefined && { cl: { rgb: style.fontColour } }),
    ...(style.fontSizePt !== undefined && { fs: style.fontSizePt }),
    ...(style.fill !== undefined && { bg: { rgb: style.fill } }),
    ...(style.numberFormat !== undefined && { n: { pattern: style.numberFormat } }),
    ...(style.align !== undefined && { ht: ALIGNMENT[style.align] }),
    ...(style.wrap === true && { tb: WrapStrategy.WRAP }),
    // Cells of a table keep one line of sight where a neighbour wraps.
    ...(style.border !== undefined && { bd: borders(style.border), vt: VerticalAlign.MIDDLE }),
    ...(style.atTop === true && { vt: VerticalAlign.TOP }),
  };
}

/** A content as the grid stores it. The kind is always stated, so that text such as "1/0" or "12" stays text. */
export function gridContent(content: CellContent): ICellData {
  if (content === null) return {};
  if (typeof content === 'object') return { f: content.formula };
  if (typeof content === 'string') return { v: content, t: CellValueType.STRING };
  if (typeof content === 'boolean') return { v: content ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: content, t: CellValueType.NUMBER };
}

/** A value as the grid stores it; an error stands as its code. */
export function gridValueOf(value: Exclude<Cell, null>): ICellData {
  return gridContent(value instanceof CellError ? value.code : value);
}

type Rows = Record<number, Record<number, ICellData>>;

function cellAt(rows: Rows, row: number, column: number): ICellData {
  const cells = (rows[row] ??= {});
  return (cells[column] ??= {});
}

/** Looks laid over others: cells that look alike share one object, of which there are some hundred thousand fewer. */
class Looks {
  private readonly over = new Map<IStyleData | undefined, Map<IStyleData, IStyleData>>();

  lay(rows: Rows, area: Area, style: IStyleData): void {
    for (let row = area.row; row < area.row + area.rows; row += 1) {
      for (let column = area.column; column < area.column + area.columns; column += 1) {
        const cell = cellAt(rows, row, column);
        cell.s = this.together(cell.s as IStyleData | undefined, style);
      }
    }
  }

  private together(below: IStyleData | undefined, style: IStyleData): IStyleData {
    let known = this.over.get(below);
    if (known === undefined) this.over.set(below, (known = new Map<IStyleData, IStyleData>()));
    let both = known.get(style);
    if (both === undefined) known.set(style, (both = { ...below, ...style }));
    return both;
  }
}

/** Puts the id that the grid keeps a look under in the place of each. */
function putIds(rows: Rows, idOf: (style: IStyleData) => string | undefined): void {
  const ids = new Map<ICellData['s'], string | undefined>();
  for (const cells of Object.values(rows)) {
    for (const cell of Object.values(cells)) {
      const { s: style } = cell;
      if (style === undefined || style === null) continue;
      if (!ids.has(style)) ids.set(style, idOf(style as IStyleData));
      cell.s = ids.get(style);
    }
  }
}

/** A formula filled down a column, and the cell that it is written for. */
interface Fill {
  readonly formula: string;
  readonly area: Area;
  readonly column: number;
}
/** By the id that its cells share. */
type Fills = Map<string, Fill>;

function lay(rows: Rows, block: Block, fills: Fills, looks: Looks, valueAt: ValueAt): void {
  const { area, cells, fill } = block;
  if (cells !== undefined || fill !== undefined) {
    const shared = fill?.map((formula, across): ICellData => {
      if (formula === null) return {};
      const si = `fill ${fills.size + 1}`;
      fills.set(si, { formula, area, column: area.column + across });
      return { si };
    });
    for (let down = 0; down < area.rows; down += 1) {
      for (let across = 0; across < area.columns; across += 1) {
        const row = area.row + down;
        const column = area.column + across;
        const given = cells?.[down]?.[across] ?? null;
        const written = given === null ? (shared?.[across] ?? {}) : gridContent(given);
        const value =
          written.f === undefined && written.si === undefined ? null : valueAt(row, column);
        const content = { ...written, ...(value !== null && gridValueOf(value)) };
        const { s: style } = cellAt(rows, row, column);
        rows[row]![column] = { ...content, ...(style !== undefined && { s: style }) };
      }
    }
  }
  if (block.style !== undefined) looks.lay(rows, area, gridStyle(block.style));
}

/**
 * Writes each filled formula once, into the first of its cells that no other content covers; the cells below only share
 * its id. So the grid parses a column's formula once, not once for every row.
 */
function writeFills(rows: Rows, fills: Fills): void {
  for (const [si, { formula, area, column }] of fills) {
    for (let down = 0; down < area.rows; down += 1) {
      const cell = rows[area.row + down]?.[column];
      if (cell?.si !== si) continue;
      cell.f = filledDown(formula)(down);
      break;
    }
  }
}

/** What a formula of a cell comes to, where that is known. */
type ValueAt = (row: number, column: number) => Cell;

function columnWidthsPx(plan: SheetPlan): number[] {
  const widths = plan.columnWidths.map((characters) =>
    Math.round(characters * PX_PER_CHARACTER + CELL_PADDING_PX),
  );
  const listColumns = new Set(
    plan.entries.filter(({ choices }) => choices !== undefined).map(({ area }) => area.column),
  );
  return widths.map((width, column) => (listColumns.has(column) ? width + LIST_ARROW_PX : width));
}

/**
 * The plan as sheet data for the grid. Rules of entry, conditional formats and names are added to the sheet after. `idOf`
 * gives the id under which the grid keeps a look.
 */
export function sheetSnapshot(
  plan: SheetPlan,
  values?: Calculated,
  idOf?: (style: IStyleData) => string | undefined,
): Partial<IWorksheetData> {
  const rows: Rows = {};
  const looks = new Looks();
  const listLook = { ff: TYPEFACE, fs: TYPE_SIZE_PT, tb: WrapStrategy.CLIP };
  // A drop-down list takes no type from its sheet, and wraps its text out of sight unless told otherwise.
  for (const { area, choices, choicesFrom } of plan.entries) {
    if (choices === undefined && choicesFrom === undefined) continue;
    looks.lay(rows, area, listLook);
  }
  const valueAt: ValueAt = (row, column) => values?.at(plan.name, row, column) ?? null;
  const fills: Fills = new Map();
  for (const block of plan.blocks) lay(rows, block, fills, looks, valueAt);
  writeFills(rows, fills);
  if (idOf !== undefined) putIds(rows, idOf);
  // A note travels with its cell; the status line reads it.
  for (const note of plan.notes) {
    cellAt(rows, note.area.row, note.area.column).custom = { note: note.text };
  }
  const hidden = new Set(plan.hiddenColumns);
  const lastRow = Math.max(0, ...plan.blocks.map(({ area }) => area.row + area.rows));
  const lastColumn = Math.max(0, ...plan.blocks.map(({ area }) => area.column + area.columns));
  return {
    name: plan.name,
    custom: { ...PLANNED },
    defaultStyle: { ff: TYPEFACE, fs: TYPE_SIZE_PT },
    rowCount: lastRow + SPARE_ROWS,
    columnCount: Math.max(LEAST_COLUMNS, lastColumn + 3),
    cellData: rows,
    columnData: Object.fromEntries(
      columnWidthsPx(plan).map((width, column) => [
        column,
        { w: width, ...(hidden.has(column) && { hd: BooleanNumber.TRUE }) },
      ]),
    ),
    rowData: Object.fromEntries(
      Object.entries(plan.rowHeightsPt ?? {}).map(([row, points]) => [
        row,
        { h: Math.round(points * PX_PER_POINT), ia: BooleanNumber.FALSE },
      ]),
    ),
    freeze: {
      xSplit: plan.frozenColumns,
      ySplit: plan.frozenRows,
      startRow: plan.frozenRows > 0 ? plan.frozenRows : -1,
      startColumn: plan.frozenColumns > 0 ? plan.frozenColumns : -1,
    },
  };
}
