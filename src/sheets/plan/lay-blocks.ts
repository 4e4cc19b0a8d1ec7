/** A plan's blocks laid over one another, once for all hosts: what each cell finally holds, and how it looks. */
import { filledDown } from './fill-down';
import type { Block, CellContent, CellStyle, Formula } from './plan';

/** Whether a block says what its cells hold, or only how they look. */
export function hasContent({ cells, fill }: Block): boolean {
  return cells !== undefined || fill !== undefined;
}

/** A formula that is filled down: long ones stand in thousands of rows, and are written out for those who ask. */
export class FilledFormula implements Formula {
  constructor(
    /** As it is written for the first row. */
    readonly first: string,
    readonly rowsBelow: number,
  ) {}

  get formula(): string {
    return filledDown(this.first)(this.rowsBelow);
  }
}

/** What a block puts into one of its cells, by rows and columns from its first: what is given, or the filled formula. */
export function contentOf({ cells, fill }: Block, down: number, across: number): CellContent {
  const given = cells?.[down]?.[across] ?? null;
  if (given !== null) return given;
  const formula = fill?.[across] ?? null;
  return formula === null ? null : new FilledFormula(formula, down);
}

export interface LaidCell {
  readonly row: number;
  readonly column: number;
  readonly content: CellContent;
  readonly style: CellStyle;
}

/** A cell while blocks are still laid over it. */
type Cell = { -readonly [Field in keyof LaidCell]: LaidCell[Field] };

const UNSTYLED: CellStyle = {};

/** Every cell that a block touches, row by row. A later block's content and each field of its style win. */
export function layBlocks(blocks: readonly Block[]): readonly LaidCell[] {
  const rows: (Cell | undefined)[][] = [];
  // Thousands of cells share one look; merging each pair of looks once keeps them one object.
  const merged = new Map<CellStyle, Map<CellStyle, CellStyle>>();
  const over = (below: CellStyle, above: CellStyle): CellStyle => {
    let ofBelow = merged.get(below);
    if (ofBelow === undefined) merged.set(below, (ofBelow = new Map<CellStyle, CellStyle>()));
    let both = ofBelow.get(above);
    if (both === undefined) ofBelow.set(above, (both = { ...below, ...above }));
    return both;
  };

  for (const block of blocks) {
    const { area, style } = block;
    const isContent = hasContent(block);
    for (let down = 0; down < area.rows; down += 1) {
      const row = area.row + down;
      const columns = (rows[row] ??= []);
      for (let across = 0; across < area.columns; across += 1) {
        const column = area.column + across;
        const cell = (columns[column] ??= { row, column, content: null, style: UNSTYLED });
        if (isContent) cell.content = contentOf(block, down, across);
        if (style !== undefined) cell.style = over(cell.style, style);
      }
    }
  }
  return rows.flatMap((columns) => columns.filter((cell) => cell !== undefined));
}
