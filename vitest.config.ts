import { availableParallelism } from 'node:os';
import { configDefaults, defineConfig } from 'vitest/config';

/** Tests that put other modules in the place of some: what they load is no other test's. */
const ALONE = ['tests/page/drawing/**/*.test.ts', 'tests/proof/twice.test.ts', 'tests/undecided.test.ts'];

/** Once, not for each project. */
const BUILD = ['tests/support/build.ts'];

/** `vitest run --mode long` runs the long tests and only those. */
export default defineConfig(({ mode }) => ({
  test: {
    // Tests that start commands and browsers wait for them: one worker more than there are cores keeps the cores busy.
    maxWorkers: availableParallelism() + 1,
    testTimeout: 60_000,
    hookTimeout: 60_000,
    projects:
      mode === 'long'
        ? [
            {
              extends: true,
              test: {
                name: 'long',
                include: ['tests/long/**/*.test.ts'],
                globalSetup: BUILD,
                // Said here: what a project extends is read as for no mode.
                testTimeout: 600_000,
              },
            },
          ]
        : [
            // Modules are loaded and compiled once a worker, not once a file: that took a seventh of the time.
            {
              extends: true,
              test: {
                name: 'together',
                include: ['tests/**/*.test.ts'],
                exclude: [...configDefaults.exclude, 'tests/long/**', ...ALONE],
                isolate: false,
                globalSetup: BUILD,
              },
            },
            { extends: true, test: { name: 'alone', include: ALONE } },
          ],
  },
}));
