/**
 * The workbench without a network: a service worker that answers for the files of one build and for nothing else. It keeps
 * them all or none, in a cache under the build's name, each checked against the digest that the build gave it, so that no
 * page is ever made of two builds. What Excel loads is not among them: the pane always comes from the network.
 */

/** The files of a build by their addresses beside the worker, with their digests as "sha256-...". */
export interface KeptBuild {
  readonly name: string;
  readonly files: Readonly<Record<string, string>>;
}

/** What of a worker's global scope is used here; the compiler's own description of it excludes that of pages. */
export interface WorkerScope {
  readonly registration: { readonly scope: string; unregister(): Promise<boolean> };
  readonly caches: CacheStorage;
  readonly clients: {
    matchAll(which: {
      readonly type: 'window';
      readonly includeUncontrolled?: boolean;
    }): Promise<readonly Client[]>;
  };
  fetch(request: Request): Promise<Response>;
  skipWaiting(): Promise<void>;
  addEventListener(kind: 'install' | 'activate', heard: (event: Lasting) => void): void;
  addEventListener(kind: 'message', heard: (event: Lasting & MessageEvent) => void): void;
  addEventListener(kind: 'fetch', heard: (event: Asked) => void): void;
}

interface Client {
  readonly url: string;
  /** Loads the page anew, from this address. */
  navigate(url: string): Promise<unknown>;
}

interface Lasting {
  waitUntil(work: Promise<unknown>): void;
}

interface Asked {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}

/** What a page says that has just been opened by an older build: nothing is typed in it yet. */
export const TAKE_OVER = 'take over if no other page is open';

const PAGE = 'workbench.html';

// Other copies of ours may be hosted in other folders of the same origin.
const cachesOf = (scope: WorkerScope) => `loomsheet ${scope.registration.scope} `;

async function dropCaches(scope: WorkerScope, but?: string): Promise<void> {
  const names = await scope.caches.keys();
  await Promise.all(
    names
      .filter((name) => name.startsWith(cachesOf(scope)) && name !== but)
      .map((name) => scope.caches.delete(name)),
  );
}

/** Sets the worker up in its scope. */
export function keepBuild(scope: WorkerScope, build: KeptBuild): void {
  const cacheName = `${cachesOf(scope)}${build.name}`;
  const files = new Map(
    Object.entries(build.files).map(([name, digest]) => [
      new URL(name, scope.registration.scope).href,
      digest,
    ]),
  );

  const bare = (address: string) => address.replace(/[?#].*$/, '');
  /** From the host itself, past the browser's own cache; fails where it is not the file of this build. */
  const fromHost = async (address: string) => {
    const integrity = files.get(address)!;
    const response = await scope.fetch(new Request(address, { cache: 'no-cache', integrity }));
    if (!response.ok) throw new Error(`${address}: ${response.status}`);
    // A host may have led here from a shorter address, which browsers do not take for a page.
    return new Response(await response.blob(), { headers: response.headers });
  };

  async function keepAll(): Promise<void> {
    const cache = await scope.caches.open(cacheName);
    try {
      await Promise.all(
        [...files.keys()].map(async (address) => cache.put(address, await fromHost(address))),
      );
    } catch (fault) {
      await scope.caches.delete(cacheName);
      throw fault;
    }
  }

  async function answer(request: Request): Promise<Response> {
    // Where the browser has thrown the cache away, all comes from the host, as if there were no worker.
    if (!(await scope.caches.has(cacheName))) return scope.fetch(request);
    const cache = await scope.caches.open(cacheName);
    const address = bare(request.url);
    return (await cache.match(address)) ?? (await fromHost(address));
  }

  async function takeOverIfAlone(): Promise<void> {
    const windows = await scope.clients.matchAll({ type: 'window', includeUncontrolled: true });
    const page = new URL(PAGE, scope.registration.scope).href;
    if (windows.filter(({ url }) => bare(url) === page).length <= 1) await scope.skipWaiting();
  }

  scope.addEventListener('install', (event) => {
    event.waitUntil(keepAll());
  });
  scope.addEventListener('activate', (event) => {
    event.waitUntil(dropCaches(scope, cacheName));
  });
  scope.addEventListener('message', (event) => {
    if (event.data === TAKE_OVER) event.waitUntil(takeOverIfAlone());
  });
  scope.addEventListener('fetch', (event) => {
    const { request } = event;
    if (request.method === 'GET' && files.has(bare(request.url))) {
      event.respondWith(answer(request));
    }
  });
}

/**
 * Takes the place of a worker that is not wanted any more, and leaves with all that it kept: what a development server
 * gives out, lest pages of a build that once stood at its address go on being shown there.
 */
export function leave(scope: WorkerScope): void {
  scope.addEventListener('install', (event) => {
    event.waitUntil(scope.skipWaiting());
  });
  scope.addEventListener('activate', (event) => {
    event.waitUntil(
      (async () => {
        await dropCaches(scope);
        await scope.registration.unregister();
        const pages = await scope.clients.matchAll({ type: 'window' });
        await Promise.all(pages.map((page) => page.navigate(page.url)));
      })(),
    );
  });
}
