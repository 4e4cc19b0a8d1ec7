/** Builds the pages once for all browser tests and serves them on a free port. */
import type { TestProject } from 'vitest/node';
import { build } from '../../src/build/build';
import { builtFolder } from '../../src/build/build-folders';
import { serve } from '../../src/build/web-server';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the built pages are served, such as http://127.0.0.1:40123. */
    origin: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await build('development');
  const server = await serve({
    folder: builtFolder,
    startPage: 'workbench.html',
    host: '127.0.0.1',
    port: 0,
    orNextFree: false,
  });
  project.provide('origin', server.origin);
  return () => server.close();
}
