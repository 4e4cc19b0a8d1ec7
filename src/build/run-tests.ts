/**
 * `npm test` after the system's programs: what is checked of the source and of the pages, in two lanes at once, since
 * neither half of it keeps two cores busy. A lane stops at its first step that fails, the other goes on to its end.
 */
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { projectFolder } from './build-folders';

/**
 * Scripts of package.json, in their order. Browsers run one at a time; the tests of the code alone fill every core, and stand
 * back where a browser wants one.
 */
const LANES: readonly (readonly string[])[] = [
  ['lint:format', 'lint:types', 'test:browser'],
  ['lint:code', 'test:code'],
];

/** Runs one script, each of its lines under its name; true where it ended well. */
function ran(script: string): Promise<boolean> {
  // A shell finds npm on every system; the names are those above.
  const child = spawn(`npm run --silent ${script}`, {
    cwd: projectFolder,
    shell: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  for (const [from, to] of [
    [child.stdout, process.stdout],
    [child.stderr, process.stderr],
  ] as const) {
    createInterface({ input: from }).on('line', (line) => to.write(`${script} | ${line}\n`));
  }
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      resolve(code === 0);
    });
  });
}

/** The scripts of a lane that did not end well: the one that failed, and those that did not begin for it. */
async function unproved(lane: readonly string[]): Promise<readonly string[]> {
  for (const [place, script] of lane.entries()) {
    if (!(await ran(script))) return lane.slice(place);
  }
  return [];
}

async function main(): Promise<void> {
  const began = performance.now();
  const open = (await Promise.all(LANES.map(unproved))).flat();
  const seconds = Math.round((performance.now() - began) / 1000);
  console.log(
    open.length === 0
      ? `All held: ${LANES.flat().join(', ')}; ${seconds} s.`
      : `Failed or not begun: ${open.join(', ')}; ${seconds} s.`,
  );
  if (open.length > 0) process.exitCode = 1;
}

main().catch((fault: unknown) => {
  console.error(fault);
  process.exitCode = 1;
});
