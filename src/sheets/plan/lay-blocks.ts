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
  return formula === null ? null : { formula: filledDown(formula)(down) };
}

export interface LaidCell {
  readonly row: number;
  readonly column: number;
  readonly content: CellContent;
  readonly style: CellStyle;
}

interface Layers {
  readonly content: CellContent;
  readonly style: CellStyle;
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
        columns.set(column, {
          content: isContent
            ? contentOf(block, row - area.row, column - area.column)
            : below.content,
          style: style === undefined ? below.style : over(below.style, style),
        });
      }
    }
  }
  return [...rows]
    .sort(([a], [b]) => a - b)
    .flatMap(([row, columns]) =>
      [...columns]
        .sort(([a], [b]) => a - b)
        .map(([column, { content, style }]) => ({ row, column, content, style })),
    );
}
