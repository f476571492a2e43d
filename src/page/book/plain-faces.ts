import type { Entry } from '../worker/protocol.js';

/** The frame of a plain face, mm. */
const FRAME = 4;

/**
 * A recipe for a face of one shape at its usual size. There is no recipe without a pattern, so it has the plainest: a
 * frame at the margin, in whose place any pattern can be put.
 */
export function plainFace({ name, parameters }: Pick<Entry, 'name' | 'parameters'>): string {
  const sizes = Object.fromEntries(
    parameters.filter((p) => p.kind === 'length' || p.kind === 'count').map((p) => [p.name, p.default]),
  );
  return laidOut({
    name: `plain-${name}`,
    outline: { shape: name, ...sizes },
    pattern: { generator: 'panel', width: FRAME },
    cutter: { diameter: '1/8in', flute: 16 },
    depth: 10,
  });
}

/** A recipe's text with a line for each key, as people write and read it. */
export function laidOut(recipe: unknown): string {
  return `${JSON.stringify(recipe, null, 2)}\n`;
}
