import { defineConfig } from 'vite';

/** Builds the page into the package. Nothing is inlined: the page's policy lets no inline script run. */
export default defineConfig({
  root: 'src/page',
  base: './',
  build: {
    outDir: '../../dist/page',
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: false,
    reportCompressedSize: false,
  },
  worker: { format: 'es' },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
