import fc from 'fast-check';
import { expect, it } from 'vitest';
import { bulgedContour } from '../../src/geometry/region.js';
import { type Frame, ringBulge, toRing } from '../../src/output/ring.js';

const FRAMES: Frame[] = [
  { units: 'mm', width: 200e6, height: 200e6 },
  { units: 'in', width: 8e6, height: 8e6 },
];

/**
 * Worst turn, in degrees, at the joints between a corner's arc and the lines that touch it, from the written whole
 * numbers alone: the line's direction against the chord's direction turned by half the arc's sweep, 2 atan(bulge).
 */
function worstKink(ring: ReturnType<typeof toRing>): number {
  let worst = 0;
  ring.forEach((v, i) => {
    if (v.r === 0) return;
    const n = ring.length;
    const [a, w, b] = [ring[(i + n - 1) % n]!, ring[(i + 1) % n]!, ring[(i + 2) % n]!];
    const half = 2 * Math.atan(ringBulge(v, w));
    const chord = Math.atan2(w.y - v.y, w.x - v.x);
    for (const gap of [
      chord - half - Math.atan2(v.y - a.y, v.x - a.x),
      chord + half - Math.atan2(b.y - w.y, b.x - w.x),
    ]) {
      const turn = Math.abs(Math.atan2(Math.sin(gap), Math.cos(gap)));
      worst = Math.max(worst, (turn * 180) / Math.PI);
    }
  });
  return worst;
}

/** A triangle-like contour with one corner of the given turn and radius, the rest far away. */
function corner(x: number, y: number, heading: number, turn: number, r: number) {
  const [ux, uy] = [Math.cos(heading), Math.sin(heading)];
  const [vx, vy] = [Math.cos(heading + turn), Math.sin(heading + turn)];
  const chord = 2 * r * Math.sin(turn / 2);
  const ex = x + chord * Math.cos(heading + turn / 2);
  const ey = y + chord * Math.sin(heading + turn / 2);
  return bulgedContour([
    { x: x - 5 * ux, y: y - 5 * uy, bulge: 0 },
    { x, y, bulge: Math.tan(turn / 4) },
    { x: ex, y: ey, bulge: 0 },
    { x: ex + 5 * vx, y: ey + 5 * vy, bulge: 0 },
  ]);
}

it('keeps corners tangent to a tenth of the 0.1 degree allowed, up to 170 degrees, wherever they lie', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -90, max: 90, noNaN: true }),
      fc.double({ min: -90, max: 90, noNaN: true }),
      fc.double({ min: 0, max: 6.28, noNaN: true }),
      fc.double({ min: 0.15, max: 2.967, noNaN: true }),
      fc.double({ min: 0.8, max: 12, noNaN: true }),
      (x, y, heading, turn, r) => {
        for (const frame of FRAMES) {
          const ring = toRing(corner(x, y, heading, turn, r), frame);
          expect(ring).toHaveLength(4);
          expect(worstKink(ring)).toBeLessThan(frame.units === 'mm' ? 0.01 : 0.05);
        }
      },
    ),
    { seed: 2, numRuns: 2000 },
  );
});

it('sees the kink of a radius 0.02 mm off (the check above can fail)', () => {
  const ring = toRing(corner(3, 4, 1, 1.5, 1.6), FRAMES[0]!);
  expect(worstKink(ring.map((v) => ({ ...v, r: v.r === 0 ? 0 : v.r + 20000 })))).toBeGreaterThan(0.1);
});
