/** The pane's own page as Excel opens it, over the stand-in for Excel that the host's tests use. */
import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import ts from 'typescript';
import type { SheetGrid } from '../../src/sheets/plan/grid';
import type { RecordingExcel } from '../hosts/excel/recording-excel';
import { openPage, type WatchedPage, type Window as Viewport } from './browser';

export interface ExcelAnswers {
  /** What stands in the sheet in view. */
  readonly grid: SheetGrid;
  /** The code with which batches fail that do more than read, such as AccessDenied. */
  readonly failsWith?: string;
}

declare global {
  interface Window {
    /** Ids that the functions script associated. */
    associated?: string[];
    /** The stand-in, for tests that change the workbook under the pane. */
    standIn?: RecordingExcel;
  }
}

/** The stand-in's own file as a script: it stands alone. */
function standInScript(): string {
  const source = readFileSync(
    new URL('../hosts/excel/recording-excel.ts', import.meta.url),
    'utf8',
  );
  const { outputText } = ts.transpileModule(source, {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ES2022 },
  });
  return outputText.replace(/^export /gm, '');
}

/** Runs in the page, after the stand-in's script. */
function standInForOffice(Stand: typeof RecordingExcel, { grid, failsWith }: ExcelAnswers): void {
  const excel = new Stand({
    [grid.sheetName]: { rowIndex: 0, columnIndex: 0, values: grid.values },
  });
  const [sheet] = excel.sheets;
  const row = grid.values.findIndex((line) => line.length > 5);
  if (row >= 0) {
    const columns = grid.values[row]!.length - 1;
    const area = { row, column: 1, rows: grid.values.length - row, columns };
    sheet!.tables.push({ name: 'Drawn', sheet: sheet!, area });
  }
  const READING = /(^|[.!])load$|getActive|getUsedRange|getHeaderRow|getRange|OrNullObject/;
  if (failsWith !== undefined) {
    excel.refuse = ({ path }) => (READING.test(path) ? undefined : failsWith);
  }
  const associated: string[] = [];
  Object.assign(window, {
    associated,
    standIn: excel,
    Office: {
      HostType: { Excel: 'Excel' },
      onReady: () => Promise.resolve({ host: 'Excel', platform: 'OfficeOnline' }),
      context: {
        requirements: { isSetSupported: () => true },
        diagnostics: { platform: 'OfficeOnline', version: '16.0' },
      },
    },
    CustomFunctions: { associate: (id: string) => associated.push(id) },
    Excel: excel,
  });
}

/** Opens the pane's page over the stand-in. */
export async function openPaneInExcel(
  browser: Browser,
  viewport: Viewport,
  answers: ExcelAnswers,
): Promise<WatchedPage> {
  const watched = await openPage(browser, 'assets/icon-16.png', viewport);
  const { page } = watched;
  await page.route('**/office-js/office.js', (route) =>
    route.fulfill({
      contentType: 'text/javascript',
      body: `{${standInScript()}\n(${standInForOffice.toString()})(RecordingExcel, ${JSON.stringify(answers)});}`,
    }),
  );
  await page.goto(new URL('/taskpane.html', page.url()).href);
  await page.locator('.loom-pane').waitFor();
  return watched;
}
