/**
 * Programs that the tests need beside Node: installed where that may be done (Debian, as root), named where it may not.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';

interface SystemTool {
  /** A command that has to be on the PATH. */
  readonly command: string;
  readonly debianPackage: string;
  readonly why: string;
}

export const SYSTEM_TOOLS: readonly SystemTool[] = [
  { command: 'chromium', debianPackage: 'chromium', why: 'opens the pages' },
  { command: 'soffice', debianPackage: 'libreoffice-calc', why: 'calculates written workbooks' },
  { command: 'units', debianPackage: 'units', why: 'knows the wire gauge' },
  { command: 'ngspice', debianPackage: 'ngspice', why: 'solves the same circuits' },
  { command: 'pdftotext', debianPackage: 'poppler-utils', why: 'reads printed pages' },
  { command: 'fc-list', debianPackage: 'fontconfig', why: 'lends the pages its fonts' },
];

function isOnPath(command: string): boolean {
  return (process.env['PATH'] ?? '')
    .split(path.delimiter)
    .some((folder) => existsSync(path.join(folder, command)));
}

function run(command: string, args: readonly string[]): boolean {
  const result = spawnSync(command, args, {
    stdio: 'inherit',
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  return result.status === 0;
}

function main(): number {
  const missing = SYSTEM_TOOLS.filter(({ command }) => !isOnPath(command));
  if (missing.length === 0) return 0;
  const packages = missing.map(({ debianPackage }) => debianPackage);
  const mayInstall = process.getuid?.() === 0 && isOnPath('apt-get');
  if (mayInstall) {
    console.log(`Installing ${packages.join(', ')}`);
    run('apt-get', ['update', '-qq']);
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...packages]);
  }
  const stillMissing = SYSTEM_TOOLS.filter(({ command }) => !isOnPath(command));
  for (const { command, debianPackage, why } of stillMissing) {
    console.error(`Missing: ${command} (${why}). On Debian: apt-get install ${debianPackage}`);
  }
  return stillMissing.length === 0 ? 0 : 1;
}

process.exitCode = main();
