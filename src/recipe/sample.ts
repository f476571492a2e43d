import type { Generator } from '../generators/generator.js';

/**
 * A recipe, as text, that shows a generator at its defaults: on a round face of 100 mm for radial figures, on a square
 * box lid for others, cut with 1/8 in. It is what `list --pictures` and the gallery draw.
 */
export function sampleText(generator: Generator): string {
  const round = generator.family === 'radial';
  const face = round
    ? { shape: 'circle', diameter: 100, margin: 5 }
    : { shape: 'rectangle', width: 100, height: 100, margin: 6 };
  return JSON.stringify({
    name: generator.name,
    outline: face,
    pattern: { generator: generator.name },
    cutter: { diameter: '1/8in', flute: 16 },
    depth: 10,
  });
}
