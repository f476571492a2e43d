import { availableParallelism } from 'node:os';
import { configDefaults, defineConfig } from 'vitest/config';

/** `vitest run --mode long` runs the long tests and only those. */
export default defineConfig(({ mode }) => ({
  test: {
    globalSetup: ['tests/support/build.ts'],
    include: [mode === 'long' ? 'tests/long/**/*.test.ts' : 'tests/**/*.test.ts'],
    exclude: [...configDefaults.exclude, ...(mode === 'long' ? [] : ['tests/long/**'])],
    // Tests that start commands and browsers wait for them: one worker more than there are cores keeps the cores busy.
    maxWorkers: availableParallelism() + 1,
    testTimeout: mode === 'long' ? 600_000 : 60_000,
    hookTimeout: 60_000,
  },
}));
