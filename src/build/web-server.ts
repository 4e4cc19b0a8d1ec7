/** A plain file server for the built pages: nothing outside one folder, nothing but reading. */
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import http, { type IncomingMessage, type RequestListener, type ServerResponse } from 'node:http';
import https from 'node:https';
import type { AddressInfo } from 'node:net';
import path from 'node:path';

const MIME_TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.xml': 'application/xml; charset=utf-8',
};

/** The file that a request names, or null where it names none inside the folder. */
export function requestedFile(folder: string, url: string): string | null {
  let wanted: string;
  try {
    wanted = decodeURIComponent(new URL(url, 'http://localhost').pathname);
  } catch {
    return null;
  }
  if (wanted.includes('\0')) return null;
  const file = path.resolve(folder, `.${wanted}`);
  return file.startsWith(folder + path.sep) ? file : null;
}

async function answer(
  folder: string,
  startPage: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { Allow: 'GET, HEAD' }).end();
    return;
  }
  if (request.url === '/') {
    response.writeHead(302, { Location: `/${startPage}` }).end();
    return;
  }
  const file = requestedFile(folder, request.url ?? '');
  const found = file === null ? null : await stat(file).catch(() => null);
  if (file === null || found?.isFile() !== true) {
    response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' }).end('Not found\n');
    return;
  }
  response.writeHead(200, {
    'Content-Type': MIME_TYPES[path.extname(file)] ?? 'application/octet-stream',
    'Content-Length': found.size,
    'X-Content-Type-Options': 'nosniff',
    // A new build is seen at the next reload.
    'Cache-Control': 'no-cache',
  });
  if (request.method === 'HEAD') {
    response.end();
    return;
  }
  createReadStream(file)
    .on('error', () => response.destroy())
    .pipe(response);
}

export interface Certificate {
  readonly key: Buffer;
  readonly cert: Buffer;
}

export interface ServeOptions {
  readonly folder: string;
  /** The page that the bare address leads to. */
  readonly startPage: string;
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

/** Serves a folder until closed; rejects where the port cannot be had. */
export async function serve(options: ServeOptions): Promise<RunningServer> {
  const { folder, startPage, host, certificate } = options;
  const listener: RequestListener = (request, response) => {
    answer(folder, startPage, request, response).catch(() => response.destroy());
  };
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
