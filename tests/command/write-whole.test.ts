/** What the command writes is there whole, or what was there before is. */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { access, open, rename } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { projectFolder } from '../../src/build/build-folders';
import { writeWhole, type Disk } from '../../src/command/write-whole';

const OLD = 'the schedule of last winter';
const NEW = 'a new schedule, longer than the old one was';

let room: string;
const at = (name: string) => path.join(room, name);
const text = (name: string) => readFileSync(at(name), 'utf8');

beforeEach(() => {
  room = mkdtempSync(path.join(tmpdir(), 'loomsheet-whole-'));
  writeFileSync(at('hut.xlsx'), OLD);
});
afterEach(() => {
  rmSync(room, { recursive: true, force: true });
});

class DiskFull extends Error {
  readonly code = 'ENOSPC';
}

/** A disk that is full in the middle of a file. */
const full: Disk = {
  access,
  rename,
  open: async (...given) => {
    const handle = await open(...given);
    const write = handle.writeFile.bind(handle);
    handle.writeFile = async (data) => {
      await write(String(data).slice(0, 9));
      throw new DiskFull('no space left');
    };
    return handle;
  },
};

/** One that writes, and then cannot move: the old file is open in a program that holds on to it. */
const held: Disk = { access, open, rename: () => Promise.reject(new Error('busy')) };
/** One whose last bytes are refused when they are put down for good. */
const unsure: Disk = {
  access,
  rename,
  open: async (...given) => {
    const handle = await open(...given);
    handle.sync = () => Promise.reject(new DiskFull('no space left'));
    return handle;
  },
};

describe('a write that fails', () => {
  it.each([
    ['in the middle', full, 'no space left'],
    ['at the end', unsure, 'no space left'],
    ['when it takes the place', held, 'busy'],
  ])('%s costs neither the old file nor leaves half a new one', async (_, disk, words) => {
    await expect(writeWhole(at('hut.xlsx'), NEW, disk)).rejects.toThrow(words);
    await expect(writeWhole(at('other.xlsx'), NEW, disk)).rejects.toThrow(words);
    expect(text('hut.xlsx')).toBe(OLD);
    expect(readdirSync(room)).toEqual(['hut.xlsx']);
  });

  it('to a file that its owner closed to writing leaves it as it is', async () => {
    // Tests may run as a user who may write everywhere.
    const closed = new Error('not permitted');
    const disk: Disk = { open, rename, access: () => Promise.reject(closed) };
    await expect(writeWhole(at('hut.xlsx'), NEW, disk)).rejects.toThrow('not permitted');
    expect(text('hut.xlsx')).toBe(OLD);
    expect(readdirSync(room)).toEqual(['hut.xlsx']);
  });

  it('on a disk of the system that takes no more bytes keeps the old workbook', () => {
    writeFileSync(at('runs.csv'), 'Name,Current (A),Length (ft)\nHut trunk,24,7\n');
    const tsx = path.join(projectFolder, 'node_modules/tsx/dist/cli.mjs');
    const command = path.join(projectFolder, 'src/command/main.ts');
    // The shell's limit on the size of files, in blocks: far below a workbook. The command itself writes no other file.
    const script = `trap '' XFSZ; ulimit -f 4; exec "$0" "$@"`;
    const { status, stderr } = spawnSync(
      'bash',
      ['-c', script, process.execPath, tsx, command, at('runs.csv'), at('hut.xlsx')],
      { encoding: 'utf8', env: { ...process.env, TSX_DISABLE_CACHE: '1' } },
    );
    expect(stderr).toMatch(/hut\.xlsx" could not be written: EFBIG/);
    expect(status).toBe(3);
    expect(text('hut.xlsx')).toBe(OLD);
    expect(readdirSync(room).sort()).toEqual(['hut.xlsx', 'runs.csv']);
  });
});

describe('a write that succeeds', () => {
  it('takes the place of the old file, with its rights', async () => {
    chmodSync(at('hut.xlsx'), 0o640);
    await writeWhole(at('hut.xlsx'), NEW);
    expect(text('hut.xlsx')).toBe(NEW);
    expect(statSync(at('hut.xlsx')).mode & 0o777).toBe(0o640);
    expect(readdirSync(room)).toEqual(['hut.xlsx']);
  });

  it('goes where a link leads, and leaves the link', async () => {
    mkdirSync(at('kept'));
    writeFileSync(at('kept/van.xlsx'), OLD);
    symlinkSync(at('kept/van.xlsx'), at('van.xlsx'));
    await writeWhole(at('van.xlsx'), NEW);
    expect(text('kept/van.xlsx')).toBe(NEW);
    expect(readdirSync(at('kept'))).toEqual(['van.xlsx']);
  });

  it('overwrites nothing that only looks like its own', async () => {
    writeFileSync(at('hut.xlsx.part'), 'somebody’s');
    await writeWhole(at('hut.xlsx'), NEW);
    expect(text('hut.xlsx.part')).toBe('somebody’s');
  });
});
