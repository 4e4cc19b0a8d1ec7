/** The pages as they ship, built once for all tests of them. */
import path from 'node:path';
import { projectFolder } from '../../src/build/build-folders';
import { buildShipped } from '../../src/build/shipped-build';

let built: Promise<string> | undefined;

/** The folder that `npm run build` would write for this machine; tests that change something in it take a copy. */
export function shippedFolder(): Promise<string> {
  built ??= (async () => {
    const folder = path.join(projectFolder, '.cache/shipped');
    await buildShipped(folder);
    return folder;
  })();
  return built;
}
