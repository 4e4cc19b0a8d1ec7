/**
 * The cells of a sheet as its file has them (ECMA-376 part 1, 18.3.1.80, sheetData). The library would keep an object for
 * each of tens of thousands, and read and write each of their long formulas several times.
 */
import { CellError, type ResultCell } from '../../functions/cell';
import { escapeText } from '../../lists/escape';
import type { Calculated } from '../../sheets/calculate/calculate';
import { cellAddress, columnLetters } from '../../sheets/plan/area';
import { filledDown, partsToFill, putTogether, type FilledDown } from '../../sheets/plan/fill-down';
import { layBlocks, type LaidCell } from '../../sheets/plan/lay-blocks';
import type { CellContent, CellStyle, Formula, SheetPlan } from '../../sheets/plan/plan';
import type { Place, UnmarkedCells } from './ignored-errors';
import { xmlText } from './xml';

const TEXT_FORMAT = '@';
/** What a spreadsheet would take for a formula when someone edits the cell. */
const FORMULA_LIKE = /^[=+\-@]/;

/** Numbers that the file has in place of what cells share. */
export interface Shares {
  /** 0 for none. */
  style(style: CellStyle): number;
  text(text: string): number;
}

export interface SheetCells {
  /** The element of all rows. */
  readonly data: string;
  /** From the first to the last cell with something in it. */
  readonly dimension: string;
  readonly unmarked: UnmarkedCells;
}

const isFormula = (content: CellContent): content is Formula =>
  typeof content === 'object' && content !== null;

/** A formula in a cell formatted as text would turn into its own text when edited, and the reverse. */
function styleFor(content: CellContent, style: CellStyle): CellStyle {
  if (isFormula(content) && style.numberFormat === TEXT_FORMAT) {
    return { ...style, numberFormat: 'General' };
  }
  if (typeof content === 'string' && FORMULA_LIKE.test(content)) {
    return { ...style, numberFormat: TEXT_FORMAT };
  }
  return style;
}

/**
 * LibreOffice calculates a hundred and more alike formulas one below the other in parallel, and then takes a column that
 * leads to a sum and back to another column of the same rows for a circle (seen in 7.4: Err:522). So no stretch of
 * formulas is as long as that: every so many rows one stands in brackets.
 */
const ALIKE_AT_MOST = 64;

const isUnlike = (row: number) => row % ALIKE_AT_MOST === 0;

/** Formulas as they stand in XML, each taken apart and escaped once for all of its rows. */
class FormulaTexts {
  private readonly parts = new Map<string, FilledDown>();

  at(formula: string, rowsBelow: number): string {
    let parts = this.parts.get(formula);
    if (parts === undefined) {
      const { texts, rows } = partsToFill(formula.replace(/^=/, ''));
      this.parts.set(formula, (parts = { texts: texts.map(xmlText), rows }));
    }
    return putTogether(parts, rowsBelow);
  }
}

type FormulaAt = LaidCell & { readonly content: Formula };

/** Whether a cell's formula is the one of a cell further up, filled down. */
function isFilledFrom(above: FormulaAt, cell: FormulaAt): boolean {
  const by = cell.row - above.row;
  return above.filled !== undefined && cell.filled !== undefined
    ? above.filled.formula === cell.filled.formula &&
        cell.filled.rowsBelow - above.filled.rowsBelow === by
    : filledDown(above.content.formula)(by) === cell.content.formula;
}

/** A formula that cells below may share; its element is written again once it is known which. */
interface First {
  readonly cell: FormulaAt;
  readonly xml: string;
  /** Where its element stands among the pieces. */
  readonly piece: number;
  last: number;
  /** Its number, once another cell shares it. */
  shared?: number;
}

/**
 * Formulas that are filled down, each written out once: the cells below say that they share it. The long ones of a copy
 * without the add-in make a file of megabytes otherwise. One that names another sheet is written out in every row, since
 * the older format of workbooks knew no such formula that is shared.
 */
class Formulas {
  private readonly firstOf = new Map<number, First>();
  private readonly shared: First[] = [];
  private readonly texts = new FormulaTexts();

  constructor(private readonly pieces: string[]) {}

  add(cell: FormulaAt): void {
    const { row, column, content, filled } = cell;
    const inBrackets = isUnlike(row);
    const first = this.firstOf.get(column);
    if (first?.last === row - 1 && !inBrackets && isFilledFrom(first.cell, cell)) {
      first.last = row;
      first.shared ??= this.shared.push(first) - 1;
      this.pieces.push(`<f t="shared" si="${first.shared}"/>`);
      return;
    }
    const { formula, rowsBelow } = filled ?? { formula: content.formula, rowsBelow: 0 };
    const xml = this.texts.at(formula, rowsBelow);
    if (inBrackets || formula.includes('!')) this.firstOf.delete(column);
    else this.firstOf.set(column, { cell, xml, piece: this.pieces.length, last: row });
    this.pieces.push(inBrackets ? `<f>(${xml})</f>` : `<f>${xml}</f>`);
  }

