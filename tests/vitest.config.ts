import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  cacheDir: '.cache/vitest',
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
          environment: 'node',
          // A slow or busy machine is no failure.
          testTimeout: 180_000,
          // The default leaves one core idle: half of a machine with two.
          maxWorkers: '100%',
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          testTimeout: 600_000,
          hookTimeout: 600_000,
          fileParallelism: false,
          // A slow machine is no failure: what is polled for has this long to come.
          expect: { poll: { timeout: 20_000 } },
        },
      },
    ],
  },
});
