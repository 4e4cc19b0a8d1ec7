/** Loaded before each test file that judges mutants: says which one begins, and afterwards what of the source it ran. */
import { appendFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { afterAll, expect } from 'vitest';

declare global {
  var loomReached: Uint8Array | undefined;
}

/** More functions than the source has. */
const MOST_FUNCTIONS = 100_000;

const folder = process.env['LOOM_MUTATION_FOLDER']!;
const file = expect.getState().testPath!;
const reached = (globalThis.loomReached = new Uint8Array(MOST_FUNCTIONS));
appendFileSync(path.join(folder, 'begun'), `${process.pid} ${file}\n`);

// A mutant is caught by the first counterexample; nobody reads the smallest.
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });

afterAll(() => {
  if (process.env['LOOM_MUTATION_SURVEY'] !== '1') return;
  const numbers = [...reached.keys()].filter((number) => reached[number] === 1);
  const { user, system } = process.cpuUsage();
  const seconds = (user + system) / 1e6;
  writeFileSync(path.join(folder, 'surveyed'), JSON.stringify({ numbers, seconds }));
});
