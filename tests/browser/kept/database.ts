/** The browser's own database as the workbench has used it since 0.1.0: spelt out, since people's browsers hold it. */
import type { Page } from 'playwright-core';

const DATABASE = { name: 'loomsheet', store: 'kept', key: 'workbook' };

/** What the workbench of this page has kept. */
export function readKeptText(page: Page): Promise<string> {
  return page.evaluate(
    ({ name, store, key }) =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open(name);
        opening.onerror = () => {
          reject(new Error('no database'));
        };
        opening.onsuccess = () => {
          const asked = opening.result.transaction(store).objectStore(store).get(key);
          asked.onerror = () => {
            reject(new Error('no text'));
          };
          asked.onsuccess = () => {
            opening.result.close();
            resolve(asked.result as string);
          };
        };
      }),
    DATABASE,
  );
}

/** Puts a text where a workbench that is opened next finds it, as an earlier version left it; nothing may be there yet. */
export function leaveKeptText(page: Page, text: string): Promise<void> {
  return page.evaluate(
    ({ database: { name, store, key }, kept }) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open(name);
        opening.onupgradeneeded = () => {
          opening.result.createObjectStore(store);
        };
        opening.onerror = () => {
          reject(new Error('no database'));
        };
        opening.onsuccess = () => {
          const putting = opening.result.transaction(store, 'readwrite');
          putting.objectStore(store).put(kept, key);
          putting.onerror = () => {
            reject(new Error('not put'));
          };
          putting.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    { database: DATABASE, kept: text },
  );
}
