import type { Vector } from '../../geometry/bezier.js';
import { bounds, type Region } from '../../geometry/region.js';
import { placedRegion } from '../../geometry/transform.js';
import { type Motif, placer } from '../field.js';
import { latticePoints, type Steps, turned } from './lattice.js';

/** How figures are set on a lattice. */
export interface Setting {
  /** The lattice's steps before it is turned, mm. */
  readonly steps: Steps;
  /** What lies on the middle of the field: a figure, the middle of a gap, or whatever lets in the most whole figures. */
  readonly centre: 'best' | 'figure' | 'gap';
  /** Counter-clockwise, of the lattice and of each figure, radians. */
  readonly turn: number;
  /** How far a figure reaches from its middle, mm. */
  readonly reach: number;
  /** What the figures are called. */
  readonly name: string;
}

/** A figure on every point of the lattice from which it may reach into the field. `figureAt` draws about (0, 0). */
export function laidFigures(
  { steps, centre, turn, reach, name }: Setting,
  field: Region,
  figureAt: (x: number, y: number) => Region,
): readonly Motif[] {
  const { minX, maxX, minY, maxY } = bounds(field.contours);
  const [mx, my] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const along: Steps = [turned(steps[0], turn), turned(steps[1], turn)];
  const around = { minX: minX - reach, maxX: maxX + reach, minY: minY - reach, maxY: maxY + reach };
  const choices = origins(steps, centre).map((o) => {
    const [ox, oy] = turned(o, turn);
    return latticePoints(along, [mx + ox, my + oy], around).map(({ i, j, x, y }) => ({
      name: `${name} ${i},${j}`,
      region: placedRegion(figureAt(x, y), x, y, turn),
    }));
  });
  if (choices.length === 1) return choices[0]!;
  const place = placer(field);
  const whole = choices.map((c) => c.filter((f) => place(f.region) === 'inside').length);
  return choices[whole.indexOf(Math.max(...whole))]!;
}

/** Where the lattice's first point may lie, from the middle of the field. */
function origins([a, b]: Steps, centre: Setting['centre']): Vector[] {
  if (centre === 'figure') return [[0, 0]];
  if (centre === 'gap') {
    // Three points of a hexagonal lattice surround a third of their rows' distance; elsewhere four surround half a cell.
    const hexagonal = Math.abs(a[0] / 2 - b[0]) < 1e-9 && Math.abs(b[1] - (a[0] * Math.sqrt(3)) / 2) < 1e-9;
    return [hexagonal ? [-a[0] / 2, -b[1] / 3] : [-(a[0] + b[0]) / 2, -(a[1] + b[1]) / 2]];
  }
  // Half a step across, half a row up, or both keep an upright lattice the same left and right.
  return [
    [0, 0],
    [-a[0] / 2, 0],
    [0, -b[1] / 2],
    [-a[0] / 2, -b[1] / 2],
  ];
}
