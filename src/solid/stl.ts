import type { Mesh } from './kernel.js';

/** Bytes before the triangles, and of one. */
const HEAD = 84;
const TRIANGLE = 50;

/**
 * Meshes as one binary STL (3D Systems, 1989): 80 bytes of header, the count, then normal, three corners and two unused
 * bytes a triangle, little-endian. STL has no unit: these are mm. `name` goes into the header.
 */
export function stl(meshes: readonly Mesh[], name: string): Uint8Array {
  const count = meshes.reduce((n, m) => n + m.triangles.length / 3, 0);
  const bytes = new Uint8Array(HEAD + TRIANGLE * count);
  const view = new DataView(bytes.buffer);
  // A header that begins with "solid" would be taken for the text form.
  const title = `STL: ${name}`;
  for (let k = 0; k < Math.min(79, title.length); k++) bytes[k] = title.charCodeAt(k) & 127;
  view.setUint32(80, count, true);
  let at = HEAD;
  for (const { points, triangles } of meshes)
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((i) => 3 * triangles[t + i]!) as [number, number, number];
      for (const value of normalOf(points, a, b, c)) at = put(view, at, value);
      for (const p of [a, b, c]) for (let i = 0; i < 3; i++) at = put(view, at, points[p + i]!);
      at += 2;
    }
  return bytes;
}

function put(view: DataView, at: number, value: number): number {
  view.setFloat32(at, value, true);
  return at + 4;
}

/** Square to a triangle, one long; 0, 0, 0 for a triangle without area. Indices are of the first coordinates. */
export function normalOf(points: Float32Array, a: number, b: number, c: number): [number, number, number] {
  const [ux, uy, uz] = [0, 1, 2].map((i) => points[b + i]! - points[a + i]!) as [number, number, number];
  const [vx, vy, vz] = [0, 1, 2].map((i) => points[c + i]! - points[a + i]!) as [number, number, number];
  const n: [number, number, number] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const long = Math.sqrt(n[0] * n[0] + n[1] * n[1] + n[2] * n[2]);
  return long > 0 ? [n[0] / long, n[1] / long, n[2] / long] : [0, 0, 0];
}
