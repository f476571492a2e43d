import { describe, expect, it } from 'vitest';
import { enforce } from '../../src/cutter/enforce.js';
import { filleted } from '../../src/cutter/fillet.js';
import { bulge, bulged } from '../../src/geometry/edge.js';
import { offset } from '../../src/geometry/offset.js';
import type { Contour } from '../../src/geometry/region.js';
import { drawingOfEdges, readSvg, Unreadable } from '../../src/proof/index.js';
import { reach } from '../../src/proof/reach.js';
import { Search } from '../../src/proof/search.js';
import { Refusal } from '../../src/schema/fault.js';
import { randomPolygon, seeded } from '../support/random.js';
import { type Chain, svgOf } from './drawn.js';

const RUNS = 1500;
/** The short cut may leave out pairs that would lower the reach by less than this, mm. */
const HAIR = 1e-6;
const SIDES = ['inside', 'outside'] as const;

/** Drawings of many kinds: what the pass makes, corners left sharp, arcs too tight, boundaries that cross, crumbs. */
function contours(seed: number): Contour[] {
  const random = seeded(seed * 2741 + 5);
  const polygons = Array.from({ length: 1 + Math.floor(random() * 3) }, () =>
    randomPolygon(random, (random() - 0.5) * 30, (random() - 0.5) * 30, 3 + random() * 9),
  );
  const kind = seed % 5;
  if (kind === 0) return polygons;
  if (kind === 1) return polygons.map((p) => filleted(p, 0.2 + random() * 2) ?? p);
  const r = 0.8 + random();
  const pieces = polygons.map((p, i) => ({ name: `p${i}`, region: { contours: [p] } }));
  const safe = [...enforce({ pieces }, { r, thin: 'drop', touch: 'part' }).region.contours];
  if (kind === 2) return safe;
  // Moved inwards, corners may become arcs of almost nothing; moved outwards, gaps get tight.
  const moved = [...offset({ contours: safe }, (kind === 3 ? -1 : 0.3) * r * random()).contours];
  return moved;
}

type Draw = (random: () => number) => Chain[];

const turned = (chain: Chain, angle: number, x = 100, y = 80): Chain =>
  chain.map(([u, v, b]) => [
    x + u * Math.cos(angle) - v * Math.sin(angle),
    y + u * Math.sin(angle) + v * Math.cos(angle),
    b,
  ]);

/** A circle in n arcs of any lengths. */
const ring = (random: () => number, radius: number, n: number): Chain => {
  const at = Array.from({ length: n }, (_, i) => i + 0.6 * random());
  return at.map((a, i) => {
    const sweep = (((at[(i + 1) % n]! - a + n) % n || n) / n) * 2 * Math.PI;
    const angle = (a / n) * 2 * Math.PI;
    return [radius * Math.cos(angle), radius * Math.sin(angle), Math.tan(sweep / 4)];
  });
};

/** A plate from one x to another, its corners so round that no ball of these tests minds them. */
const plate = (x0: number, x1: number): Chain => {
  const quarter = Math.SQRT2 - 1;
  const r = 8;
  return [
    [x0 + r, -30, 0],
    [x1 - r, -30, quarter],
    [x1, -30 + r, 0],
    [x1, 30 - r, quarter],
    [x1 - r, 30, 0],
    [x0 + r, 30, quarter],
    [x0, 30 - r, 0],
    [x0, -30 + r, quarter],
  ];
};

