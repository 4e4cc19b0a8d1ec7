/**
 * The cells of a sheet as its file has them (ECMA-376 part 1, 18.3.1.80, sheetData). The library would keep an object for
 * each of tens of thousands, and read and write each of their long formulas several times.
 */
import { CellError, type ResultCell } from '../../functions/cell';
import { escapeText } from '../../lists/escape';
import type { Calculated } from '../../sheets/calculate/calculate';
import { cellAddress, columnLetters } from '../../sheets/plan/area';
import { filledDown, partsToFill, putTogether, type FilledDown } from '../../sheets/plan/fill-down';
import { FilledFormula, layBlocks, type LaidCell } from '../../sheets/plan/lay-blocks';
import type { CellContent, CellStyle, Formula, SheetPlan } from '../../sheets/plan/plan';
import type { Place, UnmarkedCells } from './ignored-errors';
import { xmlText } from '../../sheets/plan/xml-text';
import { bytesOf, type Bytes } from './xml';

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
  /** The element of all rows, piece by piece. */
  readonly data: readonly Bytes[];
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

type FormulaAt = LaidCell & { readonly content: Formula };

const isFormulaAt = (cell: LaidCell): cell is FormulaAt => isFormula(cell.content);

/** Whether a cell's formula is the one of a cell further up, filled down. */
function isFilledFrom(above: FormulaAt, { row, content }: FormulaAt): boolean {
  const by = row - above.row;
  return above.content instanceof FilledFormula && content instanceof FilledFormula
    ? above.content.first === content.first && content.rowsBelow - above.content.rowsBelow === by
    : filledDown(above.content.formula)(by) === content.formula;
}

/** A formula that cells below share. */
interface Shared {
  readonly first: FormulaAt;
  last: number;
  /** Its number, once another cell shares it. */
  number?: number;
}

/** Whether a stretch of formulas that ends in one row goes on in another: those in brackets stand in between. */
const goesOn = (last: number, row: number) =>
  last === row - 1 || (last === row - 2 && isUnlike(row - 1));

/**
 * Formulas that are filled down, each written out once: the cells below say that they share it. The long ones of a copy
 * without the add-in make a file of megabytes otherwise. One that names another sheet is written out in every row:
 * spreadsheets that keep their formulas in the older binary form know no such formula that is shared. By the places of
 * the cells in their list.
 */
function sharedFormulas(cells: readonly LaidCell[]): readonly (Shared | undefined)[] {
  const shared = new Array<Shared | undefined>(cells.length);
  const lately: ((Shared & { readonly at: number }) | undefined)[] = [];
  let count = 0;
  for (const [at, cell] of cells.entries()) {
    if (!isFormulaAt(cell) || isUnlike(cell.row)) continue;
    const { row, column, content } = cell;
    const above = lately[column];
    if (above !== undefined && goesOn(above.last, row) && isFilledFrom(above.first, cell)) {
      above.last = row;
      above.number ??= count++;
      shared[at] = above;
      shared[above.at] = above;
      continue;
    }
    const text = content instanceof FilledFormula ? content.first : content.formula;
    lately[column] = text.includes('!') ? undefined : { first: cell, last: row, at };
  }
  return shared;
}

/** A formula's parts as they stand in XML. */
const inXml = new Map<string, FilledDown>();
const MOST_KEPT = 2000;

