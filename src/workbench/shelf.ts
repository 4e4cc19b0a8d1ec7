/** Where the workbook is kept between visits: the browser's own database, written by one tab at a time. */
import { createStore, del, get, set, update } from 'idb-keyval';

const LOCK = 'loomsheet workbook';
const KEPT = 'workbook';
const OPENINGS = 'openings not ended';
const SET_ASIDE = 'set aside';

/** A page that is being reloaded lets go of the workbook a moment after the new one asks for it. */
const WAIT_FOR_LOCK_MS = 1500;
/** So often may opening the same workbook end without a word before it is given up. */
const MOST_OPENINGS = 3;

/** Whether this tab keeps what is typed; if not, why. */
export type Keeping = 'here' | 'in another tab' | 'nowhere';

export interface Shelf {
  readonly keeping: Keeping;
  /** What was kept; undefined where nothing was. */
  readonly kept: string | undefined;
  /** Whether what was kept was tried often and never came to stand there. */
  readonly neverOpened: boolean;
  /** Says that an opening ended: the workbook stands there. */
  opened(): Promise<void>;
  put(text: string): Promise<void>;
  /** Puts what was kept under another key, where nothing overwrites it. */
  setAside(): Promise<void>;
  clear(): Promise<void>;
}

/** Takes the workbook for this tab until it is closed; false where another tab has it. */
function takeLock(): Promise<boolean> {
  return new Promise((resolve) => {
    navigator.locks
      .request(LOCK, { signal: AbortSignal.timeout(WAIT_FOR_LOCK_MS) }, () => {
        resolve(true);
        return new Promise<never>(() => {
          // Held as long as the page lives.
        });
      })
      .catch(() => {
        resolve(false);
      });
  });
}

const nothing = () => Promise.resolve();
const CLOSED = { neverOpened: false, opened: nothing, put: nothing, setAside: nothing };

/** Opens the shelf; where the browser keeps nothing for this page, it is empty and stays so. */
export async function openShelf(): Promise<Shelf> {
  const store = createStore('loomsheet', 'kept');
  try {
    // Without locks, which come with a secure address, two tabs would overwrite each other.
    const isOwn = 'locks' in navigator && (await takeLock());
    const kept = await get<string>(KEPT, store);
    if (!('locks' in navigator)) return { ...CLOSED, keeping: 'nowhere', kept, clear: nothing };
    if (!isOwn) return { ...CLOSED, keeping: 'in another tab', kept, clear: nothing };
    const openings = (await get<number>(OPENINGS, store)) ?? 0;
    if (kept !== undefined) await update<number>(OPENINGS, (before) => (before ?? 0) + 1, store);
    return {
      keeping: 'here',
      kept,
      neverOpened: openings >= MOST_OPENINGS,
      opened: () => set(OPENINGS, 0, store),
      put: (text) => set(KEPT, text, store),
      async setAside() {
        if (kept !== undefined) await set(`${SET_ASIDE} ${new Date().toISOString()}`, kept, store);
        await del(KEPT, store);
      },
      clear: () => del(KEPT, store),
    };
  } catch {
    return { ...CLOSED, keeping: 'nowhere', kept: undefined, clear: nothing };
  }
}