/** Places that ordinary drawings seldom have. */
const RARE: Record<string, Draw> = {
  /** A wedge whose tip is many arcs, each too shallow to show by itself; it starts anywhere along the contour. */
  'a bend of crumbs': (random) => {
    const radius = 0.2 + random();
    const n = 2 + Math.floor(random() * 40);
    const half = 0.3 + random() * 1.1;
    const tip = Array.from({ length: n + 1 }, (_, i): [number, number, number] => {
      const a = -half + (2 * half * i) / n;
      return [radius * Math.cos(a), radius * Math.sin(a), i < n ? Math.tan(half / (2 * n)) : 0];
    });
    const [x, y] = tip.at(-1)!;
    const far = 12;
    const wedge: Chain = [
      ...tip,
      [x - far * Math.sin(half), y + far * Math.cos(half), 0],
      [x - far * Math.sin(half), -y - far * Math.cos(half), 0],
    ];
    const k = Math.floor(random() * wedge.length);
    return [turned([...wedge.slice(k), ...wedge.slice(0, k)], random() * 6)];
  },
  /** A wheel in a wheel, neither quite in the middle. */
  'arcs in arcs': (random) => {
    const radius = 4 + random() * 6;
    const off = random() < 0.5 ? 0 : random() * 0.3;
    const inner = ring(random, radius - 0.5 - random() * 3, 3 + Math.floor(random() * 5));
    return [
      turned(ring(random, radius, 3 + Math.floor(random() * 5)), random() * 6),
      turned(
        [...inner].reverse().map(([x, y], i, all) => [x, y, -all[(i + 1) % all.length]![2]]),
        0,
        100 + off,
        80,
      ),
    ];
  },
  /** A wheel beside a straight edge, or two arcs for a wheel. */
  'a wheel beside an edge': (random) => {
    const radius = 0.3 + random() * 4;
    const gap = random() * 4;
    const n = random() < 0.3 ? 2 : 3 + Math.floor(random() * 4);
    const wheel =
      n === 2
        ? ([
            [radius, 0, 1],
            [-radius, 0, 1],
          ] as Chain)
        : ring(random, radius, n);
    const angle = random() * 6;
    // The wheel may be a hole in the plate, too.
    const left = random() < 0.5 ? radius + gap : -radius - gap;
    return [turned(wheel, angle), turned(plate(left, left + 20), angle)];
  },
  /** Long edges that cross far from their ends. */
  'a crossing': (random) => {
    const w = 10 + random() * 20;
    const h = 5 + random() * 20;
    return [
      turned(
        [
          [-w, -h, 0],
          [w, h, 0],
          [w, -h, 0],
          [-w, h, 0],
        ],
        random() * 6,
      ),
    ];
  },
  /** An arc of more than half a turn about the way in. */
  'a keyhole': (random) => {
    const radius = 2 + random() * 5;
    const half = radius * (0.2 + 0.7 * random());
    const y = Math.sqrt(radius * radius - half * half);
    const sweep = 2 * Math.PI - 2 * Math.asin(half / radius);
    return [
      turned(
        [
          [half, -y, 0],
          [half, -y - 9, 0],
          [-half, -y - 9, 0],
          [-half, -y, -Math.tan(sweep / 4)],
        ],
        random() * 6,
      ),
    ];
  },
  /** A drop, round by more than half a turn and smooth up to its tip, with its back or side to a straight edge. */
  'a drop beside an edge': (random) => {
    const radius = 1 + random() * 4;
    const half = 0.3 + random() * 0.9;
    const [x, y] = [radius * Math.cos(half), radius * Math.sin(half)];
    const drop: Chain = [
      [radius / Math.cos(half), 0, 0],
      [x, y, Math.tan((2 * Math.PI - 2 * half) / 4)],
      [x, -y, 0],
    ];
    const left = -radius - 0.2 - random() * 4;
    const edge = plate(left - 20, left);
    return [turned(drop, (random() - 0.5) * 4), turned(edge, 0)];
  },
  /** Two rails that turn a little at every joint, as written files do, and more. */
  'rails with kinks': (random) => {
    const kink = 10 ** -(2 + random() * 4);
    const gap = 0.5 + random() * 6;
    const rail = (x: number, from: number, to: number): [number, number, number][] =>
      Array.from({ length: 9 }, (_, i) => [x + (random() - 0.5) * 8 * kink, from + ((to - from) * i) / 8, 0]);
    return [
      turned([...rail(gap / 2, -30, 30), [gap / 2 + 9, 30, 0], [gap / 2 + 9, -30, 0]], 0.3),
      turned([...rail(-gap / 2, 30, -30), [-gap / 2 - 9, -30, 0], [-gap / 2 - 9, 30, 0]], 0.3),
    ];
  },
};
const KINDS = Object.values(RARE);

function drawn(seed: number) {
  const random = seeded(seed * 911 + 1);
  const rare = seed % 2 === 1 ? KINDS[Math.floor(seed / 2) % KINDS.length] : undefined;
  const chains = rare
    ? rare(random)
    : contours(seed / 2).map((c): Chain => c.map((e) => [e.x0 + 100, e.y0 + 80, bulge(e)] as const));
  if (chains.length === 0) return null;
  // Written numbers leave no joint exactly smooth: half of the drawings are taken as they are.
  if (seed % 4 > 1) return drawingOfEdges(chains.map(edgesOf), 'pocket');
  return readSvg(svgOf('pocket', chains));
}

const edgesOf = (chain: Chain) =>
  chain.map(([x, y, b], i) => {
    const [u, v] = chain[(i + 1) % chain.length]!;
    return { ...bulged(x, y, u, v, b), wide: Math.abs(b) > 1 };
  });

describe(`of ${RUNS} drawings the reach by pairs that face each other`, () => {
  it('is the reach by every pair', () => {
    const seen = { curved: 0, paired: 0, corners: 0, capped: 0 };
    for (let seed = 0; seed < RUNS; seed++) {
      let drawing: ReturnType<typeof drawn>;
      try {
        drawing = drawn(seed);
      } catch (e) {
        if (e instanceof Refusal || e instanceof Unreadable) continue;
        throw e;
      }
      if (!drawing) continue;
      const cap = 0.5 + (seed % 11) / 2;
      for (const side of SIDES) {
        const every = new Search(drawing, side, cap);
        every.curvature();
        const bent = every.bound;
        every.below(cap);
        const found = reach(drawing, side, cap).reach;
        expect(found, `seed ${seed}, ${side}`).toBeGreaterThanOrEqual(every.bound - 2e-7);
        expect(found, `seed ${seed}, ${side}`).toBeLessThanOrEqual(every.bound + HAIR);
        if (every.bound === cap) seen.capped++;
        else if (every.bound > bent - 1e-5) seen.curved++;
        else if (every.bound < 0.01) seen.corners++;
        else seen.paired++;
      }
    }
    for (const n of Object.values(seen)) expect(n, JSON.stringify(seen)).toBeGreaterThan(RUNS / 50);
  });
});
