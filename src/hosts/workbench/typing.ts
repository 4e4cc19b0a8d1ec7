/** Where keys go in the grid: faults of its cell editor, put right. */
import { DOCS_NORMAL_EDITOR_UNIT_ID_KEY, type Univer } from '@univerjs/core';
import {
  DocSelectionRenderService,
  IEditorBridgeService,
  IRenderManagerService,
} from '@univerjs/preset-sheets-core';

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

/** Whether a person is in a field or at a button beside the grid. */
function keysAreBeside(container: HTMLElement): boolean {
  const focused = document.activeElement;
  return (
    focused instanceof HTMLElement &&
    focused !== document.body &&
    !container.contains(focused) &&
    // The grid's own fields stand outside its element.
    focused.dataset['uComp'] === undefined
  );
}

/**
 * Leaves the keys where a person has put them. The grid (0.25.1) takes them the first time that a cell is selected, also by
 * itself: half a second after the page has opened, in the middle of a word that is being typed beside it. To be called when
 * there is a workbook.
 */
export function leaveKeysBeside(univer: Univer, container: HTMLElement): void {
  const injector = univer.__getInjector();
  const editor = injector.get(IEditorBridgeService);
  const setCell = editor.setEditCell.bind(editor);
  let isPressed = false;
  container.addEventListener('pointerdown', () => (isPressed = true), { capture: true });
  window.addEventListener('pointerup', () => (isPressed = false), { capture: true });
  editor.setEditCell = (cell) => {
    const field = injector
      .get(IRenderManagerService)
      .getRenderById(DOCS_NORMAL_EDITOR_UNIT_ID_KEY)
      ?.with(DocSelectionRenderService);
    if (field === undefined || isPressed || !keysAreBeside(container)) {
      setCell(cell);
      return;
    }
    // For this once, in front of the method of its class.
    field.focus = () => undefined;
    try {
      setCell(cell);
    } finally {
      Reflect.deleteProperty(field, 'focus');
    }
  };
}
