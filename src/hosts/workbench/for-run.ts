/**
 * The name beside what is typed of a run's fuse on a Protection sheet: whoever types there means the run in that row, and
 * need not write its name.
 */
import type { ICellData } from '@univerjs/core';
import type { ISetRangeValuesMutationParams } from '@univerjs/sheets';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { PROTECTION_COLUMNS } from '../../sheets/protection/columns';
import { PROTECTION_ROW, protectionColumn } from '../../sheets/protection/layout';
import { FUSE_ENTRY_KEYS } from '../../sheets/station/protection-keys';
import type { Grid } from './grid';
import type { ChangedCells } from './relay';
import { cellSteps, takeSteps } from './steps';
import { isLastStep } from './undo-step';
import { afterCellsWritten } from './written-cells';

const FOR_RUN = protectionColumn('forRun');
const RUN = protectionColumn('run');
const ENTRIES = FUSE_ENTRY_KEYS.map(protectionColumn);

const textAt = (sheet: FWorksheet, row: number, column: number) =>
  String(sheet.getSheet().getCellRaw(row, column)?.v ?? '').trim();

const isProtection = (sheet: FWorksheet) =>
  textAt(sheet, PROTECTION_ROW.header, FOR_RUN) === PROTECTION_COLUMNS.forRun.heading;

const isTyped = (cell: ICellData | undefined) =>
  typeof cell?.f !== 'string' && String(cell?.v ?? '').trim() !== '';

/** The names that are missing beside what a change has typed. */
function missingNames(sheet: FWorksheet, { cellValue }: ISetRangeValuesMutationParams) {
  const names: ChangedCells = {};
  for (const [at, cells] of Object.entries((cellValue ?? {}) as ChangedCells)) {
    const row = Number(at);
    const isOfFuse = ENTRIES.some((column) => isTyped(cells[column]));
    if (row < PROTECTION_ROW.first || !isOfFuse || textAt(sheet, row, FOR_RUN) !== '') continue;
    const name = textAt(sheet, row, RUN);
    if (name !== '') names[row] = { [FOR_RUN]: { v: name } };
  }
  return names;
}

/** Writes the name of its run beside each entry that is typed on a Protection sheet, in the same step of undo. */
export function nameRunsOfEntries(grid: Grid): void {
  afterCellsWritten(grid, isProtection, (sheet, change) => {
    // What an undo has brought back is left as it was.
    if (!isLastStep(grid, change)) return;
    takeSteps(grid, cellSteps(grid, sheet, missingNames(sheet, change)), change);
  });
}
