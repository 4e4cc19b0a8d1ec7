/** What comes from outside takes the look of the cells that it lands in, as text that is typed there does. */
import {
  CellValueType,
  isTextFormat,
  IUniverInstanceService,
  type ICellData,
  type Univer,
  type Workbook,
} from '@univerjs/core';
import {
  ISheetClipboardService,
  PREDEFINED_HOOK_NAME_PASTE,
  type ISheetClipboardHook,
} from '@univerjs/preset-sheets-core';
import {
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
  type ISetRangeValuesMutationParams,
} from '@univerjs/sheets';

/** The grid's clipboard, with the parts that it keeps to itself. */
interface InnerClipboard {
  _pasteExternal(html: string, pasteType: string): Promise<boolean>;
  _pastePlainText(text: string, pasteType: string): Promise<boolean>;
}

const { DEFAULT_PASTE, SPECIAL_PASTE_VALUE } = PREDEFINED_HOOK_NAME_PASTE;

/** One cell's text, as the grid takes a table of one cell. */
function asTable(text: string): string {
  const table = document.createElement('table');
  table.insertRow().insertCell().textContent = text;
  return table.outerHTML;
}

const PER_CENT = /^\s*(\d+(?:[.,]\d+)?)\s*%\s*$/;

/** A figure of per cent, which the grid would leave as text; undefined for any other content. */
function perCent(content: unknown): number | undefined {
  const figure = typeof content === 'string' ? PER_CENT.exec(content)?.[1] : undefined;
  // The digits are moved, so that 5.5 % is 0.055 and not a hair beside it.
  return figure === undefined ? undefined : Number(`${figure.replace(',', '.')}e-2`);
}

/** Behind all that the grid itself does with what is pasted. */
const LAST = 1000;

/** Figures of per cent among pasted texts, as the last word on their cells. */
function perCentHook(univer: Univer): ISheetClipboardHook {
  const injector = univer.__getInjector();
  return {
    id: 'loom-per-cent',
    priority: LAST,
    onPasteCells(from, { unitId, subUnitId, range }, data, { pasteType }) {
      const none = { redos: [], undos: [] };
      const sheet = injector
        .get(IUniverInstanceService)
        .getUnit<Workbook>(unitId)
        ?.getSheetBySheetId(subUnitId);
      if (from !== null || pasteType !== SPECIAL_PASTE_VALUE) return none;
      const cellValue: Record<number, Record<number, ICellData>> = {};
      data.forValue((down, across, { v }) => {
        const [row, column] = [range.rows[down], range.cols[across]];
        const figure = perCent(v);
        if (figure === undefined || row === undefined || column === undefined) return;
        if (isTextFormat(sheet?.getCellStyle(row, column)?.n?.pattern)) return;
        const t = CellValueType.NUMBER;
        (cellValue[row] ??= {})[column] = { v: figure, t, f: null, si: null, p: null };
      });
      if (Object.keys(cellValue).length === 0) return none;
      const { id } = SetRangeValuesMutation;
      const params: ISetRangeValuesMutationParams = { unitId, subUnitId, cellValue };
      const back = SetRangeValuesUndoMutationFactory(injector, params);
      return { redos: [{ id, params }], undos: [{ id, params: back }] };
    },
  };
}

/**
 * Makes the grid (0.25.1) paste what was copied elsewhere as values: it brought the type of its own default along, took the
 * fill of the cells away, and made a time of day of `5 A` in a cell of text. To be called when there is a workbook.
 */
export function pasteAsTyped(univer: Univer): void {
  const service = univer.__getInjector().get(ISheetClipboardService);
  service.addClipboardHook(perCentHook(univer));
  const clipboard = service as unknown as InnerClipboard;
  const pasteTable = clipboard._pasteExternal.bind(clipboard);
  clipboard._pasteExternal = (html, pasteType) =>
    pasteTable(html, pasteType === DEFAULT_PASTE ? SPECIAL_PASTE_VALUE : pasteType);
  const pasteText = clipboard._pastePlainText.bind(clipboard);
  clipboard._pastePlainText = (text, pasteType) =>
    /[\r\n]/.test(text) || text.startsWith('=') || text.trim() === ''
      ? pasteText(text, pasteType)
      : clipboard._pasteExternal(asTable(text), pasteType);
}
