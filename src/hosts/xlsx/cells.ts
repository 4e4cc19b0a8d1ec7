/**
 * The cells of a sheet as its file has them (ECMA-376 part 1, 18.3.1.80, sheetData). The library would keep an object for
 * each of tens of thousands, and read and write each of their long formulas several times.
 */
import { CellError, type ResultCell } from '../../functions/cell';
import { escapeText } from '../../lists/escape';
import type { Calculated } from '../../sheets/calculate/calculate';
import { cellAddress, columnLetters } from '../../sheets/plan/area';
import { filledDown, partsToFill } from '../../sheets/plan/fill-down';
import { FilledFormula, layBlocks, type LaidCell } from '../../sheets/plan/lay-blocks';
import type { CellContent, CellStyle, Formula, SheetPlan } from '../../sheets/plan/plan';
import type { Place, UnmarkedCells } from './ignored-errors';
import { xmlText } from '../../sheets/plan/xml-text';
import { bytesOf, XmlBytes, type Bytes } from './xml';

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
  readonly data: Bytes;
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

/**
 * Formulas that are filled down, each written out once: the cells below say that they share it. The long ones of a copy
 * without the add-in make a file of megabytes otherwise. One that names another sheet is written out in every row, since
 * the older format of workbooks knew no such formula that is shared.
 */
function sharedFormulas(cells: readonly LaidCell[]): ReadonlyMap<LaidCell, Shared> {
  const shared = new Map<LaidCell, Shared>();
  const lately: (Shared | undefined)[] = [];
  let count = 0;
  for (const cell of cells) {
    if (!isFormulaAt(cell)) continue;
    const { row, column, content } = cell;
    const above = lately[column];
    if (above?.last === row - 1 && !isUnlike(row) && isFilledFrom(above.first, cell)) {
      above.last = row;
      above.number ??= count++;
      shared.set(cell, above).set(above.first, above);
      continue;
    }
    const text = content instanceof FilledFormula ? content.first : content.formula;
    lately[column] = isUnlike(row) || text.includes('!') ? undefined : { first: cell, last: row };
  }
  return shared;
}

/** A formula's parts as they stand in XML. */
interface Parts {
  readonly texts: readonly Bytes[];
  readonly rows: readonly number[];
}

/** Writes formulas, each taken apart once for all of its rows. */
class FormulaWriter {
  private readonly parts = new Map<string, Parts>();
  /** The numbers of rows, by themselves. */
  private readonly numbers: Bytes[] = [];

  constructor(
    private readonly xml: XmlBytes,
    private readonly shared: ReadonlyMap<LaidCell, Shared>,
  ) {}

  write(cell: FormulaAt): void {
    const shared = this.shared.get(cell);
    if (shared === undefined) {
      this.xml.text(isUnlike(cell.row) ? '<f>(' : '<f>');
      this.formula(cell.content);
      this.xml.text(isUnlike(cell.row) ? ')</f>' : '</f>');
    } else if (shared.first === cell) {
      const { row, column } = cell;
      const where = `${cellAddress(row, column)}:${cellAddress(shared.last, column)}`;
      this.xml.text(`<f t="shared" ref="${where}" si="${shared.number}">`);
      this.formula(cell.content);
      this.xml.text('</f>');
    } else {
      this.xml.text(`<f t="shared" si="${shared.number}"/>`);
    }
  }

  private formula(content: Formula): void {
    const [text, rowsBelow] =
      content instanceof FilledFormula ? [content.first, content.rowsBelow] : [content.formula, 0];
    const { texts, rows } = this.partsOf(text);
    this.xml.copy(texts[0]!);
    for (let index = 0; index < rows.length; index += 1) {
      const row = rows[index]! + rowsBelow;
      this.xml.copy((this.numbers[row] ??= bytesOf(String(row))));
      this.xml.copy(texts[index + 1]!);
    }
  }

  private partsOf(formula: string): Parts {
    let parts = this.parts.get(formula);
    if (parts === undefined) {
      const { texts, rows } = partsToFill(formula.replace(/^=/, ''));
      parts = { texts: texts.map((text) => bytesOf(xmlText(text))), rows };
      this.parts.set(formula, parts);
    }
    return parts;
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

/** The rows in their order, those too that only have a height. */
function byRows(cells: readonly LaidCell[], heightsPt: NonNullable<SheetPlan['rowHeightsPt']>) {
  const rows = new Map<number, LaidCell[]>(Object.keys(heightsPt).map((row) => [Number(row), []]));
  for (const cell of cells) {
    const known = rows.get(cell.row);
    if (known === undefined) rows.set(cell.row, [cell]);
    else known.push(cell);
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
  const xml = new XmlBytes();
  const cells = layBlocks(blocks);
  const formulas = new FormulaWriter(xml, sharedFormulas(cells));
  const letters: string[] = [];

  const drawCell = (cell: LaidCell): void => {
    const { row, column, content } = cell;
    const style = styleFor(content, cell.style);
    if (style.numberFormat === TEXT_FORMAT) texts.push({ row, column });
    const number = shares.style(style);
    const where = `${(letters[column] ??= columnLetters(column))}${row + 1}`;
    const head = `<c r="${where}"${number === 0 ? '' : ` s="${number}"`}`;
    if (content === null) {
      if (number !== 0) xml.text(`${head}/>`);
      return;
    }
    rows.take(row);
    columns.take(column);
    if (isFormulaAt(cell)) {
      // The first row has none above it to differ from.
      if (row > 0 && isUnlike(row)) unlike.push({ row, column });
      const value = values?.at(name, row, column) ?? undefined;
      const [kind, text] = value === undefined ? ['', undefined] : resultOf(value);
      xml.text(`${head}${kind}>`);
      formulas.write(cell);
      xml.text(text === undefined ? '</c>' : `<v>${text}</v></c>`);
    } else if (typeof content === 'string') {
      xml.text(`${head} t="s"><v>${shares.text(escapeText(content))}</v></c>`);
    } else if (typeof content === 'boolean') {
      xml.text(`${head} t="b"><v>${content ? 1 : 0}</v></c>`);
    } else if (typeof content === 'number') {
      xml.text(`${head}><v>${content}</v></c>`);
    }
  };

  xml.text('<sheetData>');
  for (const [row, inRow] of byRows(cells, rowHeightsPt)) {
    const heightPt = rowHeightsPt[row];
    const height = heightPt === undefined ? '' : ` ht="${heightPt}" customHeight="1"`;
    const [first] = inRow;
    const last = inRow.at(-1) ?? first;
    const spans = last && first ? ` spans="${first.column + 1}:${last.column + 1}"` : '';
    xml.text(`<row r="${row + 1}"${height}${spans} x14ac:dyDescent="0.25">`);
    inRow.forEach(drawCell);
    xml.text('</row>');
  }
  xml.text('</sheetData>');
  return {
    data: xml.written,
    dimension:
      rows.last < 0
        ? 'A1'
        : `${cellAddress(rows.first, columns.first)}:${cellAddress(rows.last, columns.last)}`,
    unmarked: { texts, unlike },
  };
}
