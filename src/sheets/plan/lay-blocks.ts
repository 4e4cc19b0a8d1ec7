/** A plan's blocks laid over one another, once for all hosts: what each cell finally holds, and how it looks. */
import { filledDown } from './fill-down';
import type { Block, CellContent, CellStyle } from './plan';

/** Whether a block says what its cells hold, or only how they look. */
export function hasContent({ cells, fill }: Block): boolean {
  return cells !== undefined || fill !== undefined;
}

/** What a block puts into one of its cells, by rows and columns from its first: what is given, or the filled formula. */
export function contentOf({ cells, fill }: Block, down: number, across: number): CellContent {
  const given = cells?.[down]?.[across] ?? null;
  if (given !== null) return given;
  const formula = fill?.[across] ?? null;
  if (formula === null) return null;
  return {
    // Long formulas in thousands of rows: written out for those who ask.
    get formula() {
      return filledDown(formula)(down);
    },
  };
}

/** Where a formula comes from that is filled down. */
export interface FilledFrom {
  /** As it is written for the first row. */
  readonly formula: string;
  readonly rowsBelow: number;
}

interface Layers {
  readonly content: CellContent;
  readonly style: CellStyle;
  /** Of a formula that its block fills down. */
  readonly filled?: FilledFrom | undefined;
}

export interface LaidCell extends Layers {
  readonly row: number;
  readonly column: number;
}

/** The formula of a block that stands in one of its cells, where nothing else is given. */
function filledFrom({ cells, fill }: Block, down: number, across: number): FilledFrom | undefined {
  const formula = fill?.[across] ?? null;
  return formula === null || (cells?.[down]?.[across] ?? null) !== null
    ? undefined
    : { formula, rowsBelow: down };
}

type LaidRow = Map<number, Layers>;

const UNSTYLED: CellStyle = {};

/** Every cell that a block touches, row by row. A later block's content and each field of its style win. */
export function layBlocks(blocks: readonly Block[]): readonly LaidCell[] {
  const rows = new Map<number, LaidRow>();
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
    for (let row = area.row; row < area.row + area.rows; row += 1) {
      let columns = rows.get(row);
      if (columns === undefined) rows.set(row, (columns = new Map<number, Layers>()));
      for (let column = area.column; column < area.column + area.columns; column += 1) {
        const below = columns.get(column) ?? { content: null, style: UNSTYLED };
        const [down, across] = [row - area.row, column - area.column];
        columns.set(column, {
          content: isContent ? contentOf(block, down, across) : below.content,
          style: style === undefined ? below.style : over(below.style, style),
          filled: isContent ? filledFrom(block, down, across) : below.filled,
        });
      }
    }
  }
  return [...rows]
    .sort(([a], [b]) => a - b)
    .flatMap(([row, columns]) =>
      [...columns]
        .sort(([a], [b]) => a - b)
        .map(([column, layers]) => ({ row, column, ...layers })),
    );
}
