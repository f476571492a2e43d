import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseAst } from 'rolldown/parseAst';
import { describe, expect, it } from 'vitest';

/** Not its radius: rules of the cutter have one too. */
const OF_AN_EDGE = ['x0', 'y0', 'x1', 'y1', 'cx', 'cy'];

type Node = { type: string; start: number; end: number; [key: string]: unknown };

const isNode = (v: unknown): v is Node => typeof v === 'object' && v !== null && 'type' in v;
const nodesIn = (v: unknown): Node[] =>
  Array.isArray(v) ? v.flatMap(nodesIn) : isNode(v) ? [v, ...Object.values(v).flatMap(nodesIn)] : [];

/** Does the object, or what is spread into it, name a number of an edge? */
function naming(object: Node): boolean {
  return (object.properties as Node[]).some((p) =>
    p.type === 'SpreadElement'
      ? nodesIn(p.argument).some((n) => n.type === 'ObjectExpression' && naming(n))
      : OF_AN_EDGE.includes(String((p.key as Node).name)),
  );
}

/** Where a text makes an edge of another by spreading or assigning. */
function spreadEdges(text: string): string[] {
  return nodesIn(parseAst(text, { lang: 'ts' }).body)
    .filter((n) => {
      if (n.type === 'ObjectExpression')
        return (n.properties as Node[]).some((p) => p.type === 'SpreadElement') && naming(n);
      if (n.type !== 'CallExpression' || text.slice(n.start).search(/Object\s*\.\s*assign\b/) !== 0)
        return false;
      return (n.arguments as Node[]).some((a) => a.type === 'ObjectExpression' && naming(a));
    })
    .map((n) => text.slice(n.start, n.end));
}

describe('edges', () => {
  // Sums that meet an edge made so beside others put each number they read on the heap: the pass was a third slower for it.
  it('are never made by spreading one into another', () => {
    const src = join(import.meta.dirname, '../../src');
    // The proof has no edges of this kind: it keeps all its numbers in columns.
    const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter(
      (f) => f.endsWith('.ts') && !f.startsWith('proof'),
    );
    expect(files.length).toBeGreaterThan(400);
    const found = files.flatMap((file) =>
      spreadEdges(readFileSync(join(src, file), 'utf8')).map((made) => `${file}: ${made}`),
    );
    expect(found).toEqual([]);
  });

  it.each([
    '{ ...e, x0: x, y0: y }',
    '{ ...e, x0, y0 }',
    '{ x0: 1, ...e }',
    '{ ...e, r: -e.r, cx: 0 }',
    '{ ...e, x0: f({ a: 1 }) }',
    '{ ...e, ...(i === 0 ? { x0: 3 } : {}) }',
    'Object.assign({}, e, { x0: 1 })',
  ])('made as %s are found', (made) => {
    expect(spreadEdges(`const out: Edge = ${made};`)[0]).toBe(made);
  });

  it('moved within something else are none', () => {
    expect(spreadEdges('const s = { ...stretch, edge: moved(e, x0, y0, x1, y1), at: { x0: 1 } };')).toEqual(
      [],
    );
    expect(spreadEdges('const a = [...list, line(x0, y0, x1, y1)]; Object.assign(a, { of: 1 });')).toEqual(
      [],
    );
  });
});
