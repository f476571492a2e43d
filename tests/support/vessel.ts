import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { BowlSetup } from '../../src/bowl/vessel.js';
import { polygon, type Region } from '../../src/geometry/region.js';
import { type Kernel, type Mesh, startKernel } from '../../src/solid/kernel.js';

export const kernel = (): Promise<Kernel> =>
  startKernel(readFileSync(createRequire(import.meta.url).resolve('manifold-3d/manifold.wasm')));

/** A round wall from 100 to 80 mm across and 80 high, turned out of an upright square box; no floor. */
export const tube: BowlSetup = {
  sides: 4,
  slope: Math.PI / 2,
  height: 80,
  thickness: null,
  floor: 0,
  outside: { shape: 'straight', values: { bottom: 100, top: 100 }, points: [] },
  inside: { shape: 'straight', values: { bottom: 80, top: 80 }, points: [] },
  wall: 8,
  face: 'outside',
  inlaid: [1, 2, 3, 4],
  over: 2,
  under: 1,
  trim: 5,
  sanding: 0,
  continuous: false,
  fillers: false,
  angleError: 0,
  ball: null,
};

/** A bellied bowl of twelve sloping staves with a floor. */
export const bowl: BowlSetup = {
  ...tube,
  sides: 12,
  slope: (68 * Math.PI) / 180,
  height: 90,
  floor: 8,
  outside: { shape: 'arc', values: { bottom: 120, top: 210, belly: 6 }, points: [] },
  inside: { shape: 'arc', values: { bottom: 96, top: 192, belly: 8 }, points: [] },
  inlaid: Array.from({ length: 12 }, (_, k) => k + 1),
};

/** A rectangle about 0, 0, by half its sides. */
export function strip(u: number, v: number): Region {
  return {
    contours: [
      polygon([
        [-u, -v],
        [u, -v],
        [u, v],
        [-u, v],
      ]),
    ],
  };
}

/** Volume within a closed mesh, by the divergence theorem. */
export function volumeOf({ points, triangles }: Mesh): number {
  let sum = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [0, 1, 2].map((i) => {
      const p = 3 * triangles[t + i]!;
      return [points[p]!, points[p + 1]!, points[p + 2]!] as const;
    }) as [V, V, V];
    sum +=
      a[0] * (b[1] * c[2] - b[2] * c[1]) -
      a[1] * (b[0] * c[2] - b[2] * c[0]) +
      a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return sum / 6;
}

type V = readonly [number, number, number];

/** How far along a ray each triangle of a mesh is met, nearest first (Moller and Trumbore 1997). */
export function rayMeets({ points, triangles }: Mesh, from: V, along: V): number[] {
  const out: number[] = [];
  const at = (k: number): V => [points[3 * k]!, points[3 * k + 1]!, points[3 * k + 2]!];
  const less = (a: V, b: V): V => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  const cross = (a: V, b: V): V => [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0],
  ];
  const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [at(triangles[t]!), at(triangles[t + 1]!), at(triangles[t + 2]!)];
    const [e, f] = [less(b, a), less(c, a)];
    const p = cross(along, f);
    const det = dot(e, p);
    if (Math.abs(det) < 1e-12) continue;
    const s = less(from, a);
    const u = dot(s, p) / det;
    const q = cross(s, e);
    const v = dot(along, q) / det;
    if (u < -1e-9 || v < -1e-9 || u + v > 1 + 1e-9) continue;
    out.push(dot(f, q) / det);
  }
  return out.sort((x, y) => x - y);
}

/** Edges of a mesh that are not met by just one other the other way round: 0 for a closed body. */
export function openEdges({ points, triangles }: Mesh): number {
  const name = (k: number): string => `${points[3 * k]},${points[3 * k + 1]},${points[3 * k + 2]}`;
  const seen = new Map<string, number>();
  for (let t = 0; t < triangles.length; t += 3)
    for (let i = 0; i < 3; i++) {
      const [a, b] = [name(triangles[t + i]!), name(triangles[t + ((i + 1) % 3)]!)];
      seen.set(`${a} ${b}`, (seen.get(`${a} ${b}`) ?? 0) + 1);
    }
  let open = 0;
  for (const [edge, n] of seen) {
    const [a, b] = edge.split(' ');
    if (seen.get(`${b} ${a}`) !== n) open++;
  }
  return open;
}