  /** Says of each shared formula which cells share it. */
  finish(): void {
    for (const { cell, last, xml, piece, shared } of this.shared) {
      const where = `${cellAddress(cell.row, cell.column)}:${cellAddress(last, cell.column)}`;
      this.pieces[piece] = `<f t="shared" ref="${where}" si="${shared}">${xml}</f>`;
    }
  }
}

/** What a formula came to: the kind of its cell, and its value. */
function resultOf(value: ResultCell): readonly [kind: string, text: string] {
  if (value instanceof CellError) return [' t="e"', value.code];
  if (typeof value === 'string') return [' t="str"', xmlText(escapeText(value))];
  return typeof value === 'boolean' ? [' t="b"', value ? '1' : '0'] : ['', String(value)];
}

/** From the first to the last. */
class Stretch {
  first = Number.POSITIVE_INFINITY;
  last = Number.NEGATIVE_INFINITY;

  take(place: number): void {
    this.first = Math.min(this.first, place);
    this.last = Math.max(this.last, place);
  }
}

/** `values` are what the formulas come to. */
export function sheetCells(
  { name, blocks, rowHeightsPt = {} }: SheetPlan,
  values: Calculated | undefined,
  shares: Shares,
): SheetCells {
  const [texts, unlike]: [Place[], Place[]] = [[], []];
  const [rows, columns] = [new Stretch(), new Stretch()];
  const pieces: string[] = [];
  const formulas = new Formulas(pieces);
  const letters: string[] = [];

  const drawCell = (cell: LaidCell): void => {
    const { row, column, content } = cell;
    const style = styleFor(content, cell.style);
    if (style.numberFormat === TEXT_FORMAT) texts.push({ row, column });
    const number = shares.style(style);
    const where = `${(letters[column] ??= columnLetters(column))}${row + 1}`;
    const head = `<c r="${where}"${number === 0 ? '' : ` s="${number}"`}`;
    if (content === null) {
      if (number !== 0) pieces.push(`${head}/>`);
      return;
    }
    rows.take(row);
    columns.take(column);
    if (isFormula(content)) {
      // The first row has none above it to differ from.
      if (row > 0 && isUnlike(row)) unlike.push({ row, column });
      const value = values?.at(name, row, column) ?? undefined;
      const [kind, text] = value === undefined ? ['', undefined] : resultOf(value);
      pieces.push(`${head}${kind}>`);
      formulas.add({ ...cell, content });
      pieces.push(text === undefined ? '</c>' : `<v>${text}</v></c>`);
    } else if (typeof content === 'string') {
      pieces.push(`${head} t="s"><v>${shares.text(escapeText(content))}</v></c>`);
    } else if (typeof content === 'boolean') {
      pieces.push(`${head} t="b"><v>${content ? 1 : 0}</v></c>`);
    } else {
      pieces.push(`${head}><v>${content}</v></c>`);
    }
  };

  const cellsOf = new Map<number, LaidCell[]>(
    Object.keys(rowHeightsPt).map((row) => [Number(row), []]),
  );
  for (const cell of layBlocks(blocks)) {
    const known = cellsOf.get(cell.row);
    if (known === undefined) cellsOf.set(cell.row, [cell]);
    else known.push(cell);
  }
  for (const [row, cells] of [...cellsOf].sort(([one], [other]) => one - other)) {
    const heightPt = rowHeightsPt[row];
    const height = heightPt === undefined ? '' : ` ht="${heightPt}" customHeight="1"`;
    const [first] = cells;
    const last = cells.at(-1) ?? first;
    const spans = last && first ? ` spans="${first.column + 1}:${last.column + 1}"` : '';
    pieces.push(`<row r="${row + 1}"${height}${spans} x14ac:dyDescent="0.25">`);
    cells.forEach(drawCell);
    pieces.push('</row>');
  }
  formulas.finish();
  return {
    data: pieces.length === 0 ? '<sheetData/>' : `<sheetData>${pieces.join('')}</sheetData>`,
    dimension:
      rows.last < 0
        ? 'A1'
        : `${cellAddress(rows.first, columns.first)}:${cellAddress(rows.last, columns.last)}`,
    unmarked: { texts, unlike },
  };
}
