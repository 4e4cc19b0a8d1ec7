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

/** So much of what a failed script said last is said again at the end, where a long log of both lanes is read first. */
const LAST_LINES = 150;

interface Ended {
  readonly well: boolean;
  readonly lastLines: readonly string[];
}

/** Runs one script, each of its lines under its name. */
function ran(script: string): Promise<Ended> {
  const lastLines: string[] = [];
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
    createInterface({ input: from }).on('line', (line) => {
      const told = `${script} | ${line}\n`;
      to.write(told);
      lastLines.push(told);
      if (lastLines.length > LAST_LINES) lastLines.shift();
    });
  }
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      resolve({ well: code === 0, lastLines });
    });
  });
}

interface Unproved {
  /** The script that failed, and those that did not begin for it. */
  readonly scripts: readonly string[];
  readonly lastLines: readonly string[];
}

/** What of a lane did not end well. */
async function unproved(lane: readonly string[]): Promise<Unproved> {
  for (const [place, script] of lane.entries()) {
    const { well, lastLines } = await ran(script);
    if (!well) return { scripts: lane.slice(place), lastLines };
  }
  return { scripts: [], lastLines: [] };
}

async function main(): Promise<void> {
  const began = performance.now();
  const lanes = await Promise.all(LANES.map(unproved));
  const open = lanes.flatMap(({ scripts }) => scripts);
  const seconds = Math.round((performance.now() - began) / 1000);
  process.stdout.write(lanes.flatMap(({ lastLines }) => lastLines).join(''));
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
