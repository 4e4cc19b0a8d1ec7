/** How the tests run: those of the code alone, and those that open the built pages in a browser. */
import path from 'node:path';
import { defineConfig } from 'vitest/config';

const root = path.resolve(import.meta.dirname, '../..');

export default defineConfig({
  root,
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'code',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**'],
          globalSetup: ['tests/config/stand-back.ts'],
          // Loading the source anew for each of a hundred files takes longer than most of them: all share its modules, and
          // what a test puts on the global scope it takes off again.
          isolate: false,
          // Ends what would never end; how fast things are is for `npm run bench`.
          testTimeout: 600_000,
          hookTimeout: 600_000,
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/serve-for-tests.ts'],
          // One browser at a time: two of them drawing at once on a small machine make each other late.
          fileParallelism: false,
          isolate: false,
          // Its number of workers is its own, which asks for a turn of its own where both kinds run in one command.
          sequence: { groupOrder: 1 },
          testTimeout: 240_000,
          hookTimeout: 240_000,
          // What a page comes to show is waited for, and no longer than it takes; these end what would never come.
          expect: { poll: { timeout: 60_000 } },
        },
      },
    ],
  },
});
