/** What the status line says of the selected cell: why it is an error, or what belongs into it. */
import { DataValidationErrorStyle, DataValidationStatus } from '@univerjs/core';
import { SheetDataValidationModel } from '@univerjs/preset-sheets-data-validation';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { cellAddress, quotedSheetName } from '../../sheets/plan/area';
import { ERROR_CODES } from '../../functions/cell';
import { causeOf } from './cause';
import type { Grid } from './grid';
import { readCell } from './read';

export interface CellStatus {
  readonly kind: 'error' | 'hint' | 'nothing';
  readonly text: string;
}

/** Errors of the grid's own formulas, in words. */
const PLAIN_REASONS: Readonly<Record<string, string>> = {
  '#VALUE!': 'a value here is of the wrong kind',
  '#N/A': 'no answer exists',
  '#DIV/0!': 'a division by zero or by a blank cell',
  '#NUM!': 'a number that cannot be computed',
  '#NULL!': 'two ranges that do not meet',
  '#NAME?': 'a name or function that this workbook does not know',
  '#REF!': 'a cell that is no longer there',
  '#SPILL!': 'cells that the result needs are not empty',
  '#CYCLE!': 'the formula depends on itself',
  '#CALC!': 'a calculation that has no result',
};

const KNOWN_ERRORS: ReadonlySet<string> = new Set([...ERROR_CODES, ...Object.keys(PLAIN_REASONS)]);

function reason(grid: Grid, sheet: FWorksheet, row: number, column: number, code: string): string {
  const cause = causeOf(grid, { sheet, row, column }, code);
  if (cause === null) return PLAIN_REASONS[code] ?? '';
  const sameSheet = cause.sheet.getSheetId() === sheet.getSheetId();
  if (sameSheet && cause.row === row && cause.column === column) return cause.sentence;
  const address = cellAddress(cause.row, cause.column);
  const where = sameSheet ? address : `${quotedSheetName(cause.sheet.getSheetName())}!${address}`;
  return `from ${where}: ${cause.sentence}`;
}

/** A cell by its sheet's id and its zero-based position. */
export interface CellPlace {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

/** The selected cell. */
export function selectedPlace({ workbook }: Grid): CellPlace | null {
  const range = workbook.getActiveCell();
  if (range === null) return null;
  const sheetId = workbook.getActiveSheet().getSheetId();
  return { sheetId, row: range.getRow(), column: range.getColumn() };
}

/** What a cell's rule of entry has against its content, in a sentence; null where it takes it. */
function objection(grid: Grid, sheet: FWorksheet, row: number, column: number): string | null {
  const rules = grid.univer.__getInjector().get(SheetDataValidationModel);
  const [unitId, subUnitId] = [grid.workbook.getId(), sheet.getSheetId()];
  const rule = rules.getRuleByLocation(unitId, subUnitId, row, column);
  if (!rule || rule.errorStyle === DataValidationErrorStyle.INFO) return null;
  const [workbook, worksheet] = [grid.workbook.getWorkbook(), sheet.getSheet()];
  const place = { unitId, subUnitId, row, col: column, workbook, worksheet };
  if (rules.validator(rule, place) !== DataValidationStatus.INVALID) return null;
  const value = readCell(grid, sheet, row, column);
  const stands = typeof value === 'boolean' ? String(value).toUpperCase() : String(value);
  return `${cellAddress(row, column)} “${stands}” is not what this cell asks for, and stays until you change it. ${rule.promptTitle ?? ''}: ${rule.prompt ?? rule.error ?? ''}`;
}

/**
 * Calls back when the grid has found an entry that its cell does not take, a moment after it was made. Of entries that it
 * does take, nothing is heard: the grid finds that out anew whenever it is asked, so that asking then would never end.
 */
export function onEntryRefused({ univer }: Grid, listener: () => void): void {
  univer
    .__getInjector()
    .get(SheetDataValidationModel)
    .validStatusChange$.subscribe(({ status }) => {
      if (status === DataValidationStatus.INVALID) listener();
    });
}

/** What stands against the entry in a cell; nothing where the cell takes it. */
export function entryStatus(grid: Grid, { sheetId, row, column }: CellPlace): CellStatus {
  const sheet = grid.workbook.getSheetBySheetId(sheetId);
  const text = sheet === null ? null : objection(grid, sheet, row, column);
  return text === null ? { kind: 'nothing', text: '' } : { kind: 'error', text };
}

/** Describes the selected cell. */
export function selectedCellStatus(grid: Grid): CellStatus {
  const range = grid.workbook.getActiveCell();
  if (range === null) return { kind: 'nothing', text: '' };
  const sheet = grid.workbook.getActiveSheet();
  const row = range.getRow();
  const column = range.getColumn();
  const address = cellAddress(row, column);

  const value = readCell(grid, sheet, row, column);
  if (typeof value === 'string' && KNOWN_ERRORS.has(value)) {
    return {
      kind: 'error',
      text: `${address} ${value} ${reason(grid, sheet, row, column, value)}`,
    };
  }

  const against = objection(grid, sheet, row, column);
  if (against !== null) return { kind: 'error', text: against };
  const note: unknown = sheet.getSheet().getCellRaw(row, column)?.custom?.['note'];
  if (typeof note === 'string') return { kind: 'hint', text: `${address} ${note}` };
  const rule = range.getDataValidation()?.rule;
  if (rule?.prompt !== undefined) {
    return { kind: 'hint', text: `${address} ${rule.promptTitle ?? ''}: ${rule.prompt}` };
  }
  return { kind: 'nothing', text: '' };
}
