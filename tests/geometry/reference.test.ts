import { describe, expect, it } from 'vitest';
import { intersect, resolve, subtract, union } from '../../src/geometry/boolean.js';
import { area, bulgedContour, type Contour, circle, type Region } from '../../src/geometry/region.js';
import { roll, rollOutside } from '../../src/geometry/roll.js';
import { randomPolygon, seeded } from '../support/random.js';
import {
  boundaryDistance,
  closing,
  combined,
  opening,
  polygonArea,
  type Ring,
} from '../support/reference.js';
import { ringsOf } from '../support/rings.js';

// Judge: Clipper2 (clipper2-wasm), whole-number polygons, by another algorithm; nothing of it is in the product.

/** Several overlapping random polygons made one region, so that it has holes, gaps, limbs and needles. */
function randomRegion(random: () => number): Region {
  const n = 1 + Math.floor(random() * 5);
  return union(
    Array.from({ length: n }, () => ({
      contours: [randomPolygon(random, random() * 22, random() * 22, 4 + random() * 8)],
    })),
  );
}

const CHORD = 0.0005;
const FINE = CHORD / 100;

describe('opening and closing against Clipper2 on 150 random regions', () => {
  it('agree in area to 1e-4 and in place to 0.003 mm, away from near-critical necks', () => {
    let plain = 0;
    let critical = 0;
    for (let seed = 0; seed < 150; seed++) {
      const random = seeded(seed * 104729 + 7);
      const region = randomRegion(random);
      const r = 0.8 + random() * 1.2;
      const source = ringsOf(region.contours, CHORD);
      for (const [name, ours, theirs] of [
        ['opening', roll(region.contours, r).contours, (q: number) => opening('clipper', source, q, CHORD)],
        [
          'closing',
          rollOutside(region.contours, r).contours,
          (q: number) => closing('clipper', source, q, CHORD),
        ],
      ] as const) {
        const rings = ringsOf(ours, CHORD);
        // The reference errs by its chords, up to sqrt(2 chord r) where a ball rests flatly: finer chords settle doubts.
        const fine = name === 'opening' ? opening : closing;
        if (agrees(rings, theirs(r)) || agrees(ringsOf(ours, FINE), fine('clipper', source, r, FINE))) {
          plain++;
          continue;
        }
        // A neck within a hair of 2r goes one way or the other with the chord's error. Then the answer for a radius a
        // little smaller and the one for a little larger enclose ours, and themselves differ by more than a hair.
        critical++;
        const less = theirs(r - 0.004);
        const more = theirs(r + 0.004);
        const [big, small] = name === 'opening' ? [less, more] : [more, less];
        const label = `${name}, seed ${seed}`;
        expect(spill(rings, big), label).toBeLessThan(1e-4);
        expect(spill(small, rings), label).toBeLessThan(1e-4);
        // The place error at such a neck grows as sqrt(2 tol r).
        expect(boundaryDistance(big, small, 0.05).distance, label).toBeGreaterThan(
          Math.sqrt(2 * 0.004 * r) / 4,
        );
      }
    }
    expect(plain).toBeGreaterThan(295);
    expect(plain + critical).toBe(300);
  });
});

function agrees(ours: Ring[], theirs: Ring[]): boolean {
  const [a, b] = [polygonArea(ours), polygonArea(theirs)];
  if (ours.length !== theirs.length || Math.abs(a - b) > 1e-4 * Math.max(a, 1)) return false;
  return ours.length === 0 || boundaryDistance(ours, theirs, 0.05).distance <= 0.003;
}

/** Area of a outside b, mm2, less what slivers along a common boundary of the chords' error make up. */
function spill(a: Ring[], b: Ring[]): number {
  let sum = 0;
  for (const ring of combined('difference', a, b))
    sum += Math.max(0, polygonArea([ring]) - 0.004 * length(ring));
  return sum;
}

function length(ring: Ring): number {
  return ring.reduce((s, [x, y], i) => {
    const [p, q] = ring[(i + 1) % ring.length]!;
    return s + Math.hypot(p - x, q - y);
  }, 0);
}

