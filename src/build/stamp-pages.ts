/**
 * Pages that ask for their scripts and styles by what is in them, since a host's cache may keep a script longer than the
 * page that asks for it: a page and a script of two builds would not know each other.
 */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

const PAGES = ['taskpane.html', 'workbench.html'] as const;
/** Files of ours beside the page; Office.js finds its own parts by its bare name. */
const ADDRESS = /((?:src|href)=")([a-z]+\.(?:js|css))"/g;

const mark = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex').slice(0, 12);

/** Writes into the pages of a built folder what their scripts and styles hold now. */
export function stampPages(folder: string): void {
  for (const name of PAGES) {
    const file = path.join(folder, name);
    const page = readFileSync(file, 'utf8').replace(
      ADDRESS,
      (_, opening: string, address: string) =>
        `${opening}${address}?${mark(readFileSync(path.join(folder, address)))}"`,
    );
    writeFileSync(file, page);
  }
}
