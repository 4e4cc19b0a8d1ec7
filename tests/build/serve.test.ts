/** What `npm start` says before it builds anything. */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import { expect, test } from 'vitest';
import { projectFolder } from '../../src/build/build-folders';

const TSX = path.join(projectFolder, 'node_modules', 'tsx', 'dist', 'cli.mjs');

function start(...args: string[]) {
  const serve = path.join(projectFolder, 'src', 'build', 'serve.ts');
  const { status, stdout, stderr } = spawnSync(process.execPath, [TSX, serve, ...args], {
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

test('helps, naming its options, and serves nothing', () => {
  const { status, stdout, stderr } = start('--help');
  expect([status, stderr]).toEqual([0, '']);
  for (const option of ['--port N', '--https', '--help']) expect(stdout).toContain(option);
  expect(stdout).not.toMatch(/Built|Workbench:/);
});

test.each([
  [['--prot', '4200'], /'--prot'/],
  [['4200'], /'4200'/],
])('tells of %j, which is no option, and serves nothing', (args, told) => {
  const { status, stdout, stderr } = start(...args);
  expect([status, stdout]).toEqual([1, '']);
  expect(stderr).toMatch(told);
  expect(stderr).toContain('npm start -- --help');
});
