/** The parts of css-tree that need no tables of CSS's own syntax; its types are kept for the whole only. */
declare module 'css-tree/parser' {
  import type { parse } from 'css-tree';

  const parser: typeof parse;
  export default parser;
}

declare module 'css-tree/generator' {
  import type { generate } from 'css-tree';

  const generator: typeof generate;
  export default generator;
}
