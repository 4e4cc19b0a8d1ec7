/** The grid's workbook as a text that can be put away, and back: sheets, names, rules of entry, conditional formats. */
import {
  IResourceManagerService,
  UniverInstanceType,
  type ICellData,
  type IWorkbookData,
} from '@univerjs/core';
import type { Grid } from './grid';
import { isPlanned, PLANNED } from './standing-sheets';

/** Raised whenever an older text could no longer be opened. */
const FORM = 1;

/** A workbook as it was put away. */
export interface KeptWorkbook {
  readonly workbook: Partial<IWorkbookData>;
  /** The sheet that was in view. */
  readonly inView: string;
}

/**
 * The workbook as it stands. What formulas come to is in it too, but is not to be trusted: a calculation may be under way.
 * The grid's own way makes a copy of it all first.
 */
export function keptText({ univer, workbook }: Grid): string {
  const resources = univer
    .__getInjector()
    .get(IResourceManagerService)
    .getResources(workbook.getId(), UniverInstanceType.UNIVER_SHEET);
  return JSON.stringify({
    form: FORM,
    inView: workbook.getActiveSheet().getSheetId(),
    workbook: { ...workbook.getWorkbook().getSnapshot(), resources },
  });
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Reads a kept text; throws an Error with a sentence where it is none, or of another form. */
export function readKept(text: string): KeptWorkbook {
  let kept: unknown;
  try {
    kept = JSON.parse(text);
  } catch (cause) {
    throw new Error('it is damaged', { cause });
  }
  if (!isObject(kept)) throw new Error('it is no workbook');
  const { form, inView, workbook } = kept;
  if (form !== FORM) throw new Error('another version of this page wrote it');
  if (!isObject(workbook) || typeof inView !== 'string') throw new Error('it is no workbook');
  const { sheets, sheetOrder } = workbook;
  const isWhole =
    isObject(sheets) &&
    Array.isArray(sheetOrder) &&
    sheetOrder.length > 0 &&
    sheetOrder.every((id) => isObject(sheets[String(id)]));
  if (!isWhole) throw new Error('sheets are missing in it');
  return { workbook: asPlanned(workbook), inView };
}

type Sheets = NonNullable<IWorkbookData['sheets']>;
type Cells = Record<string, Record<string, ICellData | null> | null>;

/** The id that cells share whose formula a plan fills down. */
const FILL = /^fill \d+$/;

/**
 * Earlier versions of this page did not say which sheets a plan had laid out, which are calculated otherwise. All sheets of
 * a workbook that has some count as such: they come to the same, and only sooner.
 */
function asPlanned(workbook: Partial<IWorkbookData>): Partial<IWorkbookData> {
  const sheets = Object.entries(workbook.sheets ?? {});
  const isFilled = ({ cellData }: Sheets[string]) =>
    Object.values((cellData ?? {}) as Cells).some((row) =>
      Object.values(row ?? {}).some((cell) => FILL.test(cell?.si ?? '')),
    );
  if (sheets.some(([, sheet]) => isPlanned(sheet))) return workbook;
  if (!sheets.some(([, sheet]) => isFilled(sheet))) return workbook;
  const planned = sheets.map(([id, sheet]) => [
    id,
    { ...sheet, custom: { ...sheet.custom, ...PLANNED } },
  ]);
  return { ...workbook, sheets: Object.fromEntries(planned) as Sheets };
}
