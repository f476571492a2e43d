import { atan2 } from '../geometry/trig.js';
import type { Mesh } from './kernel.js';
import { normalOf } from './stl.js';

/** A body to be seen. */
export interface Seen {
  readonly mesh: Mesh;
  /** #rrggbb */
  readonly colour: string;
}

/** A picture, row by row from the top, red, green, blue, 255 each. */
export interface Raster {
  readonly width: number;
  readonly height: number;
  readonly pixels: Uint8Array;
  /** Pixels a millimetre. */
  readonly scale: number;
}

/** Where a corner lies in a picture: across and up, mm, and how near it is (larger is nearer). */
type Place = (x: number, y: number, z: number) => readonly [across: number, up: number, near: number];

const PAPER = [253, 250, 241] as const;
/** Room round what is shown, pixels. */
const RIM = 12;
/** Of light from everywhere, and of light from the upper left in front. */
const SOFT = 0.72;
const LAMP = [-0.45, -0.72, 0.53] as const;

/** Seen level from the front, straight. */
export function elevation(bodies: readonly Seen[], width: number): Raster {
  return drawn(
    bodies,
    (x, y, z) => [x, z, -y],
    width,
    (n) => light(n),
  );
}

/** Seen from straight above, or from straight below: what lies to the right stays there. */
export function plan(bodies: readonly Seen[], from: 'above' | 'below', width: number): Raster {
  const sign = from === 'above' ? 1 : -1;
  return drawn(
    bodies,
    (x, y, z) => [x, sign * y, sign * z],
    width,
    // The lamp stands by whoever looks: what faces the eye is lit as what faces the front of an elevation.
    ([x, y, z]) => light([x!, -sign * z!, sign * y!]),
  );
}

/**
 * The wall unrolled: what a ray from the axis meets last (outside) or first (inside), once round. `radius`: at which a
 * millimetre round is one across. Seen from outside, angles run to the right; from inside, to the left. The seam lies
 * behind.
 */
export function unrolled(
  bodies: readonly Seen[],
  face: 'outside' | 'inside',
  radius: number,
  width: number,
): Raster {
  const sign = face === 'outside' ? 1 : -1;
  return drawn(
    bodies,
    // The angle from the front, where -y is.
    (x, y, z) => [sign * radius * atan2(x, -y), z, sign * Math.sqrt(x * x + y * y)],
    width,
    () => 1,
    2 * Math.PI * radius,
    sign,
  );
}

function light(n: readonly number[]): number {
  const lit = n[0]! * LAMP[0] + n[1]! * LAMP[1] + n[2]! * LAMP[2];
  return SOFT + (1 - SOFT) * Math.max(0, lit);
}

/** Nearest first by depth at every pixel. `round`: across is an angle that comes again after so many mm. */
function drawn(
  bodies: readonly Seen[],
  place: Place,
  width: number,
  bright: (normal: readonly number[]) => number,
  round = 0,
  facing = 0,
): Raster {
  const placed = bodies.map(({ mesh }) => placedOf(mesh, place));
  const box = boxOf(placed, round);
  const scale = (width - 2 * RIM) / (box.maxU - box.minU);
  const height = Math.ceil((box.maxV - box.minV) * scale + 2 * RIM);
  const pixels = new Uint8Array(3 * width * height);
  for (let k = 0; k < pixels.length; k++) pixels[k] = PAPER[k % 3]!;
  const depth = new Float64Array(width * height).fill(Number.NEGATIVE_INFINITY);
  bodies.forEach(({ mesh, colour }, k) => {
    const rgb = [0, 1, 2].map((i) => Number.parseInt(colour.slice(1 + 2 * i, 3 + 2 * i), 16));
    const p = placed[k]!;
    const { triangles, points } = mesh;
    for (let t = 0; t < triangles.length; t += 3) {
      const ids = [triangles[t]!, triangles[t + 1]!, triangles[t + 2]!] as const;
      const normal = normalOf(points, 3 * ids[0], 3 * ids[1], 3 * ids[2]);
      // Walls are looked at unrolled, not the rims, floors and cuts that lie edge on.
      if (facing !== 0 && facing * outwards(points, ids, normal) < 0.05) continue;
      const corners = ids.map((i) => [p[3 * i]!, p[3 * i + 1]!, p[3 * i + 2]!] as [number, number, number]);
      for (const shifted of round > 0 ? wrapped(corners, round) : [corners]) {
        const at = shifted.map(([u, v, near]) => [
          RIM + (u - box.minU) * scale,
          RIM + (box.maxV - v) * scale,
          near,
        ]) as Corner[];
        fill(at as [Corner, Corner, Corner], width, height, depth, pixels, rgb, bright(normal));
      }
    }
  });
  return { width, height, pixels, scale };
}

