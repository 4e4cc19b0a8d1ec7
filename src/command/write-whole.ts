/** A file written whole or not at all: what stood there before is lost to no failure. */
import { access, constants, open, realpath, rename, rm, stat } from 'node:fs/promises';

/** What of the disk is used, so that its failures can be tried. */
export interface Disk {
  readonly access: typeof access;
  readonly open: typeof open;
  readonly rename: typeof rename;
}

const NODE: Disk = { access, open, rename };

const isAbsent = (fault: unknown) =>
  fault instanceof Error && 'code' in fault && fault.code === 'ENOENT';

/** The file that a name leads to, with its rights, where there is one. */
async function before(path: string, disk: Disk): Promise<{ target: string; mode?: number }> {
  try {
    const target = await realpath(path);
    // A file that its owner has closed to writing is not replaced either.
    await disk.access(target, constants.W_OK);
    return { target, mode: (await stat(target)).mode };
  } catch (fault) {
    if (isAbsent(fault)) return { target: path };
    throw fault;
  }
}

/**
 * Writes beside the place, under a name that nothing has, and moves there once all of it is on the disk. Rejects with the
 * disk's own words; then the old file stands as it was, and nothing is left beside it.
 */
export async function writeWhole(
  path: string,
  bytes: Uint8Array | string,
  disk: Disk = NODE,
): Promise<void> {
  const { target, mode } = await before(path, disk);
  const part = `${target}.${process.pid}-${Date.now().toString(36)}.part`;
  const handle = await disk.open(part, 'wx', mode);
  try {
    try {
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await disk.rename(part, target);
  } catch (fault) {
    await rm(part, { force: true });
    throw fault;
  }
}
