import { defineConfig } from 'vite';

/** Builds the page into the package. Nothing is inlined: the page's policy lets no inline script run. */
export default defineConfig({
  root: 'src/page',
  base: './',
  build: {
    outDir: '../../dist/page',
    emptyOutDir: true,
    target: 'es2022',
    // Browsers that know light-dark() themselves: written for older ones it could not change within the page.
    cssTarget: ['chrome123', 'firefox120', 'safari17.5'],
    assetsInlineLimit: 0,
    modulePreload: false,
    reportCompressedSize: false,
    // What is built in goes out with us, so its licences do too.
    license: { fileName: 'licences.md' },
  },
  worker: { format: 'es' },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