type Corner = [x: number, y: number, near: number];

/** How much a triangle faces away from the axis: 1 straight out, -1 straight in. */
function outwards(
  points: Float32Array,
  [a, b, c]: readonly [number, number, number],
  n: readonly number[],
): number {
  const x = (points[3 * a]! + points[3 * b]! + points[3 * c]!) / 3;
  const y = (points[3 * a + 1]! + points[3 * b + 1]! + points[3 * c + 1]!) / 3;
  const r = Math.sqrt(x * x + y * y);
  return r < 1e-9 ? 0 : (n[0]! * x + n[1]! * y) / r;
}

function placedOf({ points }: Mesh, place: Place): Float64Array {
  const out = new Float64Array(points.length);
  for (let k = 0; k < points.length; k += 3) {
    const [u, v, near] = place(points[k]!, points[k + 1]!, points[k + 2]!);
    out[k] = u;
    out[k + 1] = v;
    out[k + 2] = near;
  }
  return out;
}

function boxOf(
  placed: readonly Float64Array[],
  round: number,
): Record<'minU' | 'maxU' | 'minV' | 'maxV', number> {
  let [minU, maxU, minV, maxV] = [
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const p of placed)
    for (let k = 0; k < p.length; k += 3) {
      minU = Math.min(minU, p[k]!);
      maxU = Math.max(maxU, p[k]!);
      minV = Math.min(minV, p[k + 1]!);
      maxV = Math.max(maxV, p[k + 1]!);
    }
  return round > 0 ? { minU: -round / 2, maxU: round / 2, minV, maxV } : { minU, maxU, minV, maxV };
}

/** A triangle that runs over the seam is drawn at both ends. */
function wrapped(corners: readonly [number, number, number][], round: number): [number, number, number][][] {
  const us = corners.map(([u]) => u);
  if (Math.max(...us) - Math.min(...us) < round / 2) return [[...corners]];
  const right = corners.map(([u, v, n]) => [u < 0 ? u + round : u, v, n] as [number, number, number]);
  return [right, right.map(([u, v, n]) => [u - round, v, n] as [number, number, number])];
}

function fill(
  [a, b, c]: [Corner, Corner, Corner],
  width: number,
  height: number,
  depth: Float64Array,
  pixels: Uint8Array,
  rgb: readonly number[],
  bright: number,
): void {
  const area = (b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]);
  if (Math.abs(area) < 1e-12) return;
  // What runs over the seam is drawn again at the other end, not in the rim.
  const minX = Math.max(RIM, Math.floor(Math.min(a[0], b[0], c[0])));
  const maxX = Math.min(width - RIM - 1, Math.ceil(Math.max(a[0], b[0], c[0])));
  const minY = Math.max(0, Math.floor(Math.min(a[1], b[1], c[1])));
  const maxY = Math.min(height - 1, Math.ceil(Math.max(a[1], b[1], c[1])));
  for (let y = minY; y <= maxY; y++)
    for (let x = minX; x <= maxX; x++) {
      const [px, py] = [x + 0.5, y + 0.5];
      const w1 = ((px - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (py - a[1])) / area;
      const w2 = ((b[0] - a[0]) * (py - a[1]) - (px - a[0]) * (b[1] - a[1])) / area;
      if (w1 < -1e-9 || w2 < -1e-9 || w1 + w2 > 1 + 1e-9) continue;
      const near = a[2] + w1 * (b[2] - a[2]) + w2 * (c[2] - a[2]);
      const at = y * width + x;
      if (near <= depth[at]!) continue;
      depth[at] = near;
      for (let i = 0; i < 3; i++) pixels[3 * at + i] = Math.min(255, Math.round(rgb[i]! * bright));
    }
}
