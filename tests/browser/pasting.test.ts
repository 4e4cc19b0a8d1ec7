/** What is pasted into a schedule from elsewhere: it stands as if it had been typed, and looks like the cells around it. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Browser } from 'playwright-core';
import type { Grid } from '../../src/hosts/workbench/grid';
import { cellAddress } from '../../src/sheets/plan/area';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import type { ColumnKey } from '../../src/sheets/station/schedule-keys';
import { launchBrowser } from './browser';
import { openWorkbench, type WorkbenchPage } from './workbench-page';

const SHEET = 'Run schedule';
/** Below the demonstration's runs. */
const PLACE = 27;

let browser: Browser;
let workbench: WorkbenchPage;

beforeAll(async () => {
  browser = await launchBrowser();
  const context = await browser.newContext({
    permissions: ['clipboard-read', 'clipboard-write'],
  });
  workbench = await openWorkbench(context);
});
afterAll(() => browser?.close());

const at = (place: number, key: ColumnKey) =>
  cellAddress(ROW.first + place, columnOf(key)).replaceAll('$', '');

/** How cells look, as the grid keeps it. */
const looks = (addresses: readonly string[]) =>
  workbench.page.evaluate(
    ([sheetName, cells]) => {
      const { grid } = window.loomWorkbench!.host as unknown as { grid: Grid };
      const sheet = grid.workbook.getSheetByName(sheetName)!;
      return cells.map((cell) => {
        const range = sheet.getRange(cell);
        return JSON.stringify(sheet.getSheet().getCellStyle(range.getRow(), range.getColumn()));
      });
    },
    [SHEET, addresses] as const,
  );

async function paste(address: string, text: string, html?: string): Promise<void> {
  const { page } = workbench;
  await page.evaluate(
    ([plain, rich]) =>
      navigator.clipboard.write([
        new ClipboardItem({
          'text/plain': plain,
          ...(rich === undefined ? {} : { 'text/html': rich }),
        }),
      ]),
    [text, html] as const,
  );
  await workbench.select(SHEET, address);
  await page.evaluate(() => {
    window.loomWorkbench!.host.takeKeys?.();
  });
  await page.keyboard.press('Control+v');
}

const KEYS: readonly ColumnKey[] = ['run', 'fedFrom', 'load', 'peak', 'length'];

test('a block takes the look of its cells, however it looked before', async () => {
  const cells = KEYS.map((key) => at(PLACE, key));
  const before = await looks(cells);
  await paste(
    cells[0]!,
    'Gate',
    '<table><tr><td style="color:red;font-size:20pt;background:yellow">Gate</td><td>Van feed</td><td><b>Motor</b></td><td style="text-align:center">5 A</td><td>9 ft</td></tr></table>',
  );
  await expect.poll(() => workbench.read(SHEET, cells[4]!)).toBe('9 ft');
  expect(await looks(cells)).toEqual(before);
  await expect.poll(() => workbench.read(SHEET, at(PLACE, 'draw'))).toBe(5);
});

test('a quantity alone stays what it is, and per cent becomes a figure', async () => {
  await paste(at(PLACE, 'peak'), '12 A');
  await expect.poll(() => workbench.read(SHEET, at(PLACE, 'draw'))).toBe(12);
  await paste(at(PLACE, 'target'), '5,5 %');
  // In place of the formula that stood there.
  await expect.poll(() => workbench.read(SHEET, at(PLACE, 'target'))).toBe(0.055);
  await workbench.write(SHEET, at(PLACE, 'length'), '8 ft');
  expect(await workbench.read(SHEET, at(PLACE, 'target'))).toBe(0.055);
});
