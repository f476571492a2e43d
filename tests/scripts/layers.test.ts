import { describe, expect, it } from 'vitest';
import { faults } from '../../scripts/layers.mjs';

/** Faults of made-up sources, `{ 'room/file.ts': text }`. */
const check = (files: Record<string, string>): string[] => faults(new Map(Object.entries(files)));
const one = (path: string, text: string): string[] => check({ [path]: text });

describe('rooms', () => {
  it.each([
    ['geometry/a.ts', "import { b } from '../cutter/b.js';", 'geometry may not import from cutter'],
    ['schema/a.ts', "import type { B } from '../geometry/b.js';", 'schema may not import from geometry'],
    ['generators/a.ts', "import '../recipe/b.js';", 'generators may not import from recipe'],
    ['outline/a.ts', "import * as b from '../generators/b.js';", 'outline may not import from generators'],
    ['generators/radial/a.ts', "import { b } from '../../fit/b.js';", 'generators may not import from fit'],
    ['recipe/a.ts', "export { b } from '../cutter/b.js';", 'recipe may not import from cutter'],
    ['cutter/a.ts', "export * from '../fit/b.js';", 'cutter may not import from fit'],
    ['inspect/a.ts', "const b = await import('../output/b.js');", 'inspect may not import from output'],
    ['shop/a.ts', "let b: import('../recipe/b.js').B;", 'shop may not import from recipe'],
    ['proof/a.ts', "import {\n  b,\n  c,\n} from '../geometry/b.js';", 'proof may not import from geometry'],
    ['output/a.ts', "import { b } from '../commands/b.js';", 'output may not import from commands'],
    ['build.ts', "import type { B } from './proof/b.js';", 'build may not import from proof'],
    ['build.ts', "import { b } from './commands/b.js';", 'build may not import from commands'],
    ['index.ts', "export { b } from './commands/b.js';", 'index may not import from commands'],
    ['cli.ts', "import { b } from './geometry/b.js';", 'cli may not import from geometry'],
    ['attic/a.ts', '', 'room "attic" is not in'],
    ['geometry/a.ts', 'const b = await import(name);', 'import() needs a plain string'],
  ])('%s refuses %j', (path, text, message) => {
    const found = one(path, text);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(message);
  });

  it.each([
    ['fit/a.ts', 'recipe'],
    ['output/a.ts', 'proof'],
  ])('%s may import only types from %s', (path, room) => {
    const message = `may import only types from ${room}`;
    expect(one(path, `import type { B } from '../${room}/b.js';`)).toEqual([]);
    expect(one(path, `import { type B, type C } from '../${room}/b.js';`)).toEqual([]);
    expect(one(path, `export type { B } from '../${room}/b.js';`)).toEqual([]);
    expect(one(path, `import { type B, c } from '../${room}/b.js';`)[0]).toContain(message);
    expect(one(path, `import { B } from '../${room}/b.js';`)[0]).toContain(message);
    expect(one(path, `import type, { B } from '../${room}/b.js';`)[0]).toContain(message);
  });

  it('lets rooms look down, and into themselves', () => {
    expect(one('cutter/a.ts', "import { b } from '../geometry/b.js'; import { c } from './c.js';")).toEqual(
      [],
    );
    expect(one('generators/radial/a.ts', "import { b } from '../generator.js';")).toEqual([]);
    expect(one('commands/make.ts', "import { p } from '../proof/index.js'; import 'node:fs';")).toEqual([]);
    expect(one('cli.ts', "import { run } from './commands/run.js'; process.exitCode = run();")).toEqual([]);
  });

  it.each(['node:fs', 'fs', 'node:path/posix'])('keeps %s to commands', (name) => {
    expect(one('output/a.ts', `import x from '${name}';`)[0]).toContain(`may import ${name}`);
    expect(one('build.ts', `import x from '${name}';`)).toHaveLength(1);
  });

  it('names file and line', () => {
    expect(one('geometry/a.ts', "const s = 'import';\n\nimport { b } from '../fit/b.js';")).toEqual([
      'src/geometry/a.ts:3: geometry may not import from fit',
    ]);
  });
});

describe('cycles', () => {
  it('finds a cycle of files in one room', () => {
    const found = check({
      'geometry/a.ts': "import { b } from './b.js';",
      'geometry/b.ts': "import type { C } from './c.js';",
      'geometry/c.ts': "export { a } from './a.js';",
    });
    expect(found).toEqual(['import cycle: geometry/a.ts -> geometry/b.ts -> geometry/c.ts -> geometry/a.ts']);
  });

  it('lets two files share a third', () => {
    const found = check({
      'geometry/a.ts': "import { b } from './b.js'; import { c } from './c.js';",
      'geometry/b.ts': "import { c } from './c.js';",
      'geometry/c.ts': '',
    });
    expect(found).toEqual([]);
  });
});

describe('unsteady results', () => {
  it.each([
    ...'sin cos tan asin acos atan atan2 sinh cosh tanh asinh acosh atanh'.split(' '),
    ...'pow exp expm1 log log1p log2 log10 hypot cbrt random'.split(' '),
  ])('refuses Math.%s everywhere', (name) => {
    expect(one('geometry/a.ts', `const x = Math.${name}(1);`)[0]).toContain(`Math.${name}`);
    expect(one('commands/a.ts', `const x = Math\n  .${name}(1);`)[0]).toContain(`Math.${name}`);
  });

  it.each([
    ['const { sin } = Math;', 'Math is to be used as Math.name'],
    ["const x = Math['sin'](1);", 'Math is to be used as Math.name'],
    ['const x = 2 ** 0.5;', '**'],
    ['const x = 2 ** n;', '**'],
    ['x **= 1.5;', '**'],
    ['const d = new Date();', 'Date'],
    ['const d = Date.now();', 'Date'],
    ['const f = new Intl.NumberFormat();', 'Intl'],
    ['const s = x.toLocaleString();', 'toLocaleString'],
    ['names.sort((a, b) => a.localeCompare(b));', 'localeCompare'],
    ['const p = process.platform;', 'process'],
    ['const p = globalThis.process;', 'globalThis'],
    ['const t = performance.now();', 'performance'],
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the template belongs to the made-up source
    ['const s = `${{ a: Math.sin(1) }.a}`;', 'Math.sin'],
    ['const q = /[/"`]/.test(s) ? Math.cos(1) : a / b;', 'Math.cos'],
  ])('refuses %j', (text, message) => {
    const found = one('geometry/a.ts', text);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(message);
  });

  it('lets through what is steady, and words in comments and strings', () => {
    const text = [
      '// Math.sin, Date and process are not used here',
      '/** Math.pow(2, 0.5) and 2 ** 0.5 differ */',
      'const s = \'Math.sin(1) import x from "../fit/b.js"\';',
      // biome-ignore lint/suspicious/noTemplateCurlyInString: the template belongs to the made-up source
      'const t = `Date ${Math.sqrt(x / 2)} process ${`${a}` + "}"} Intl`;',
      'const u = x ** 2 + Math.abs(y) + Math.PI + this.process / 2 / task.process;',
      'const v = /Math.sin/.test(s);',
    ].join('\n');
    expect(one('geometry/a.ts', text)).toEqual([]);
  });

  it('lets commands use the process', () => {
    expect(one('commands/a.ts', 'process.exitCode = 1; const t = performance.now();')).toEqual([]);
  });
});
