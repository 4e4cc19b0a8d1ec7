/** A browser beside the built pages, for what is run by hand: stories, pictures, fixtures. */
import { chromium, type Browser } from 'playwright-core';
import { builtFolder } from '../../src/build/build-folders';
import { commandPath } from '../../src/build/command-path';
import { serve } from '../../src/build/web-server';

/**
 * Does something with a browser and the address at which the built pages are served, and closes both. Throws where there is no
 * Chromium on the PATH.
 */
export async function withBuiltPages(
  work: (browser: Browser, origin: string) => Promise<void>,
): Promise<void> {
  const executablePath = commandPath('chromium');
  if (executablePath === undefined) {
    throw new Error('This needs chromium on the PATH. On Debian: apt-get install chromium');
  }
  const server = await serve({
    folder: builtFolder,
    startPage: 'workbench.html',
    host: '127.0.0.1',
    port: 0,
    orNextFree: true,
  });
  const browser = await chromium.launch({
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  try {
    await work(browser, server.origin);
  } finally {
    await browser.close();
    await server.close();
  }
}
