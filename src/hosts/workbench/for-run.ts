/**
 * The name beside what is typed for a run on a sheet whose entries say for which run they are: whoever types there means the
 * run in that row, and need not write its name.
 */
import { CellValueType, type ICellData } from '@univerjs/core';
import type { ISetRangeValuesMutationParams } from '@univerjs/sheets';
import type { FWorksheet } from '@univerjs/sheets/facade';
import { BUILT_COLUMNS } from '../../sheets/as-built/columns';
import { BUILT_ROW, builtColumn } from '../../sheets/as-built/layout';
import { PROTECTION_COLUMNS } from '../../sheets/protection/columns';
import { PROTECTION_ROW, protectionColumn } from '../../sheets/protection/layout';
import { READING_KEYS } from '../../sheets/station/as-built';
import { FOR_RUN } from '../../sheets/station/for-run';
import { FUSE_ENTRY_KEYS } from '../../sheets/station/protection-keys';
import type { Grid } from './grid';
import type { ChangedCells } from './relay';
import { cellSteps, takeSteps } from './steps';
import { isLastStep } from './undo-step';
import { afterCellsWritten } from './written-cells';

/** Where a sheet has the names of its runs, what they are for, and the entries. */
interface NamedEntrySheet {
  readonly header: number;
  readonly name: number;
  readonly nameHeading: string;
  readonly forRun: number;
  readonly entries: readonly number[];
}

const SHEETS: readonly NamedEntrySheet[] = [
  {
    header: PROTECTION_ROW.header,
    name: protectionColumn('run'),
    nameHeading: PROTECTION_COLUMNS.run.heading,
    forRun: protectionColumn('forRun'),
    entries: FUSE_ENTRY_KEYS.map(protectionColumn),
  },
  {
    header: BUILT_ROW.header,
    name: builtColumn('name'),
    nameHeading: BUILT_COLUMNS.name.heading,
    forRun: builtColumn('forRun'),
    entries: READING_KEYS.map(builtColumn),
  },
];

const textAt = (sheet: FWorksheet, row: number, column: number) =>
  String(sheet.getSheet().getCellRaw(row, column)?.v ?? '').trim();

const named = (sheet: FWorksheet) =>
  SHEETS.find(
    ({ header, name, nameHeading, forRun }) =>
      textAt(sheet, header, forRun) === FOR_RUN.heading &&
      textAt(sheet, header, name) === nameHeading,
  );

const isTyped = (cell: ICellData | undefined) =>
  typeof cell?.f !== 'string' && String(cell?.v ?? '').trim() !== '';

/** The names that are missing beside what a change has typed. */
function missingNames(
  sheet: FWorksheet,
  { header, name: nameColumn, forRun, entries }: NamedEntrySheet,
  { cellValue }: ISetRangeValuesMutationParams,
) {
  const names: ChangedCells = {};
  for (const [at, cells] of Object.entries((cellValue ?? {}) as ChangedCells)) {
    const row = Number(at);
    const isEntry = entries.some((column) => isTyped(cells[column]));
    if (row <= header || !isEntry || textAt(sheet, row, forRun) !== '') continue;
    const name = textAt(sheet, row, nameColumn);
    if (name !== '') names[row] = { [forRun]: { v: name, t: CellValueType.STRING } };
  }
  return names;
}

/** Writes the name of its run beside each entry that is typed on such a sheet, in the same step of undo. */
export function nameRunsOfEntries(grid: Grid): void {
  afterCellsWritten(
    grid,
    (sheet) => named(sheet) !== undefined,
    (sheet, change) => {
      const of = named(sheet);
      // What an undo has brought back is left as it was.
      if (of === undefined || !isLastStep(grid, change)) return;
      takeSteps(grid, cellSteps(grid, sheet, missingNames(sheet, of, change)), change);
    },
  );
}
