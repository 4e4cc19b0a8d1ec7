/** A plan's blocks laid over one another: what each cell finally holds, and how it looks. */
import type { Block, CellContent, CellStyle } from '../../sheets/plan/plan';

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

  for (const { area, cells, style } of blocks) {
    for (let row = area.row; row < area.row + area.rows; row += 1) {
      let columns = rows.get(row);
      if (columns === undefined) rows.set(row, (columns = new Map<number, Layers>()));
      for (let column = area.column; column < area.column + area.columns; column += 1) {
        const below = columns.get(column) ?? { content: null, style: UNSTYLED };
        const content =
          cells === undefined
            ? below.content
            : (cells[row - area.row]?.[column - area.column] ?? null);
        columns.set(column, {
          content,
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

const UNSTYLED: CellStyle = {};
