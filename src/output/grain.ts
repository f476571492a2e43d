import type { Box } from '../geometry/region.js';
import { cos, sin } from '../geometry/trig.js';
import type { Wood } from '../shop/woods.js';
import { decimal } from './format.js';

/**
 * Grain lines of a wood over a box (mm, y down): slow waves that neighbours share, so that the lines flow together
 * like rings cut along their length, and pores as broken lines. Drawn from the seed alone. SVG text.
 */
export function grainLines(wood: Wood, box: Box, angle: number, seed: number): string {
  const random = lehmer(seed);
  const cx = (box.minX + box.maxX) / 2;
  const cy = (box.minY + box.maxY) / 2;
  const w = box.maxX - box.minX;
  const h = box.maxY - box.minY;
  // The box as seen along the grain, so that turned lines still cover its corners.
  const c = Math.abs(cos(angle));
  const s = Math.abs(sin(angle));
  const length = w * c + h * s;
  const across = w * s + h * c;
  const flow = waves(length, across, random);
  const spacing = Math.max(1.1, across / 55);
  const strokes: string[] = [];
  for (let y = -across / 2 - 4; y < across / 2 + 4; ) {
    const width = spacing * (0.12 + 0.3 * random() * random());
    const dark = 0.18 + 0.4 * random();
    strokes.push(
      stroke(flow, length, y, `stroke-width="${decimal(width, 2)}" stroke-opacity="${decimal(dark, 2)}"`),
    );
    if (wood.pores === 'open') strokes.push(pores(flow, length, y + spacing * 0.5, spacing, random));
    // Rings come in bands: some close together, some far apart.
    y += spacing * (0.45 + 1.3 * random() * random() + 0.35 * (1 + sin(y * 0.21)));
  }
  const turn = decimal(-(angle / Math.PI) * 180, 3);
  return (
    `<g transform="translate(${decimal(cx, 3)} ${decimal(cy, 3)}) rotate(${turn})" fill="none" stroke="${wood.grain}">` +
    `${strokes.join('')}</g>`
  );
}

type Flow = (x: number, y: number) => number;

/** How far a line that starts at height y has strayed at x: three long waves whose phase drifts with y. */
function waves(length: number, across: number, random: () => number): Flow {
  const size = Math.max(length, across, 1);
  const parts = [1.1, 2.3, 4.1].map((k) => ({
    k: (k * 2 * Math.PI) / (size * 1.7),
    drift: ((0.5 + random()) * 2.2) / size,
    phase: random() * 2 * Math.PI,
    height: (size * 0.018) / k,
  }));
  return (x, y) => {
    let sum = 0;
    for (const p of parts) sum += p.height * sin(p.k * x + p.phase + p.drift * y * 3);
    return sum;
  };
}

/** One line along the grain, as smooth quarter-wave steps. */
function stroke(flow: Flow, length: number, y: number, style: string): string {
  const n = 6;
  const step = (length + 8) / n;
  const at = (i: number): [number, number] => {
    const x = -length / 2 - 4 + i * step;
    return [x, y + flow(x, y)];
  };
  const slope = (i: number): number => (at(i + 1)[1] - at(i - 1)[1]) / 2;
  const point = (x: number, y: number): string => `${decimal(x, 1)} ${decimal(y, 1)}`;
  const [x0, y0] = at(0);
  let d = `M${point(x0, y0)}C${point(x0 + step / 3, y0 + slope(0) / 3)} `;
  for (let i = 1; i <= n; i++) {
    const [x, y] = at(i);
    d += `${i > 1 ? 'S' : ''}${point(x - step / 3, y - slope(i) / 3)} ${point(x, y)}`;
  }
  return `<path d="${d}" ${style}/>`;
}

function pores(flow: Flow, length: number, y: number, spacing: number, random: () => number): string {
  const dash = [0.6, 3 + 5 * random(), 2.2, 4 + 7 * random(), 1.2, 6 * random() + 2].map((v) =>
    decimal(v * Math.max(1, spacing), 1),
  );
  const width = decimal(0.11 * spacing, 2);
  return stroke(
    flow,
    length,
    y,
    `stroke-width="${width}" stroke-opacity=".45" stroke-dasharray="${dash.join(' ')}"`,
  );
}

/** Numbers in 0..1 from a seed: the minimal standard generator of Park and Miller (1988), exact in doubles. */
function lehmer(seed: number): () => number {
  let state = (seed % 2147483646) + 1;
  return () => {
    state = (state * 16807) % 2147483647;
    return (state - 1) / 2147483646;
  };
}
