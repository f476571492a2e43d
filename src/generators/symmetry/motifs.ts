import type { Vector } from '../../geometry/bezier.js';
import { union } from '../../geometry/boolean.js';
import { cubicArcs } from '../../geometry/curves.js';
import { bulged, type Edge, line, splitArc } from '../../geometry/edge.js';
import { bounds, type Contour, contourArea, type Region, reversedContour } from '../../geometry/region.js';
import { stroke } from '../../geometry/stroke.js';
import { mirrorX, placedRegion } from '../../geometry/transform.js';
import type { ChoiceParameter, TextParameter, Values } from '../../schema/parameter.js';
import { drawingMotif } from '../drawing/open.js';
import type { Assets } from '../generator.js';

/** A leg of a path: a straight line to (x, y), or a cubic Bezier curve with its two handles before its end. */
type Leg = readonly [number, number] | readonly [number, number, number, number, number, number];

/** A closed path; the last leg is followed by a straight line if it does not end where it started. */
function path(start: Vector, ...legs: readonly Leg[]): Contour {
  const out: Edge[] = [];
  let at = start;
  for (const leg of legs) {
    const end: Vector = leg.length === 2 ? leg : [leg[4], leg[5]];
    if (leg.length === 2) out.push(line(at[0], at[1], end[0], end[1]));
    else out.push(...cubicArcs(at, [leg[0], leg[1]], [leg[2], leg[3]], end));
    at = end;
  }
  if (at[0] !== start[0] || at[1] !== start[1]) out.push(line(at[0], at[1], start[0], start[1]));
  return contourArea(out) < 0 ? reversedContour(out) : out;
}

function crook(): Region {
  const over = splitArc(bulged(24, 57, 84, 57, -1), Math.PI);
  return stroke([line(24, 14, 24, 57), ...over], 23, { closed: false, cap: 'round' });
}

interface Motif {
  readonly name: string;
  readonly meaning: string;
  /** Drawn upright, about 100 high, in no particular place. */
  draw(): Region;
}

const one = (contour: Contour): Region => ({ contours: [contour] });

const motifs: readonly Motif[] = [
  {
    name: 'leaf',
    meaning: 'a leaf with a fuller side and its tip bent over',
    draw: () => one(path([42, 0], [6, 26, 18, 74, 70, 100], [84, 66, 78, 26, 42, 0])),
  },
  {
    name: 'petal',
    meaning: 'a petal, round at the top and fuller on one side',
    draw: () =>
      one(path([50, 0], [22, 22, 6, 50, 18, 78], [28, 102, 62, 106, 80, 84], [98, 62, 76, 24, 50, 0])),
  },
  {
    name: 'drop',
    meaning: 'a drop, alike on both sides',
    draw() {
      // Drawn as a half and its image, so that both sides are alike to the last bit.
      const half = one(path([0, 0], [0, 100], [-5, 74, -29, 56, -29, 29], [-29, 13, -16, 0, 0, 0]));
      return union([half, mirrorX(half)]);
    },
  },
  {
    name: 'comma',
    meaning: 'a drop with its tail bent over',
    draw: () =>
      one(
        path(
          [86, 100],
          [44, 100, 12, 74, 12, 36],
          [12, 15, 28, 0, 48, 0],
          [68, 0, 83, 14, 83, 34],
          [83, 60, 70, 68, 86, 100],
        ),
      ),
  },
  {
    name: 'crescent',
    meaning: 'a crescent with one horn longer than the other',
    draw: () => one(path([66, 0], [-14, 0, -8, 100, 84, 100], [30, 78, 34, 26, 66, 0])),
  },
  {
    name: 'hook',
    meaning: 'a crook of one width with round ends',
    draw: crook,
  },
  {
    name: 'wing',
    meaning: 'a wing of three feathers',
    draw: () =>
      one(
        path(
          [0, 12],
          [6, 62, 46, 92, 100, 92],
          [104, 70, 92, 56, 74, 54],
          [74, 36, 60, 24, 42, 26],
          [36, 8, 18, 2, 0, 12],
        ),
      ),
  },
  {
    name: 'bird',
    meaning: 'a bird with a wing raised',
    draw: () =>
      one(
        path(
          [100, 60],
          [92, 78, 74, 80, 64, 66],
          [58, 88, 38, 100, 16, 98],
          [32, 86, 36, 70, 32, 54],
          [22, 48, 10, 46, 0, 48],
          [10, 32, 22, 24, 36, 20],
          [62, 10, 90, 26, 88, 50],
          [92, 54, 96, 57, 100, 60],
        ),
      ),
  },
  {
    name: 'sail',
    meaning: 'a right-angled wedge with a bulging long side',
    draw: () => one(path([15, 0], [82, 0], [78, 46, 52, 80, 15, 100])),
  },
  {
    name: 'kite',
    meaning: 'four straight sides, no two alike',
    draw: () => one(path([44, 0], [86, 62], [56, 100], [8, 66])),
  },
  {
    name: 'half-leaf',
    meaning: 'half of a leaf, straight on one side',
    draw: () => one(path([70, 0], [70, 100], [34, 78, -6, 28, 70, 0])),
  },
  {
    name: 'half-heart',
    meaning: 'half of a heart, straight on one side',
    draw: () => one(path([62, 0], [62, 76], [62, 104, 10, 108, 10, 66], [10, 40, 40, 24, 62, 0])),
  },
];

export const motifParameter: ChoiceParameter = {
  kind: 'choice',
  name: 'motif',
  meaning: 'The figure that is repeated.',
  say: 'a … repeated',
  default: 'leaf',
  options: [
    ...motifs.map(({ name, meaning }) => ({ value: name, meaning })),
    { value: 'drawing', meaning: 'a drawing of your own: the SVG file that drawing names' },
  ],
};

export const drawingParameter: TextParameter = {
  kind: 'text',
  name: 'drawing',
  meaning:
    "The SVG file for the motif drawing, by its path from the recipe's folder; counts only for that motif.",
  say: 'a drawing would be …',
  default: 'drawings/acorn.svg',
  maxLength: 200,
};

/** A motif as the generators of this folder take it. */
export interface Chosen {
  readonly name: string;
  /** As `unitMotif` has it. */
  readonly region: Region;
  /**
   * How far to the right of its middle a mirror runs through it, so that it and its image make one figure: along the
   * straight side of the halves, elsewhere a little inside. In units of the longer side.
   */
  readonly seam: number;
}

/** The motif that the values of `motifParameter` and `drawingParameter` choose. */
export function chosenMotif(values: Values, assets: Assets): Chosen {
  const name = String(values.motif);
  const region =
    name === 'drawing'
      ? unitMotif(drawingMotif(assets, String(values.drawing), 'pattern.drawing'))
      : motifNamed(name);
  const right = bounds(region.contours).maxX;
  return { name, region, seam: name.startsWith('half-') ? right : 0.8 * right };
}

/** A built-in motif by name, as `unitMotif` has it. */
export function motifNamed(name: string): Region {
  return unitMotif(motifs.find((m) => m.name === name)!.draw());
}

/** A region scaled and moved so that its box is centred on (0, 0) with the longer side 1. Needs one with an area. */
export function unitMotif(region: Region): Region {
  const { minX, minY, maxX, maxY } = bounds(region.contours);
  const scale = 1 / Math.max(maxX - minX, maxY - minY);
  return placedRegion(region, (-(minX + maxX) / 2) * scale, (-(minY + maxY) / 2) * scale, 0, scale);
}
