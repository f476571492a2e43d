import type { Subpath } from '../outline-path.js';
import { Unreadable } from '../unreadable.js';
import type { Drawn } from './document.js';
import { cornersPath } from './shapes.js';

/** A vertex that only frames a fitted curve. */
const FRAME = 16;

/** A POLYLINE of the older kind, with the curve that was fitted to it where there is one. Throws Unreadable. */
export function polylinePath({ entity, vertices }: Drawn): Subpath[] {
  if (entity.flag(70, 16) || entity.flag(70, 64))
    throw new Unreadable('is a mesh in space; draw its outline as a polyline in the plane');
  if (entity.flag(70, 8) && new Set(vertices.map((v) => v.number(30, 0))).size > 1)
    throw new Unreadable('is a line in space; flatten the drawing into the plane');
  const corners = vertices
    .filter((v) => !v.flag(70, FRAME))
    .map((v) => ({ at: [v.number(10, 0), v.number(20, 0)] as const, bulge: v.number(42, 0) }));
  return cornersPath(corners, entity.flag(70, 1));
}
