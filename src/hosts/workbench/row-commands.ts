/**
 * Rows that a person puts into a schedule, or takes out of it, in the grid. The sheet keeps its rows and only the entries
 * move: the grid itself (0.25.1) would leave colours a row off, the first row outside all formulas, Protection's entries
 * with other runs, and its undo would empty a row that it never touched.
 */
import { CanceledError, ICommandService, type ICommandInfo, type IRange } from '@univerjs/core';
import {
  InsertRowByRangeCommand,
  MoveRowsCommand,
  RemoveRowByRangeCommand,
} from '@univerjs/sheets';
import type { FWorksheet } from '@univerjs/sheets/facade';
import {
  cellsInOrder,
  rowSpan,
  withMovedRows,
  withoutRows,
  withRows,
  type RowOrder,
  type RowSpan,
} from '../../lists/row-order';
import type { ComputedGrid } from '../../sheets/plan/grid';
import type { SheetEdits } from '../edits';
import type { Grid } from './grid';
import { growBy, GrowthFault } from './growth';
import { readComputed, readSheet } from './read';
import { beginUndoStep } from './undo-step';

/** What becomes of rows of a schedule, or why not; or that it has to have more rows for it. */
type Outcome =
  { readonly order: RowOrder } | { readonly refused: string } | { readonly lacks: number };
/** Rows from the first of the schedule on, and for a move the row before which they go. */
interface Rows {
  readonly at: number;
  readonly count: number;
  readonly to: number;
}

type OutcomeOf = (span: RowSpan, rows: Rows) => Outcome;

const OUTCOMES: ReadonlyMap<string, OutcomeOf> = new Map<string, OutcomeOf>([
  [
    InsertRowByRangeCommand.id,
    (span, { at, count }) => {
      const order = withRows(span, at, count);
      return order === undefined
        ? { lacks: Math.max(span.used, at) + count - span.rows }
        : { order };
    },
  ],
  [RemoveRowByRangeCommand.id, (span, { at, count }) => ({ order: withoutRows(span, at, count) })],
  [
    MoveRowsCommand.id,
    (span, { at, count, to }) =>
      to < 0 || to > span.rows || at + count > span.rows
        ? { refused: 'Rows of a schedule can be moved among its own rows only.' }
        : { order: withMovedRows(span, at, count, to) },
  ],
]);

/** The rows that a command is about, on the sheet. */
function rowsOf({ params }: Readonly<ICommandInfo>, grid: Grid) {
  const { range, toRange } = (params ?? {}) as { range?: IRange; toRange?: IRange };
  const rows = range ?? grid.workbook.getActiveRange()?.getRange();
  return rows === undefined
    ? undefined
    : { from: rows.startRow, count: rows.endRow - rows.startRow + 1, to: toRange?.startRow ?? 0 };
}

/** A sheet with what a formula computes in it; undefined for an empty one. */
function computedGrid(grid: Grid, sheet: FWorksheet): ComputedGrid | undefined {
  const used = readSheet(grid, sheet);
  return used === null ? undefined : { ...used, computed: readComputed(grid, sheet, used) };
}

/** `refuse` is told why rows stay as they are. */
export function keepRowsTogether(
  grid: Grid,
  edits: SheetEdits,
  refuse: (sentence: string) => void,
): void {
  const { workbook } = grid;

  /** True where the rows were a schedule's, and all is done or refused. */
  function take(command: Readonly<ICommandInfo>): boolean {
    const outcomeOf = OUTCOMES.get(command.id);
    const rows = outcomeOf === undefined ? undefined : rowsOf(command, grid);
    const { subUnitId } = (command.params ?? {}) as { subUnitId?: string };
    const sheet =
      subUnitId === undefined ? workbook.getActiveSheet() : workbook.getSheetBySheetId(subUnitId);
    if (outcomeOf === undefined || rows === undefined || sheet === null) return false;
    const span = spanOf(sheet);
    if (span === undefined) return false;
    const at = rows.from - span.first;
    if (at < 0 || at >= span.rows) return false;
    const end = beginUndoStep(grid);
    try {
      takeAmong(sheet, span, outcomeOf, { at, count: rows.count, to: rows.to - span.first });
    } finally {
      end();
    }
    return true;
  }

  function spanOf(sheet: FWorksheet): RowSpan | undefined {
    const schedule = computedGrid(grid, sheet);
    return schedule === undefined ? undefined : rowSpan(schedule);
  }

  function takeAmong(sheet: FWorksheet, span: RowSpan, outcomeOf: OutcomeOf, rows: Rows): void {
    let outcome = outcomeOf(span, rows);
    if ('lacks' in outcome) {
      try {
        growBy(grid, sheet, outcome.lacks);
      } catch (fault) {
        if (!(fault instanceof GrowthFault)) throw fault;
        outcome = {
          refused: `There is no room for it: all ${span.rows} rows of this schedule are taken, and ${fault.message}`,
        };
      }
      const grown = spanOf(sheet);
      if ('lacks' in outcome && grown !== undefined) outcome = outcomeOf(grown, rows);
    }
    if ('refused' in outcome) refuse(outcome.refused);
    if (!('order' in outcome)) return;
    const grids = workbook.getSheets().flatMap((one) => computedGrid(grid, one) ?? []);
    edits.rearrange(cellsInOrder(grids, sheet.getSheetName(), outcome.order)).catch(() => {
      refuse('The rows could not be moved.');
    });
  }

  grid.univer
    .__getInjector()
    .get(ICommandService)
    .beforeCommandExecuted((command) => {
      if (take(command)) throw new CanceledError();
    });
}
