import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serve, type RunningServer } from '../../src/build/web-server';

let parent: string;
let folder: string;
let server: RunningServer;

const options = () => ({
  folder,
  startPage: 'page.html',
  host: '127.0.0.1',
  port: 0,
  orNextFree: false,
});

beforeAll(async () => {
  parent = await mkdtemp(path.join(tmpdir(), 'loomsheet-server-'));
  folder = path.join(parent, 'dist');
  await mkdir(folder);
  await writeFile(path.join(folder, 'page.html'), '<p>page</p>');
  await writeFile(path.join(folder, 'script.js'), 'void 0;');
  await writeFile(path.join(folder, 'data.json'), '{}');
  await writeFile(path.join(parent, 'secret.txt'), 'secret');
  await writeFile(path.join(parent, 'dist-other.txt'), 'secret');
  server = await serve(options());
});

afterAll(async () => {
  await server.close();
  await rm(parent, { recursive: true });
});

/** A request line as it stands; fetch would tidy the path first. */
function rawRequest(line: string, host = '127.0.0.1'): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(server.port, '127.0.0.1', () => {
      socket.write(`${line} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`);
    });
    let text = '';
    socket.on('data', (data) => (text += data.toString()));
    socket.on('end', () => {
      resolve(text);
    });
    socket.on('error', reject);
  });
}

describe('files', () => {
  test.each([
    ['page.html', 'text/html; charset=utf-8', '<p>page</p>'],
    ['script.js', 'text/javascript; charset=utf-8', 'void 0;'],
    ['data.json', 'application/json; charset=utf-8', '{}'],
  ])('%s comes as %s', async (name, type, content) => {
    const response = await fetch(`${server.origin}/${name}?reload=1`);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toBe(type);
    expect(response.headers.get('x-content-type-options')).toBe('nosniff');
    expect(await response.text()).toBe(content);
  });

  test('the bare address leads to the start page', async () => {
    const response = await fetch(`${server.origin}/`);
    expect(new URL(response.url).pathname).toBe('/page.html');
  });

  test('a new build is seen at the next reload', async () => {
    const file = path.join(folder, 'rebuilt.html');
    for (const content of ['<p>first</p>', '<p>second build</p>']) {
      await writeFile(file, content);
      const response = await fetch(`${server.origin}/rebuilt.html`);
      expect(response.headers.get('cache-control')).toBe('no-cache');
      expect(await response.text()).toBe(content);
    }
  });

  test('what is not there is not found', async () => {
    expect((await fetch(`${server.origin}/none.html`)).status).toBe(404);
  });

  test('a HEAD request brings no content', async () => {
    const response = await fetch(`${server.origin}/page.html`, { method: 'HEAD' });
    expect(response.headers.get('content-length')).toBe('11');
    expect(await response.text()).toBe('');
  });
});

describe('refusals', () => {
  test.each([
    'GET /../secret.txt',
    'GET /..%2fsecret.txt',
    'GET /%2e%2e/secret.txt',
    'GET //../secret.txt',
    'GET /page.html/../../secret.txt',
    'GET /../dist-other.txt',
    'GET /..%2f..%2fetc/passwd',
    'GET /..%5csecret.txt',
    'GET /page',
    'GET /%00',
    'GET /%zz',
    'GET /.',
  ])('%s gives nothing away', async (line) => {
    const answer = await rawRequest(line);
    expect(answer).toMatch(/^HTTP\/1\.1 404 /);
    expect(answer).not.toContain('secret');
  });

  test.each([
    'elsewhere.example',
    'elsewhere.example:80',
    '127.0.0.1.elsewhere.example',
    '10.0.0.2',
    '',
  ])(
    'a request for "%s", which a page from there can send here, gives nothing away',
    async (host) => {
      const answer = await rawRequest('GET /page.html', host);
      expect(answer).toMatch(/^HTTP\/1\.1 421 /);
      expect(answer).not.toContain('<p>page</p>');
    },
  );

  test.each(['127.0.0.1', 'localhost', 'LOCALHOST:4173', '[::1]:4173'])(
    'a request for %s, which is this machine, is answered',
    async (host) => {
      expect(await rawRequest('GET /page.html', host)).toMatch(/^HTTP\/1\.1 200 /);
    },
  );

  test.each(['0.0.0.0', '::', '192.168.0.2', 'elsewhere.example'])(
    'it does not listen on %s, where others reach it',
    async (host) => {
      await expect(serve({ ...options(), host })).rejects.toThrow('not this machine alone');
    },
  );

  test('anything but reading is refused', async () => {
    expect((await fetch(`${server.origin}/page.html`, { method: 'POST' })).status).toBe(405);
  });

  test('a range that no file has does not stop the server', async () => {
    for (const range of ['bytes=5-2', 'bytes=900-', 'bytes=-3', 'nonsense']) {
      const response = await fetch(`${server.origin}/page.html`, { headers: { range } });
      expect(response.status).toBe(200);
      expect(await response.text()).toBe('<p>page</p>');
    }
  });
});

describe('ports', () => {
  test('a port in use is passed over where that is wanted', async () => {
    const next = await serve({ ...options(), port: server.port, orNextFree: true });
    expect(next.port).toBeGreaterThan(server.port);
    await next.close();
  });

  test('a port in use is a failure where it is not', async () => {
    await expect(serve({ ...options(), port: server.port })).rejects.toMatchObject({
      code: 'EADDRINUSE',
    });
  });
});
