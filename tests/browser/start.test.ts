import { spawn, type ChildProcessByStdio } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Readable } from 'node:stream';
import { afterEach, describe, expect, test } from 'vitest';
import { projectFolder } from '../../src/build/build-folders';

let running: ChildProcessByStdio<null, Readable, Readable> | undefined;

afterEach(() => {
  running?.kill();
  running = undefined;
});

/** The start command with these options; resolves at its first line that matches, or when it ends. */
function start(
  options: readonly string[],
  until: RegExp,
  home?: string,
): Promise<{ readonly said: string; readonly code: number | null }> {
  const tsx = path.join(projectFolder, 'node_modules/tsx/dist/cli.mjs');
  const script = path.join(projectFolder, 'src/build/serve.ts');
  const child = spawn(process.execPath, [tsx, script, ...options], {
    env: { ...process.env, ...(home !== undefined && { HOME: home, USERPROFILE: home }) },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  running = child;
  return new Promise((resolve) => {
    let said = '';
    const hear = (data: Buffer) => {
      said += data.toString();
      if (until.test(said)) resolve({ said, code: null });
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('close', (code) => {
      resolve({ said, code });
    });
  });
}

describe('the start command', () => {
  test('builds, prints the address of the workbench, and serves it on this machine alone', async () => {
    const { said } = await start(['--port', '0'], /Workbench: (\S+)/);
    const address = /Workbench: (http:\/\/127\.0\.0\.1:\d+\/workbench\.html)/.exec(said)?.[1];
    expect(address, said).toBeDefined();
    const page = await fetch(address!);
    expect(page.status).toBe(200);
    expect(await page.text()).toContain('<title>Loomsheet workbench</title>');
  });

  test.each(['many', '70000', '1.5'])('refuses the port %s in a sentence', async (port) => {
    const { said, code } = await start(['--port', port], /(?!)/);
    expect(code).toBe(1);
    expect(said).toMatch(/--port/);
    expect(said).not.toMatch(/^\s+at /m);
  });

  test('without a certificate for Excel says how to make one', async () => {
    const home = await mkdtemp(path.join(tmpdir(), 'loomsheet-home-'));
    const { said, code } = await start(['--https'], /(?!)/, home);
    await rm(home, { recursive: true });
    expect(code).toBe(1);
    expect(said).toMatch(/Make one with: npx office-addin-dev-certs@\d+\.\d+\.\d+ install/);
  });
});
