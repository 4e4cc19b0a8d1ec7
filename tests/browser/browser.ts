/** Chromium for the browser tests, watched for what a page must not do. */
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core';
import { inject } from 'vitest';
import { commandPath } from '../../src/build/command-path';

const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** When to give up what a page is waited for: the tests of the code may be keeping the machine busy meanwhile. */
const PATIENCE_MS = 120_000;

export async function launchBrowser(): Promise<Browser> {
  const executablePath = commandPath('chromium');
  if (executablePath === undefined) {
    throw new Error(
      'The browser tests need chromium on the PATH. On Debian: apt-get install chromium',
    );
  }
  return chromium.launch({ executablePath, args: QUIET });
}

export interface Trouble {
  /** What the page's Content-Security-Policy stopped. */
  readonly violations: string[];
  /** Requests to any other address than the tests' own server. */
  readonly strayRequests: string[];
  readonly pageErrors: string[];
}

export interface WatchedPage {
  readonly page: Page;
  readonly trouble: Trouble;
}

export interface Window {
  readonly width: number;
  readonly height: number;
}

/** Opens one of the built pages, from a blank slate, and keeps a list of what goes wrong in it. */
export async function openPage(
  browser: Browser | BrowserContext,
  path: string,
  viewport: Window = { width: 1400, height: 800 },
  origin = inject('origin'),
): Promise<WatchedPage> {
  const trouble: Trouble = { violations: [], strayRequests: [], pageErrors: [] };
  const page = await ('newContext' in browser ? browser.newPage({ viewport }) : browser.newPage());
  page.setDefaultTimeout(PATIENCE_MS);
  await page.exposeFunction('tellViolation', (what: string) => {
    trouble.violations.push(what);
  });
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const tell = (window as unknown as { tellViolation: (what: string) => void }).tellViolation;
      tell(`${event.violatedDirective}: ${event.blockedURI}`);
    });
  });
  page.on('request', (request) => {
    const url = request.url();
    const own = url.startsWith(`${origin}/`) || url.startsWith('data:') || url.startsWith('blob:');
    if (!own) trouble.strayRequests.push(url);
  });
  page.on('response', (response) => {
    if (response.status() >= 400) {
      trouble.pageErrors.push(`${response.status()} ${response.url()}`);
    }
  });
  page.on('pageerror', (error) => trouble.pageErrors.push(error.message));
  await page.goto(`${origin}/${path}`);
  return { page, trouble };
}
