/** A host of files as a club may have one: it hands out what is in a folder and says nothing of its own. */
import http from 'node:http';
import type { AddressInfo } from 'node:net';
import sirv from 'sirv';

export interface StaticHost {
  readonly origin: string;
  close(): Promise<void>;
}

/** Serves a folder on this machine; `port` 0 takes any free one. */
export async function hostFolder(folder: string, port = 0): Promise<StaticHost> {
  const server = http.createServer(sirv(folder, { dev: true, etag: true, extensions: [] }));
  await new Promise<void>((resolve) => {
    server.listen(port, '127.0.0.1', resolve);
  });
  return {
    origin: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    close: () =>
      new Promise((resolve) => {
        server.close(() => {
          resolve();
        });
        server.closeAllConnections();
      }),
  };
}
