/** The workbench page as the browser tests drive it. */
import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { GridValue, SheetGrid } from '../../src/sheets/plan/grid';
import type { WorkbenchHandle } from '../../src/workbench/handle';
import { openPage, type Trouble, type Window as Viewport } from './browser';

declare global {
  interface Window {
    loomWorkbench?: WorkbenchHandle;
  }
}

export interface WorkbenchPage {
  readonly page: Page;
  readonly trouble: Trouble;
  read(sheetName: string, address: string): Promise<GridValue>;
  write(sheetName: string, address: string, value: GridValue): Promise<void>;
  /** Selects a cell and types into it with the keyboard, as a person does. */
  type(sheetName: string, address: string, keys: string): Promise<void>;
  select(sheetName: string, address: string): Promise<void>;
  highlight(sheetName: string, address: string): Promise<string | null>;
  sheetNames(): Promise<string[]>;
  activeGrid(): Promise<SheetGrid>;
  statusText(): Promise<string>;
}

/** Opens the workbench and waits until the demo stands there calculated. */
export async function openWorkbench(
  browser: Browser | BrowserContext,
  viewport?: Viewport,
  origin?: string,
): Promise<WorkbenchPage> {
  const { page, trouble } = await openPage(browser, 'workbench.html', viewport, origin);
  await page.waitForFunction(() => document.documentElement.dataset['ready'] === 'true');

  const select = (sheetName: string, address: string) =>
    page.evaluate(([sheet, cell]) => window.loomWorkbench!.select(sheet, cell), [
      sheetName,
      address,
    ] as const);

  return {
    page,
    trouble,
    select,
    read: (sheetName, address) =>
      page.evaluate(([sheet, cell]) => window.loomWorkbench!.readCell(sheet, cell), [
        sheetName,
        address,
      ] as const),
    write: (sheetName, address, value) =>
      page.evaluate(
        ([sheet, cell, content]) => window.loomWorkbench!.writeCell(sheet, cell, content),
        [sheetName, address, value] as const,
      ),
    async type(sheetName, address, keys) {
      await select(sheetName, address);
      // As fast as fast hands.
      await page.keyboard.type(keys, { delay: 80 });
      await page.keyboard.press('Enter');
    },
    highlight: (sheetName, address) =>
      page.evaluate(([sheet, cell]) => window.loomWorkbench!.highlightOf(sheet, cell), [
        sheetName,
        address,
      ] as const),
    sheetNames: () => page.evaluate(() => window.loomWorkbench!.sheetNames()),
    async activeGrid() {
      const grid = await page.evaluate(() => window.loomWorkbench!.host.activeGrid());
      if (grid === null) throw new Error('The sheet in view is empty.');
      return grid;
    },
    async statusText() {
      return (await page.locator('#status').textContent()) ?? '';
    },
  };
}
