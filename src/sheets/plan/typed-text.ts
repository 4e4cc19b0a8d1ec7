/** Numbers in text cells, for spreadsheets that take them for text there: as text of ours they stay the same numbers. */
import type { Block, CellContent, SheetPlan } from './plan';
import { plainDigits } from './plain-digits';

const TEXT_FORMAT = '@';

const asText = (content: CellContent): CellContent =>
  typeof content === 'number' ? plainDigits(content) : content;

/** The plan with every number of a text block written out. */
export function withNumbersAsText(plan: SheetPlan): SheetPlan {
  return {
    ...plan,
    blocks: plan.blocks.map((block): Block =>
      block.cells === undefined || block.style?.numberFormat !== TEXT_FORMAT
        ? block
        : { ...block, cells: block.cells.map((row) => row.map(asText)) },
    ),
  };
}
