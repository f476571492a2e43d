import { sin } from '../../geometry/trig.js';

/*
 * Grain as one tile that repeats: along it every line comes back to the height it began at, and across it the flow
 * that neighbours share has gone round once, so that no seam shows. Drawn once a size of piece, not once a repaint.
 */

export interface Tile {
  /** mm. */
  readonly width: number;
  readonly height: number;
  /** Strokes of like weight: path data, width in mm, how dark. */
  readonly strokes: readonly { readonly d: string; readonly width: number; readonly dark: number }[];
}

/** Lines in a tile, and points on each. */
const LINES = 30;
const STEPS = 8;
const WEIGHTS = [
  { width: 0.16, dark: 0.24 },
  { width: 0.26, dark: 0.34 },
  { width: 0.4, dark: 0.4 },
] as const;

/** A tile for a piece of this size, mm. Another seed gives another wood its own lines. */
export function tileFor(size: number, seed: number): Tile {
  const width = size * 0.83;
  const height = size * 0.41;
  const random = lehmer(seed);
  const phase = [random() * 7, random() * 7, random() * 7];
  const flow = (x: number, y: number): number => {
    const [u, v] = [(2 * Math.PI * x) / width, (2 * Math.PI * y) / height];
    return (
      size *
      (0.009 * sin(u + v + phase[0]!) +
        0.005 * sin(2 * u - v + phase[1]!) +
        0.002 * sin(3 * u + 2 * v + phase[2]!))
    );
  };
  const data: string[][] = WEIGHTS.map(() => []);
  // Rings come in bands: some close together, some far apart.
  const gaps = Array.from({ length: LINES }, () => 0.35 + 1.4 * random() * random());
  const all = gaps.reduce((a, b) => a + b, 0);
  let y = 0;
  for (const gap of gaps) {
    y += (gap / all) * height;
    const weight = Math.min(WEIGHTS.length - 1, Math.floor(3.4 * random() * random()));
    // What strays over the tile's edge is drawn on the other side as well.
    for (const shift of [-height, 0, height]) {
      if (touches(y + shift, height, size)) data[weight]!.push(line(y + shift, width, (x) => flow(x, y)));
    }
  }
  const unit = size / 130;
  return {
    width,
    height,
    strokes: WEIGHTS.map((w, k) => ({ d: data[k]!.join(''), width: w.width * unit, dark: w.dark })),
  };
}

function touches(y: number, height: number, size: number): boolean {
  return y > -0.02 * size && y < height + 0.02 * size;
}

/** One line along the tile, as smooth steps that end as they began. */
function line(y: number, width: number, stray: (x: number) => number): string {
  const step = width / STEPS;
  const slope = (i: number): number => (stray((i + 1) * step) - stray((i - 1) * step)) / 2;
  const p = (x: number, v: number): string => `${x.toFixed(2)} ${v.toFixed(2)}`;
  let d = `M${p(0, y + stray(0))}C${p(step / 3, y + stray(0) + slope(0) / 3)} `;
  for (let i = 1; i <= STEPS; i++) {
    const [x, v] = [i * step, y + stray(i * step)];
    d += `${i > 1 ? 'S' : ''}${p(x - step / 3, v - slope(i) / 3)} ${p(x, v)}`;
  }
  return d;
}

/** Numbers in 0..1 from a seed: the minimal standard generator of Park and Miller (1988). */
function lehmer(seed: number): () => number {
  let state = (seed % 2147483646) + 1;
  return () => {
    state = (state * 16807) % 2147483647;
    return (state - 1) / 2147483646;
  };
}
