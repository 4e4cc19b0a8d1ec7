/** The pane's own page as Excel opens it, with an Office.js that answers every read with one sheet. */
import type { Browser } from 'playwright-core';
import type { SheetGrid } from '../../src/sheets/plan/grid';
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
  }
}

/** Runs in the page in place of Office.js; reads come with options, other batches without. */
function standInForOffice({ grid, failsWith }: ExcelAnswers): void {
  const reads = { ...grid, sheets: new Set<string>(), names: new Set<string>() };
  const others = { context: {}, handlers: [] };
  const associated: string[] = [];
  Object.assign(window, {
    associated,
    Office: {
      HostType: { Excel: 'Excel' },
      onReady: () => Promise.resolve({ host: 'Excel', platform: 'OfficeOnline' }),
      context: { requirements: { isSetSupported: () => true } },
    },
    CustomFunctions: { associate: (id: string) => associated.push(id) },
    Excel: {
      run(...given: readonly unknown[]) {
        if (given.length === 2) return Promise.resolve(reads);
        if (failsWith === undefined) return Promise.resolve(others);
        return Promise.reject(Object.assign(new Error('refused'), { code: failsWith }));
      },
    },
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
      body: `(${standInForOffice.toString()})(${JSON.stringify(answers)});`,
    }),
  );
  await page.goto(new URL('/taskpane.html', page.url()).href);
  await page.locator('.loom-pane').waitFor();
  return watched;
}
