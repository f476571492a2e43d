import { type Contour, circle } from '../../src/geometry/region.js';
import { type Hard, hole, piece } from './hard-shapes.js';
import { randomPolygon, seeded } from './random.js';

/** A random outline: one to four pieces of polygons and discs, some with a hole, some of several shapes. */
export function randomOutline(seed: number): Hard {
  const random = seeded(seed * 7691 + 5);
  const size = 10 + random() * 26;
  const count = 1 + Math.floor(random() * 4);
  const pieces = Array.from({ length: count }, (_, i) => {
    const [x, y] = [(random() - 0.5) * size, (random() - 0.5) * size];
    return piece(`p${i}`, ...shape(random, x, y, 4 + random() * 9));
  });
  const touch = random() < 0.5 ? 'part' : 'join';
  return { name: `seed ${seed}`, pieces, rule: { r: 0.8 + random() * 1.2, thin: 'drop', touch } };
}

function shape(random: () => number, x: number, y: number, size: number): Contour[] {
  const kind = random();
  if (kind < 0.15) return [circle(x, y, size)];
  if (kind < 0.3) return [circle(x, y, size), hole(randomPolygon(random, x, y, 0.8 * size))];
  return [randomPolygon(random, x, y, size)];
}
