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
          testTimeout: 60_000,
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
          testTimeout: 60_000,
          hookTimeout: 120_000,
          // What a page comes to show is waited for; a busy machine needs longer than the usual second.
          expect: { poll: { timeout: 15_000 } },
        },
      },
    ],
  },
});
