/** Turns what Office throws into one plain sentence for the person at the workbook. */

const BUSY = 'Excel does not allow it at this moment; close any open dialog and try again';
const TOO_OLD = 'this version of Excel cannot do it; update Office, or use Excel on the web';
const TOO_MANY_CELLS =
  'the sheet has more cells than Excel hands over at once; delete what is not needed, or move it to another workbook';
const TOO_MUCH = 'it is more than Excel takes at once; insert a shorter list';
const GONE =
  'the sheet or the cells are no longer there; bring the right sheet into view and try again';
const IN_THE_WAY = 'merged, filtered or table cells are in the way; try again on another sheet';
const NOT_OURS = 'Excel gave a reason that belongs to another kind of command; try again';

/** Codes of OfficeExtension.Error, from Excel.ErrorCodes and the Office error reference, in words of our own. */
export const REASONS: Readonly<Record<string, string>> = {
  AccessDenied:
    'the workbook or the sheet is protected or opened for reading only; unprotect it on the Review tab, or save a copy of your own',
  ActivityLimitReached: 'Excel is busy with too many commands; wait a moment and try again',
  ApiNotFound: TOO_OLD,
  ApiNotAvailable: TOO_OLD,
  BadPassword: 'the workbook or the sheet is protected by a password; unprotect it first',
  CellsExceedLimit: TOO_MUCH,
  Conflict: 'someone else changed the workbook at the same moment; try again',
  ContentLengthRequired: 'Excel refused the request; try again',
  DirtySupportingFormula: 'a formula that it rests on is not calculated; calculate, then try again',
  EmptyChartSeries: NOT_OURS,
  FilteredRangeConflict: IN_THE_WAY,
  FormulaLengthExceedsLimit: 'a formula is longer than Excel takes; please report this',
  GeneralException:
    'Excel met an internal error; try again, and if it comes back save the workbook and start Excel anew',
  InactiveWorkbook: 'another workbook is in view; go back to this one and try again',
  InsertDeleteConflict: 'cells were being inserted or deleted at the same moment; try again',
  InvalidArgument: 'Excel refused a formula, a name or a setting of the sheet; please report this',
  InvalidBinding: NOT_OURS,
  InvalidOperation: BUSY,
  InvalidOperationInCellEditMode: 'a cell is being edited; press Enter or Esc and try again',
  InvalidOperationInProtectedView:
    'the file is open in protected view; choose Enable Editing first',
  InvalidReference: 'Excel could not find cells that the sheet refers to; try again',
  InvalidRequest: 'Excel could not read the request; try again',
  InvalidSelection: 'Excel cannot work with what is selected; select one cell and try again',
  ItemAlreadyExists:
    'a sheet, table or name of that name is there already; rename the other one, or try again',
  ItemNotFound: GONE,
  MergedRangeConflict: IN_THE_WAY,
  NonBlankCellOffSheet: 'there is no room left on the sheet; delete rows or columns at its end',
  NotImplemented: TOO_OLD,
  OpenWorkbookLinksBlocked: NOT_OURS,
  OperationCellsExceedLimit: TOO_MUCH,
  PivotTableRangeConflict: IN_THE_WAY,
  PowerQueryRefreshResourceChallenge: NOT_OURS,
  RangeExceedsLimit: TOO_MANY_CELLS,
  RangeImageExceedsLimit: NOT_OURS,
  RefreshWorkbookLinksBlocked: NOT_OURS,
  RequestAborted: 'Excel broke off before it was done; try again',
  RequestPayloadSizeLimitExceeded: TOO_MUCH,
  ResponsePayloadSizeLimitExceeded: TOO_MANY_CELLS,
  ServiceNotAvailable: 'Excel cannot be reached; check the connection and try again',
  Timeout: 'Excel did not answer in time; wait until it has calculated and try again',
  TooManyIncompleteRequests: 'Excel is busy with other requests; wait a moment and try again',
  Unauthenticated: 'Excel no longer knows who is signed in; sign in again',
  UnsupportedFeature: TOO_OLD,
  UnsupportedFillType: NOT_OURS,
  UnsupportedOperation:
    'Excel does not allow it in this workbook; save a copy as .xlsx and try there',
  UnsupportedSheet:
    'the sheet in view is a chart and has no cells; bring a sheet with cells into view',
};

/**
 * Why something failed, as the end of a sentence, without a full stop. An Office code that is not listed keeps Excel's
 * own words, an error of ours its own.
 */
export function reasonOf(error: unknown): string {
  const code = codeOf(error);
  const known = code === undefined ? undefined : REASONS[code];
  if (known !== undefined) return known;
  const words = error instanceof Error ? error.message.trim().replace(/\.$/, '') : '';
  if (words === '') return 'Excel gave no reason; try again';
  return code === undefined ? words : `Excel says "${words}"`;
}

/**
 * Codes after which nobody knows whether Excel did what it was asked: its answer was lost, or it broke off somewhere. The
 * others name the command that Excel refused.
 */
const NO_ANSWER: ReadonlySet<string> = new Set([
  'GeneralException',
  'RequestAborted',
  'ResponsePayloadSizeLimitExceeded',
  'ServiceNotAvailable',
  'Timeout',
]);

/** Whether Excel said that it does not do it; what it may have done all the same is not refused. */
export function isRefusal(error: unknown): boolean {
  const code = codeOf(error);
  return code !== undefined && code in REASONS && !NO_ANSWER.has(code);
}

/** The code of an OfficeExtension.Error; undefined for any other. */
export function codeOf(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}

/** How a failure is told: what was not done, and what is said where it may have been done all the same. */
export interface Failing {
  readonly refused: string;
  readonly unknown: string;
}

/** An Error for the pane: what could not be done, and why. The cause stays with it for the console. */
export function failure(what: string | Failing, cause: unknown): Error {
  const said = typeof what === 'string' ? what : isRefusal(cause) ? what.refused : what.unknown;
  return new Error(`${said}: ${reasonOf(cause)}.`, { cause });
}

/** What an action gives, or an Error whose message says what failed and why. One that only reads is told by a string. */
export async function told<T>(what: string | Failing, action: () => Promise<T>): Promise<T> {
  try {
    return await action();
  } catch (error) {
    throw failure(what, error);
  }
}
