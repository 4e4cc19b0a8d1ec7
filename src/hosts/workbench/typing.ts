/** What a person is typing, kept while the grid calculates: a fault of its cell editor, put right. */
import type { Univer } from '@univerjs/core';
import { IEditorBridgeService } from '@univerjs/preset-sheets-core';

/**
 * Keeps a cell's text while it is typed. The grid (0.25.1) takes the stored content into the open editor whenever results
 * of a calculation come to the same row and column, on whichever sheet: all that was typed so far is gone, without a word.
 * To be called when there is a workbook.
 */
export function keepWhatIsTyped(univer: Univer): void {
  const editor = univer.__getInjector().get(IEditorBridgeService);
  const takeStored = editor.refreshEditCellState.bind(editor);
  editor.refreshEditCellState = () => {
    if (!editor.isVisible().visible) takeStored();
  };
}
