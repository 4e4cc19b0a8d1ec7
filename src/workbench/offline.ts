/** The page's side of working without a network: it asks for the worker, and lets a newer build take over. */
import { TAKE_OVER } from './offline-worker';

/** The build names its worker on the page; under `npm start` there is none. */
const workerAddress = () => document.documentElement.dataset['worker'];

/** A tab that has just been closed is still counted for a moment: so often the newer build is asked, so far apart. */
const ASKED = { times: 8, apartMs: 200 } as const;

/**
 * Where a newer build waits and no other tab has the older one, the page is loaded again from the newer: true, and nothing
 * more is to be done here. To be asked before anything else, while nothing is typed.
 */
export async function reloadsAsNewer(): Promise<boolean> {
  if (workerAddress() === undefined || !('serviceWorker' in navigator)) return false;
  const workers = navigator.serviceWorker;
  const waiting = (await workers.getRegistration())?.waiting;
  if (!waiting || workers.controller === null) return false;
  return new Promise((resolve) => {
    let asked = 0;
    const ask = () => {
      if (asked === ASKED.times) {
        clearInterval(asking);
        resolve(false);
        return;
      }
      asked += 1;
      waiting.postMessage(TAKE_OVER);
    };
    const asking = setInterval(ask, ASKED.apartMs);
    workers.addEventListener(
      'controllerchange',
      () => {
        clearInterval(asking);
        resolve(true);
        location.reload();
      },
      { once: true },
    );
    ask();
  });
}

/** Has this build kept for when there is no network; `tellNewer` when a newer one was found and kept. */
export async function keepOffline(tellNewer: () => void): Promise<void> {
  const address = workerAddress();
  if (address === undefined || !('serviceWorker' in navigator)) return;
  const workers = navigator.serviceWorker;
  const registration = await workers.register(address, { updateViaCache: 'none' });
  const watch = (worker: ServiceWorker | null) => {
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && workers.controller !== null) tellNewer();
    });
  };
  watch(registration.installing);
  registration.addEventListener('updatefound', () => {
    watch(registration.installing);
  });
}
