/** Serves the built pages on this machine alone: nothing outside one folder, nothing but reading. */
import http, { type RequestListener } from 'node:http';
import https from 'node:https';
import type { AddressInfo } from 'node:net';
import { lookup } from 'mrmime';
import sirv from 'sirv';

/** Of these the bytes are characters, and a script may be fetched by what has no page to tell its encoding. */
const IS_TEXT = /^text\/|^application\/json$|^image\/svg/;

/** This machine, by the names that only it answers to itself. */
const LOOPBACK: ReadonlySet<string> = new Set(['127.0.0.1', 'localhost', '[::1]', '::1']);

/**
 * Whether a request is meant for this machine. A page from elsewhere can have its own name lead here, and would then read
 * what is served as if it were its own; its name stands in the request all the same.
 */
const isForLoopback = (host: string | undefined) =>
  LOOPBACK.has((host ?? '').toLowerCase().replace(/:\d*$/, ''));

function listenerFor(folder: string, startPage: string): RequestListener {
  const files = sirv(folder, {
    // Looks at the folder at every request, and has the browser ask again: a new build is seen at the next reload.
    dev: true,
    etag: true,
    // A page is asked for by its whole name.
    extensions: [],
    setHeaders(response, pathname) {
      const type = lookup(pathname) ?? 'application/octet-stream';
      response.setHeader('Content-Type', IS_TEXT.test(type) ? `${type}; charset=utf-8` : type);
    },
    onNoMatch(_request, response) {
      response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' }).end('Not found\n');
    },
  });
  return (request, response) => {
    response.setHeader('X-Content-Type-Options', 'nosniff');
    if (!isForLoopback(request.headers.host)) {
      response.writeHead(421, { 'Content-Type': 'text/plain; charset=utf-8' });
      response.end('Served to this machine alone, as 127.0.0.1 or localhost\n');
      return;
    }
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    if (request.url === '/') {
      response.writeHead(302, { Location: `/${startPage}` }).end();
      return;
    }
    // Files come whole, which is allowed; a range that ends before it begins would stop sirv, and the server with it.
    delete request.headers.range;
    try {
      files(request, response);
    } catch {
      // The file went away while it was looked at.
      response.destroy();
    }
  };
}

export interface Certificate {
  readonly key: Buffer;
  readonly cert: Buffer;
}

export interface ServeOptions {
  readonly folder: string;
  /** The page that the bare address leads to. */
  readonly startPage: string;
  /** This machine: 127.0.0.1, localhost or ::1. */
  readonly host: string;
  /** 0 takes any free port. */
  readonly port: number;
  /** Where true, the next free port is taken in place of one in use. */
  readonly orNextFree: boolean;
  /** With it the pages are served by https. */
  readonly certificate?: Certificate;
}

export interface RunningServer {
  readonly port: number;
  readonly origin: string;
  close(): Promise<void>;
}

function listen(server: http.Server | https.Server, host: string, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => {
      server.removeListener('error', reject);
      resolve((server.address() as AddressInfo).port);
    });
  });
}

function inUse(fault: unknown): boolean {
  return fault instanceof Error && 'code' in fault && fault.code === 'EADDRINUSE';
}

/** Serves a folder until closed; rejects where the port cannot be had, or where others than this machine would reach it. */
export async function serve(options: ServeOptions): Promise<RunningServer> {
  const { folder, startPage, host, certificate } = options;
  if (!LOOPBACK.has(host)) throw new Error(`${host} is not this machine alone.`);
  const listener = listenerFor(folder, startPage);
  for (let port = options.port; ; port += 1) {
    const server =
      certificate === undefined
        ? http.createServer(listener)
        : https.createServer({ key: certificate.key, cert: certificate.cert }, listener);
    try {
      const taken = await listen(server, host, port);
      return {
        port: taken,
        origin: `${certificate === undefined ? 'http' : 'https'}://${host}:${taken}`,
        close: () =>
          new Promise((resolve) => {
            server.close(() => {
              resolve();
            });
            server.closeAllConnections();
          }),
      };
    } catch (fault) {
      const tryNext = options.orNextFree && inUse(fault) && port < options.port + 50;
      if (!tryNext) throw fault;
    }
  }
}
