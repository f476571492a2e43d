import { configDefaults, defineConfig } from 'vitest/config';

/** `vitest run --mode long` runs the long tests and only those. */
export default defineConfig(({ mode }) => ({
  test: {
    globalSetup: ['tests/support/build.ts'],
    include: [mode === 'long' ? 'tests/long/**/*.test.ts' : 'tests/**/*.test.ts'],
    exclude: [...configDefaults.exclude, ...(mode === 'long' ? [] : ['tests/long/**'])],
    // By default one core is left idle, which on two is half of them.
    maxWorkers: '100%',
    testTimeout: mode === 'long' ? 600_000 : 60_000,
    hookTimeout: 60_000,
  },
}));
