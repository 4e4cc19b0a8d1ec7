/** A plan's blocks laid over one another: what each cell finally holds, and in which format. */
import { area, type Area } from '../../sheets/plan/area';
import { contentOf, hasContent as holdsContent } from '../../sheets/plan/lay-blocks';
import type { CellContent, SheetPlan } from '../../sheets/plan/plan';
import { writtenText } from './written-text';

/** What Office takes for a cell; null leaves the cell as it is. */
export type Written = string | number | boolean | null;

/** A rectangle of contents or formats, ready to be assigned to a range in one go. */
export interface Write<T = Written> {
  readonly area: Area;
  readonly rows: readonly (readonly T[])[];
}

/** Excel's format code for cells that keep what is typed as text. */
const TEXT_FORMAT = '@';
const GENERAL_FORMAT = 'General';

export interface Composition {
  /** Number formats, to be assigned before any value: text formats decide how values are read. */
  readonly formats: readonly Write<string>[];
  /** Everything but formulas; where a formula will stand the cell is left alone. */
  readonly constants: readonly Write[];
  /** Formulas outside computed table columns, which may refer to tables; null between them. */
  readonly formulas: readonly Write[];
  /** What is typed over single cells of computed table columns, whose formula stands in all the others. */
  readonly overtyped: readonly Write[];
}

/** Lays a plan's blocks over one another in their order. Table headings lie on top. */
export function compose(plan: SheetPlan): Composition {
  const contents = new Map<string, CellContent>();
  const formats = new Map<string, string>();
  for (const block of plan.blocks) {
    const format = block.style?.numberFormat;
    for (const [row, column] of cellsOf(block.area)) {
      if (holdsContent(block)) {
        const [down, across] = [row - block.area.row, column - block.area.column];
        contents.set(key(row, column), contentOf(block, down, across));
      }
      if (format !== undefined) formats.set(key(row, column), format);
    }
  }

  const computed = new Set<string>();
  for (const [index, column] of (plan.table?.columns ?? []).entries()) {
    if (plan.table === undefined || column.formula === undefined) continue;
    for (const [row, at] of cellsOf(bodyColumn(plan.table.area, index))) computed.add(key(row, at));
  }

  const contentAt = (row: number, column: number) => contents.get(key(row, column)) ?? null;
  const isComputed = (row: number, column: number) => computed.has(key(row, column));
  const isFormula = (row: number, column: number) =>
    isComputed(row, column) || formulaIn(contentAt(row, column)) !== undefined;
  // A formula written into a cell formatted as text would stay on show as text.
  const formatAt = (row: number, column: number) => {
    const format = formats.get(key(row, column)) ?? GENERAL_FORMAT;
    return format === TEXT_FORMAT && isFormula(row, column) ? GENERAL_FORMAT : format;
  };
  const written = (row: number, column: number, value: string | number | boolean): Written =>
    typeof value === 'string' ? writtenText(value, formatAt(row, column) === TEXT_FORMAT) : value;
  const constantAt = (row: number, column: number): Written => {
    const content = contentAt(row, column) ?? '';
    if (isComputed(row, column) || typeof content === 'object') return null;
    return written(row, column, content);
  };
  const formulaAt = (row: number, column: number): Written =>
    isComputed(row, column) ? null : (formulaIn(contentAt(row, column)) ?? null);
  const overtypedAt = (row: number, column: number): Written => {
    const content = contentAt(row, column);
    if (!isComputed(row, column) || content === null) return null;
    return typeof content === 'object' ? content.formula : written(row, column, content);
  };

  const withCells = plan.blocks.filter(holdsContent).map((block) => block.area);
  const headings = plan.table === undefined ? [] : [headingWrite(plan.table)];
  return {
    formats: plan.blocks
      .filter((block) => block.style?.numberFormat !== undefined)
      .map((block) => filled(block.area, formatAt)),
    constants: [...withCells.map((of) => filled(of, constantAt)).filter(hasContent), ...headings],
    formulas: withCells.map((of) => filled(of, formulaAt)).filter(hasContent),
    overtyped: withCells.map((of) => filled(of, overtypedAt)).filter(hasContent),
  };

  function headingWrite(table: NonNullable<SheetPlan['table']>): Write {
    const of = { ...table.area, rows: 1, columns: table.columns.length };
    return filled(of, (row, column) =>
      writtenText(
        table.columns[column - of.column]?.heading ?? '',
        formatAt(row, column) === TEXT_FORMAT,
      ),
    );
  }
}

/** The cells of a table column under its heading. */
export function bodyColumn(table: Area, index: number): Area {
  return area(table.row + 1, table.column + index, table.rows - 1, 1);
}

function key(row: number, column: number): string {
  return `${row},${column}`;
}

function formulaIn(content: CellContent): string | undefined {
  return typeof content === 'object' && content !== null ? content.formula : undefined;
}

function hasContent(write: Write): boolean {
  return write.rows.some((row) => row.some((cell) => cell !== null));
}

function* cellsOf(of: Area): Generator<readonly [number, number]> {
  for (let row = of.row; row < of.row + of.rows; row += 1) {
    for (let column = of.column; column < of.column + of.columns; column += 1) yield [row, column];
  }
}

function filled<T>(of: Area, cellAt: (row: number, column: number) => T): Write<T> {
  return {
    area: of,
    rows: Array.from({ length: of.rows }, (_, row) =>
      Array.from({ length: of.columns }, (__, column) => cellAt(of.row + row, of.column + column)),
    ),
  };
}
