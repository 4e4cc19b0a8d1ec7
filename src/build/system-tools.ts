/**
 * The first step of `npm test`: installs what the tests need beside Node where that may be done (Debian, as root), and
 * stops them with one sentence where it may not.
 */
import { spawnSync } from 'node:child_process';
import { commandPath } from './command-path';
import {
  hindranceBefore,
  missingFrom,
  stopSentence,
  type Hindrance,
  type Machine,
  type SystemPackage,
} from './system-packages';

const thisMachine: Machine = {
  hasCommand: (command) => commandPath(command) !== undefined,
  hasFont(family) {
    // Asked by name, fc-list prints one line a file, and nothing for a font that is not there.
    const asked = spawnSync('fc-list', [`:family=${family}`, 'family'], { encoding: 'utf8' });
    return asked.status === 0 && asked.stdout.trim() !== '';
  },
};

/** Runs apt-get, silent but for its complaints; true where it ended well. */
function aptGet(...args: readonly string[]): boolean {
  const ended = spawnSync('apt-get', args, {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  return ended.status === 0;
}

function install(missing: readonly SystemPackage[]): void {
  const packages = missing.map(({ debianPackage }) => debianPackage);
  console.log(`Installing ${packages.join(', ')} (a minute or two)`);
  // Where the lists cannot be had, those of last time may still do.
  aptGet('update', '-qq');
  aptGet('install', '-y', '-qq', '--no-install-recommends', ...packages);
}

function main(): number {
  let missing = missingFrom(thisMachine);
  if (missing.length === 0) return 0;
  let hindrance: Hindrance | null = hindranceBefore(thisMachine, process.getuid?.() === 0);
  if (hindrance === null) {
    install(missing);
    missing = missingFrom(thisMachine);
    if (missing.length === 0) return 0;
    hindrance = 'apt-get failed';
  }
  console.error(stopSentence(missing, hindrance));
  return 1;
}

process.exitCode = main();
