import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { projectFolder } from '../../src/build/build-folders';
import {
  hindranceBefore,
  missingFrom,
  stopSentence,
  SYSTEM_PACKAGES,
  type Hindrance,
  type Machine,
} from '../../src/build/system-packages';

const FULL = SYSTEM_PACKAGES.map(({ sign }) => ('command' in sign ? sign.command : sign.font));

/** A machine with apt-get and all that is needed, but for these. */
function machineWithout(...lacking: readonly string[]): Machine {
  const has = new Set(['apt-get', ...FULL].filter((one) => !lacking.includes(one)));
  return { hasCommand: (command) => has.has(command), hasFont: (family) => has.has(family) };
}

const packagesMissing = (machine: Machine) =>
  missingFrom(machine).map(({ debianPackage }) => debianPackage);

describe('what is missing', () => {
  test('is nothing on a machine that has all', () => {
    expect(packagesMissing(machineWithout())).toEqual([]);
  });

  test.each(SYSTEM_PACKAGES)('is $debianPackage alone where that is', ({ sign, debianPackage }) => {
    const lacking = 'command' in sign ? sign.command : sign.font;
    expect(packagesMissing(machineWithout(lacking))).toEqual([debianPackage]);
  });

  test('is a font even where the command that lists fonts is there', () => {
    expect(packagesMissing(machineWithout('Liberation Sans'))).toEqual(['fonts-liberation']);
  });
});

describe('what hinders an installation', () => {
  test.each<[string, Machine, boolean, Hindrance | null]>([
    ['nothing, as root with apt-get', machineWithout(), true, null],
    ['the wrong person', machineWithout(), false, 'not root'],
    ['another system, even as root', machineWithout('apt-get'), true, 'no apt-get'],
    ['another system', machineWithout('apt-get'), false, 'no apt-get'],
  ])('%s', (_name, machine, isRoot, hindrance) => {
    expect(hindranceBefore(machine, isRoot)).toBe(hindrance);
  });
});

describe('what is said', () => {
  const missing = missingFrom(machineWithout('ngspice', 'Liberation Sans'));

  test.each<[Hindrance, RegExp]>([
    ['not root', /: install them with: sudo apt-get install ngspice fonts-liberation$/],
    ['no apt-get', /own means \(in Debian the packages are ngspice fonts-liberation\)$/],
    ['apt-get failed', /did not bring them; .*: apt-get install ngspice fonts-liberation$/],
  ])('where the reason is "%s"', (hindrance, remedy) => {
    const sentence = stopSentence(missing, hindrance);
    expect(sentence).toMatch(remedy);
    expect(sentence).toContain('ngspice (solves the same circuits)');
    expect(sentence).toContain('the font Liberation Sans (letters of printed sheets)');
    expect(sentence).not.toContain('\n');
  });
});

describe('the test command', () => {
  test('installs within the script itself: npm leaves out "pretest" where scripts are ignored', () => {
    const { scripts } = JSON.parse(
      readFileSync(path.join(projectFolder, 'package.json'), 'utf8'),
    ) as { readonly scripts: Readonly<Record<string, string>> };
    expect(scripts['test']).toMatch(/^tsx src\/build\/system-tools\.ts && /);
    expect(Object.keys(scripts).filter((name) => /^(pre|post)/.test(name))).toEqual([]);
  });

  test('stops at one sentence on a machine that has nothing, not even apt-get', () => {
    const bare = mkdtempSync(path.join(tmpdir(), 'loomsheet-bare-'));
    const tsx = path.join(projectFolder, 'node_modules/tsx/dist/cli.mjs');
    const script = path.join(projectFolder, 'src/build/system-tools.ts');
    const ended = spawnSync(process.execPath, [tsx, script], {
      encoding: 'utf8',
      env: { PATH: bare, HOME: bare },
    });
    rmSync(bare, { recursive: true });
    expect([ended.status, ended.stdout]).toEqual([1, '']);
    expect(ended.stderr.trimEnd()).toBe(
      stopSentence(missingFrom({ hasCommand: () => false, hasFont: () => false }), 'no apt-get'),
    );
  });
});
