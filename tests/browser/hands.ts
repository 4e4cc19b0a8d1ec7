/** Keys as hands hit them: at their own pace, whatever the page is busy with. */
import type { Page } from 'playwright-core';

const CODES: Readonly<Record<string, number>> = { Tab: 9, Enter: 13 };

/** A playwright key press waits until the page has taken it; a person does not. Resolves when all keys have been taken. */
async function hitKeys(page: Page, keys: readonly string[], everyMs: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const taken: Promise<unknown>[] = [];
  for (const key of keys) {
    const code = CODES[key];
    const text = code === undefined ? key : key === 'Enter' ? '\r' : undefined;
    taken.push(
      session.send('Input.dispatchKeyEvent', {
        type: text === undefined ? 'rawKeyDown' : 'keyDown',
        key,
        ...(text === undefined ? {} : { text }),
        ...(code === undefined ? {} : { code: key, windowsVirtualKeyCode: code }),
      }),
      session.send('Input.dispatchKeyEvent', { type: 'keyUp', key }),
    );
    await page.waitForTimeout(everyMs);
  }
  await Promise.all(taken);
  await session.detach();
}

/** Types lines of cells, Tab after each cell and Enter after each line, a key every so many milliseconds. */
export const typeLines = (
  page: Page,
  lines: readonly (readonly string[])[],
  everyMs: number,
): Promise<void> =>
  hitKeys(
    page,
    lines.flatMap((cells) =>
      cells.flatMap((text, place) => [...text, place < cells.length - 1 ? 'Tab' : 'Enter']),
    ),
    everyMs,
  );
