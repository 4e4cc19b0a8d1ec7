/** Changes that the pane makes in a workbook open in Excel. */
import { area, type Area } from '../../sheets/plan/area';
import type { GridValue } from '../../sheets/plan/grid';
import { placesTogether } from '../../sheets/plan/stretches';
import type { RowFill, SheetChange, SheetEdits } from '../edits';
import type { Queue } from '../one-at-a-time';
import { failure, told, type Failing } from './failure';
import { rangeOf } from './range-of';
import { request } from './request';
import { writtenText } from './written-text';
import { TEXT_FORMAT } from './layers';

const doing = (what: string): Failing => ({
  refused: `It could not be ${what}`,
  unknown: `Excel did not say whether it was ${what}`,
});

type Typed = Pick<SheetChange, 'sheetName' | 'cells'>;

/** Cells of one column of a sheet, from the first to the last that is typed into. */
interface ColumnCells {
  readonly sheet: Excel.Worksheet;
  readonly of: Area;
  readonly contents: ReadonlyMap<number, GridValue>;
}

function columnsOf(sheet: Excel.Worksheet, cells: Typed['cells']): ColumnCells[] {
  const byColumn = new Map<number, Map<number, GridValue>>();
  for (const { row, column, content } of cells) {
    const known = byColumn.get(column) ?? new Map<number, GridValue>();
    byColumn.set(column, known.set(row, content));
  }
  return [...byColumn].map(([column, contents]) => {
    const rows = [...contents.keys()];
    const first = Math.min(...rows);
    return { sheet, of: area(first, column, Math.max(...rows) - first + 1, 1), contents };
  });
}

/**
 * Types into cells; for each the spreadsheet is asked first whether it is a text cell. What is typed into one column is
 * written in one step, so that Excel does all of it or nothing; null leaves the cells in between as they are.
 */
async function typeInto(context: Excel.RequestContext, changes: readonly Typed[]): Promise<void> {
  const typed = changes.flatMap(({ sheetName, cells }) =>
    columnsOf(context.workbook.worksheets.getItem(sheetName), cells).map(
      (column) => [rangeOf(column.sheet, column.of), column] as const,
    ),
  );
  for (const [range] of typed) range.load('numberFormat');
  await context.sync();
  for (const [range, { of, contents }] of typed) {
    range.values = Array.from({ length: of.rows }, (_, down) => {
      const content = contents.get(of.row + down);
      if (content === undefined) return [null];
      const isText = String(range.numberFormat[down]?.[0]) === TEXT_FORMAT;
      return [
        content === null
          ? ''
          : typeof content === 'string'
            ? writtenText(content, isText)
            : content,
      ];
    });
  }
}

function copyFormulas(sheet: Excel.Worksheet, { from, to, columns }: RowFill): void {
  for (const { first, count } of placesTogether(columns)) {
    rangeOf(sheet, area(to, first, 1, count)).copyFrom(
      rangeOf(sheet, area(from, first, 1, count)),
      'Formulas',
    );
  }
}

async function type(changes: readonly Typed[]): Promise<void> {
  await request(async (context) => {
    await typeInto(context, changes);
    await context.sync();
  });
}

async function fill(sheetName: string, fills: readonly RowFill[], columns: number): Promise<void> {
  await request(async (context) => {
    const sheet = context.workbook.worksheets.getItem(sheetName);
    for (const row of fills) {
      rangeOf(sheet, area(row.to, 0, 1, columns)).copyFrom(
        rangeOf(sheet, area(row.from, 0, 1, columns)),
        'Formats',
      );
      copyFormulas(sheet, row);
    }
    await context.sync();
  });
}

async function rearrange(changes: readonly SheetChange[]): Promise<void> {
  await request(async (context) => {
    // Formulas come before what is typed over others, of which one might be copied.
    for (const { sheetName, fills } of changes) {
      const sheet = context.workbook.worksheets.getItem(sheetName);
      for (const row of fills) copyFormulas(sheet, row);
    }
    await typeInto(context, changes);
    await context.sync();
  });
}

/** `onFault` hears of what no promise can carry. */
export function excelEdits(writing: Queue, onFault: (fault: Error) => void): SheetEdits {
  return {
    type: (sheetName, cells) =>
      writing(() => told(doing('written'), () => type([{ sheetName, cells }]))),
    fillRows: (sheetName, fills, columns) =>
      writing(() => told(doing('repaired'), () => fill(sheetName, fills, columns))),
    rearrange: (changes) => writing(() => told(doing('put in order'), () => rearrange(changes))),
    hiddenColumns: (sheetName, columns) =>
      told('The columns of the sheet could not be read', () =>
        request(async (context) => {
          const sheet = context.workbook.worksheets.getItem(sheetName);
          const all = Array.from({ length: columns }, (_, column) =>
            rangeOf(sheet, area(0, column)),
          );
          for (const one of all) one.load('columnHidden');
          await context.sync();
          return all.flatMap(({ columnHidden }, column) => (columnHidden ? [column] : []));
        }),
      ),
    showColumns: (sheetName, columns, isShown) =>
      writing(() =>
        told(doing('shown'), () =>
          request(async (context) => {
            const sheet = context.workbook.worksheets.getItem(sheetName);
            for (const { first, count } of placesTogether(columns)) {
              rangeOf(sheet, area(0, first, 1, count)).columnHidden = !isShown;
            }
            await context.sync();
          }),
        ),
      ),
    selected: () =>
      told('What is selected could not be read', () =>
        request(async (context) => {
          const cell = context.workbook.getActiveCell();
          cell.load('rowIndex,columnIndex,worksheet/name');
          await context.sync();
          return {
            sheetName: cell.worksheet.name,
            row: cell.rowIndex,
            column: cell.columnIndex,
          };
        }),
      ),
    onSelection(listener) {
      let stopped = false;
      const listening = Excel.run(async (context) => {
        const handler = context.workbook.onSelectionChanged.add(() => {
          if (!stopped) listener();
          return Promise.resolve();
        });
        await context.sync();
        return { context, handler };
      });
      listening.catch((error: unknown) => {
        onFault(failure('The pane does not follow what is selected', error));
      });
      return () => {
        stopped = true;
        listening
          .then(({ context, handler }) =>
            Excel.run(context, async (same) => {
              handler.remove();
              await same.sync();
            }),
          )
          .catch(() => {
            // It never listened, which onFault has heard, or Excel is gone.
          });
      };
    },
  };
}
