/** Which block of a plan a cell belongs to: later blocks lie over earlier ones. */
import type { Area } from '../../sheets/plan/area';
import { contentOf, hasContent } from '../../sheets/plan/lay-blocks';
import type { Block, CellContent, SheetPlan } from '../../sheets/plan/plan';

/** Excel's format code for cells that keep what is typed as text. */
export const TEXT_FORMAT = '@';

export function covers(of: Area, row: number, column: number): boolean {
  return (
    row >= of.row &&
    row < of.row + of.rows &&
    column >= of.column &&
    column < of.column + of.columns
  );
}

function meets(one: Area, other: Area): boolean {
  return (
    one.row < other.row + other.rows &&
    other.row < one.row + one.rows &&
    one.column < other.column + other.columns &&
    other.column < one.column + one.columns
  );
}

/** A block that says what cells hold, with those that lie over it or give its cells their format. */
export interface ContentLayer {
  readonly block: Block;
  /** The content of a cell where this block decides it; undefined where a later one does. */
  readonly contentAt: (row: number, column: number) => CellContent | undefined;
  readonly isText: (row: number, column: number) => boolean;
}

/** The blocks of a plan that give cells their content, in their order. */
export function contentLayers({ blocks }: SheetPlan): readonly ContentLayer[] {
  const withContent = blocks.filter(hasContent);
  const withFormat = blocks.filter(({ style }) => style?.numberFormat !== undefined);
  return withContent.map((block, index): ContentLayer => {
    const { area } = block;
    const above = withContent.slice(index + 1).filter((later) => meets(later.area, area));
    const formats = withFormat.filter((other) => meets(other.area, area)).reverse();
    return {
      block,
      contentAt(row, column) {
        if (above.some((later) => covers(later.area, row, column))) return undefined;
        return contentOf(block, row - area.row, column - area.column);
      },
      isText(row, column) {
        const decides = formats.find((other) => covers(other.area, row, column));
        return decides?.style?.numberFormat === TEXT_FORMAT;
      },
    };
  });
}

/** Whether a cell holds a formula or a number, which a text format would change as they are written. */
export function notTextCells(
  layers: readonly ContentLayer[],
  within: Area,
): (row: number, column: number) => boolean {
  const there = layers.filter(({ block }) => meets(block.area, within));
  return (row, column) =>
    there.some(({ block, contentAt }) => {
      if (!covers(block.area, row, column)) return false;
      const content = contentAt(row, column);
      return typeof content === 'number' || (typeof content === 'object' && content !== null);
    });
}
