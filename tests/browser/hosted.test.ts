/** The pages that ship on a host that adds nothing: each holds to its own policy, and Excel on the web may frame the pane. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { REFERENCE_PAGES } from '../../src/taskpane/reference-pages';
import { launchBrowser, openPage } from './browser';
import { shippedFolder } from './shipped-pages';
import { hostFolder, type StaticHost } from './static-host';
import { openWorkbench } from './workbench-page';

let browser: Browser;
let host: StaticHost;

beforeAll(async () => {
  browser = await launchBrowser();
  host = await hostFolder(await shippedFolder());
});

afterAll(async () => {
  await host?.close();
  await browser?.close();
});

const WITHOUT_EXCEL = `
  window.Office = { HostType: { Excel: 'Excel' }, onReady: async () => ({ host: null }) };
  window.CustomFunctions = { associate() {} };
`;

const NONE = { violations: [], strayRequests: [], pageErrors: [] };

test('the host says nothing of policies or frames, so that the pages have to', async () => {
  const { headers } = await fetch(`${host.origin}/taskpane.html`);
  expect(headers.get('content-security-policy')).toBeNull();
  expect(headers.get('x-frame-options')).toBeNull();
});

test('the workbench opens, with no violation and no request to anywhere else', async () => {
  const { page, trouble } = await openWorkbench(browser, undefined, host.origin);
  expect(trouble).toEqual(NONE);
  // A script of the page's own making is stopped: the policy is in force.
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'document.title = "inline"';
    document.head.append(script);
  });
  await expect.poll(() => trouble.violations).toEqual(['script-src-elem: inline']);
  expect(await page.title()).toBe('Loomsheet workbench');
  await page.close();
});

test('the pane opens in a frame of another origin, as Excel on the web shows it', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'loomsheet-frame-'));
  writeFileSync(
    path.join(folder, 'frame.html'),
    `<!doctype html><title>Frame</title><iframe src="${host.origin}/taskpane.html"></iframe>`,
  );
  const around = await hostFolder(folder);
  const context = await browser.newContext();
  // Office.js leaves a frame that is not Excel's; what is asked here is whether page and browser let themselves be framed.
  await context.route('**/office-js/office.js', (route) =>
    route.fulfill({ contentType: 'text/javascript', body: WITHOUT_EXCEL }),
  );
  const { page } = await openPage(context, 'frame.html', undefined, around.origin);
  await page.frameLocator('iframe').getByText('runs inside Excel').waitFor();
  await context.close();
  await around.close();
  rmSync(folder, { recursive: true });
});

test.each(['index.html', ...Object.keys(REFERENCE_PAGES)])(
  '%s opens with its style and nothing else',
  async (name) => {
    const { page, trouble } = await openPage(browser, name, undefined, host.origin);
    expect(await page.evaluate(() => document.styleSheets.length)).toBe(1);
    expect(trouble).toEqual(NONE);
    await page.close();
  },
);
