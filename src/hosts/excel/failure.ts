/** Turns what Office throws into one plain sentence for the person at the workbook. */

/** Codes of OfficeExtension.Error, from Excel.ErrorCodes and the Office error reference, in words of our own. */
const REASONS: Readonly<Record<string, string>> = {
  AccessDenied: 'the workbook or the sheet is protected; unprotect it on the Review tab first',
  InvalidOperationInCellEditMode: 'a cell is being edited; press Enter or Esc and try again',
  ItemAlreadyExists: 'a sheet, table or name of that name is there already',
  ItemNotFound: 'the sheet or the cells are no longer there',
  InvalidArgument: 'Excel refused a formula, a name or a setting of the sheet',
  InvalidReference: 'Excel could not find cells that the sheet refers to',
  InvalidOperation: 'Excel does not allow it at this moment; close any open dialog and try again',
  InvalidOperationInProtectedView:
    'the file is open in protected view; choose Enable Editing first',
  ApiNotFound: 'this version of Excel is too old for it',
  NotImplemented: 'this version of Excel cannot do it',
  UnsupportedFeature: 'this version of Excel cannot do it',
  UnsupportedOperation: 'Excel does not allow it in this workbook',
  UnsupportedSheet: 'the sheet in view has no cells',
  RangeExceedsLimit: 'the sheet has more cells than Excel hands over at once',
  RequestPayloadSizeLimitExceeded: 'it is more than Excel takes at once; insert fewer rows',
  ResponsePayloadSizeLimitExceeded: 'the sheet has more cells than Excel hands over at once',
  RequestAborted: 'Excel broke off; try again',
  Conflict: 'someone else changed the workbook at the same moment; try again',
  InactiveWorkbook: 'another workbook is in view; go back to this one and try again',
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
  if (words === '') return 'Excel gave no reason';
  return code === undefined ? words : `Excel says "${words}"`;
}

function codeOf(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null || !('code' in error)) return undefined;
  return typeof error.code === 'string' ? error.code : undefined;
}

/** An Error for the pane: what could not be done, and why. The cause stays with it for the console. */
export function failure(what: string, cause: unknown): Error {
  return new Error(`${what}: ${reasonOf(cause)}.`, { cause });
}
