/** The build that ships: everything minified, pages that know their scripts, and what makes it work without a network. */
import { rmSync } from 'node:fs';
import type { KeptBuild } from '../workbench/offline-worker';
import { build } from './build';
import { writeOffline } from './offline/write-offline';
import { stampPages } from './stamp-pages';

/** Writes it into a folder in place of what is there, for the host that the environment names; answers what is kept offline. */
export async function buildShipped(folder: string): Promise<KeptBuild> {
  // Parts carry their content in their names: those of the last build would stay.
  rmSync(folder, { recursive: true, force: true });
  await build('production', undefined, folder);
  stampPages(folder);
  return writeOffline(folder);
}