describe('booleans against Clipper2', () => {
  it('agree in area on 200 pairs of random regions with arcs', () => {
    for (let seed = 0; seed < 200; seed++) {
      const random = seeded(seed * 31 + 1);
      const a = blobs(random);
      const b = blobs(random);
      const fine = 0.0001;
      const [p, q] = [ringsOf(a.contours, fine), ringsOf(b.contours, fine)];
      for (const [ours, operation] of [
        [union([a, b]), 'union'],
        [intersect(a, b), 'intersection'],
        [subtract(a, b), 'difference'],
      ] as const) {
        const theirs = polygonArea(combined(operation, p, q));
        expect(Math.abs(area(ours) - theirs), `${operation}, seed ${seed}`).toBeLessThan(0.02);
      }
      // Inclusion and exclusion: |A or B| + |A and B| = |A| + |B|.
      expect(area(union([a, b])) + area(intersect(a, b))).toBeCloseTo(area(a) + area(b), 6);
    }
  });

  it('do not depend on the order or the sense things are drawn in', () => {
    for (let seed = 0; seed < 50; seed++) {
      const random = seeded(seed + 900);
      const a = blobs(random);
      const b = blobs(random);
      expect(area(union([b, a]))).toBeCloseTo(area(union([a, b])), 8);
      expect(area(intersect(b, a))).toBeCloseTo(area(intersect(a, b)), 8);
    }
  });

  it('handle what coincides: shared edges, same shapes, touching corners', () => {
    const square = (x: number, y: number): Region => ({
      contours: [
        bulgedContour(
          [
            [x, y],
            [x + 10, y],
            [x + 10, y + 10],
            [x, y + 10],
          ].map(([px, py]) => ({ x: px!, y: py!, bulge: 0 })),
        ),
      ],
    });
    expect(area(union([square(0, 0), square(10, 0)]))).toBeCloseTo(200, 9);
    expect(union([square(0, 0), square(10, 0)]).contours.length).toBe(1);
    expect(intersect(square(0, 0), square(10, 0)).contours).toEqual([]);
    expect(area(subtract(square(0, 0), square(0, 0)))).toBe(0);
    expect(union([square(0, 0), square(10, 10)]).contours.length).toBe(2);
    const disc = { contours: [circle(5, 5, 5)] };
    expect(area(intersect(square(0, 0), disc))).toBeCloseTo(25 * Math.PI, 9);
    expect(subtract(square(0, 0), disc).contours.length).toBe(4);
  });

  it('resolve a pentagram by its fill rule (area of {5/2}: closed form)', () => {
    const star = Array.from({ length: 5 }, (_, i) => {
      const a = Math.PI / 2 + (i * 4 * Math.PI) / 5;
      return { x: 10 * Math.cos(a), y: 10 * Math.sin(a), bulge: 0 };
    });
    // Star of circumradius R: 10 triangles, R^2 * 5 sin 36 * sin 18 / sin 126.
    const deg = Math.PI / 180;
    const closed = (100 * 5 * Math.sin(36 * deg) * Math.sin(18 * deg)) / Math.sin(126 * deg);
    expect(area(resolve([bulgedContour(star)], 'nonzero'))).toBeCloseTo(closed, 8);
    expect(resolve([bulgedContour(star)], 'evenodd').contours.length).toBe(5);
  });
});

/** A region of random arcs: discs and lens-like shapes united. */
function blobs(random: () => number): Region {
  const shapes: Contour[] = [];
  for (let k = 0; k < 3; k++) {
    if (random() < 0.5) shapes.push(circle(random() * 12, random() * 12, 1 + random() * 5));
    else {
      const x = random() * 12;
      const y = random() * 12;
      shapes.push(
        bulgedContour([
          { x, y, bulge: random() * 0.8 },
          { x: x + 2 + random() * 6, y: y + random() * 4, bulge: random() * 0.8 },
          { x: x + random() * 3, y: y + 3 + random() * 5, bulge: 0 },
        ]),
      );
    }
  }
  return union([{ contours: shapes }]);
}