/** Functions that came after the file format, which stand in files under a longer name ([MS-XLSX] 2.2.2). */
const LATER = /\bISFORMULA(?=\()/g;

function partsInXml(formula: string): FilledDown {
  let parts = inXml.get(formula);
  if (parts === undefined) {
    const { texts, rows } = partsToFill(formula.replace(/^=/, '').replace(LATER, '_xlfn.$&'));
    if (inXml.size >= MOST_KEPT) inXml.clear();
    inXml.set(formula, (parts = { texts: texts.map(xmlText), rows }));
  }
  return parts;
}

/** A formula written out, as its element holds it. */
function formulaText(content: Formula): string {
  return content instanceof FilledFormula
    ? putTogether(partsInXml(content.first), content.rowsBelow)
    : putTogether(partsInXml(content.formula), 0);
}

function formulaElement(cell: FormulaAt, shared: Shared | undefined): string {
  if (shared === undefined) {
    const text = formulaText(cell.content);
    return isUnlike(cell.row) ? `<f>(${text})</f>` : `<f>${text}</f>`;
  }
  if (shared.first !== cell) return `<f t="shared" si="${shared.number}"/>`;
  const { row, column } = cell;
  const where = `${cellAddress(row, column)}:${cellAddress(shared.last, column)}`;
  return `<f t="shared" ref="${where}" si="${shared.number}">${formulaText(cell.content)}</f>`;
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

/** The rows in their order, those too that only have a height: where their cells begin in the list, and how many. */
function byRows(cells: readonly LaidCell[], heightsPt: NonNullable<SheetPlan['rowHeightsPt']>) {
  const rows = new Map<number, { readonly from: number; count: number }>(
    Object.keys(heightsPt).map((row) => [Number(row), { from: 0, count: 0 }]),
  );
  for (const [at, { row }] of cells.entries()) {
    const known = rows.get(row);
    if (known === undefined || known.count === 0) rows.set(row, { from: at, count: 1 });
    else known.count += 1;
  }
  return [...rows].sort(([one], [other]) => one - other);
}

/** `values` are what the formulas come to. */
export function sheetCells(
  { name, blocks, rowHeightsPt = {} }: SheetPlan,
  values: Calculated | undefined,
  shares: Shares,
): SheetCells {
  const [texts, unlike]: [Place[], Place[]] = [[], []];
  const [rows, columns] = [new Stretch(), new Stretch()];
  const cells = layBlocks(blocks);
  const shared = sharedFormulas(cells);
  const letters: string[] = [];

  const drawn = (cell: LaidCell, at: number): string => {
    const { row, column, content } = cell;
    const style = styleFor(content, cell.style);
    if (style.numberFormat === TEXT_FORMAT) texts.push({ row, column });
    const number = shares.style(style);
    const where = `${(letters[column] ??= columnLetters(column))}${row + 1}`;
    const head = number === 0 ? `<c r="${where}"` : `<c r="${where}" s="${number}"`;
    if (content === null) return number === 0 ? '' : `${head}/>`;
    rows.take(row);
    columns.take(column);
    if (isFormulaAt(cell)) {
      // The first row has none above it to differ from.
      if (row > 0 && isUnlike(row)) unlike.push({ row, column });
      const formula = formulaElement(cell, shared[at]);
      const value = values?.at(name, row, column) ?? undefined;
      if (value === undefined) return `${head}>${formula}</c>`;
      const [kind, text] = resultOf(value);
      return `${head}${kind}>${formula}<v>${text}</v></c>`;
    }
    if (typeof content === 'string') {
      return `${head} t="s"><v>${shares.text(escapeText(content))}</v></c>`;
    }
    if (typeof content === 'boolean') return `${head} t="b"><v>${content ? 1 : 0}</v></c>`;
    return typeof content === 'number' ? `${head}><v>${content}</v></c>` : '';
  };

  const data = [bytesOf('<sheetData>')];
  for (const [row, { from, count }] of byRows(cells, rowHeightsPt)) {
    const heightPt = rowHeightsPt[row];
    const height = heightPt === undefined ? '' : ` ht="${heightPt}" customHeight="1"`;
    const [first, last] = count === 0 ? [] : [cells[from], cells[from + count - 1]];
    const spans = last && first ? ` spans="${first.column + 1}:${last.column + 1}"` : '';
    let text = `<row r="${row + 1}"${height}${spans} x14ac:dyDescent="0.25">`;
    for (let at = from; at < from + count; at += 1) text += drawn(cells[at]!, at);
    data.push(bytesOf(`${text}</row>`));
  }
  data.push(bytesOf('</sheetData>'));
  return {
    data,
    dimension:
      rows.last < 0
        ? 'A1'
        : `${cellAddress(rows.first, columns.first)}:${cellAddress(rows.last, columns.last)}`,
    unmarked: { texts, unlike },
  };
}
