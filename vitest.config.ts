import { configDefaults, defineConfig } from 'vitest/config';

/** `vitest run --mode long` runs the long tests and only those. */
export default defineConfig(({ mode }) => ({
  test: {
    globalSetup: ['tests/support/build.ts'],
    include: [mode === 'long' ? 'tests/long/**/*.test.ts' : 'tests/**/*.test.ts'],
    exclude: [...configDefaults.exclude, ...(mode === 'long' ? [] : ['tests/long/**'])],
    testTimeout: mode === 'long' ? 600_000 : 60_000,
    hookTimeout: 60_000,
  },
}));
