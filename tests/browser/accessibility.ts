/** What axe-core finds against WCAG 2.2 A and AA in a page as it stands. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** One line a finding, "rule: element"; `within` is the part of the page to look at. */
export async function violations(page: Page, within: string): Promise<string[]> {
  const isThere = await page.evaluate(() => 'axe' in window);
  // By the debugger's channel, which the page's Content-Security-Policy does not concern.
  if (!isThere) await page.evaluate(await readFile(AXE, 'utf8'));
  const results = await page.evaluate(
    ([selector, tags]) => {
      const { axe } = window as unknown as {
        axe: { run(selector: string, options: object): Promise<AxeResults> };
      };
      return axe.run(selector, { runOnly: tags });
    },
    [within, TAGS] as const,
  );
  // A run that looked at nothing would find nothing.
  if (results.passes.length === 0) throw new Error(`axe found nothing to check in ${within}.`);
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${html} ${failureSummary ?? ''}`),
  );
}

/** How many pixels the widest part of the pane or the page sticks out sideways; 0 is none. */
export function sidewaysPx(page: Page, within: string): Promise<number> {
  return page.evaluate((selector) => {
    const parts = [document.documentElement, ...document.querySelectorAll(`${selector} *`)];
    const scrolling = parts.filter((part) => getComputedStyle(part).display !== 'inline');
    return Math.max(...scrolling.map((part) => part.scrollWidth - part.clientWidth), 0);
  }, within);
}
