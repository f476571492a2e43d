import { deepestPoint } from '../fit/deepest-point.js';
import { midpoint } from '../geometry/edge.js';
import { area, type Contour, parts } from '../geometry/region.js';
import type { Finding } from './finding.js';

/** What the number of a finding points at: its place, or else the widest of its zone. */
export function anchor({ where, zone }: Finding): readonly [number, number] | null {
  if (where) return where;
  const areas = zone?.areas ? parts(zone.areas) : [];
  const size = (part: readonly Contour[]): number => area({ contours: part });
  const [first, ...rest] = areas;
  if (first) return deepestPoint(rest.reduce((a, b) => (size(b) > size(a) ? b : a), first)).at;
  const edge = zone?.lines?.[0]?.[0];
  return edge ? midpoint(edge) : null;
}
