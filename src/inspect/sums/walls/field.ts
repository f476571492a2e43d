import { subtract } from '../../../geometry/boolean.js';
import { crossings } from '../../../geometry/crossings.js';
import { EdgesIndex } from '../../../geometry/edges-index.js';
import { contains, distanceToEdge, type Region, reversedContour } from '../../../geometry/region.js';
import { decided } from '../../../geometry/thicken/decided.js';
import type { Outline } from '../../../outline/outline.js';

/** What is left of the face when the pocket is cut. */
export interface Field {
  readonly region: Region;
  /** Whether a point of its boundary lies on the edge of the face, not on a pocket. */
  readonly isEdge: (x: number, y: number) => boolean;
}

/** Further off than this a point is not on the edge of the face, mm. */
const ON_FACE = 1e-5;

/** The face less the pocket. Where the kernel cannot decide that, the pocket's own boundary alone: walls at the edge are then left out. */
export function fieldOf({ face }: Outline, pocket: Region): Field {
  const rim = face.contours.flat();
  const index = new EdgesIndex(rim);
  const isEdge = (x: number, y: number): boolean =>
    index
      .near({ minX: x, maxX: x, minY: y, maxY: y }, ON_FACE)
      .some((j) => distanceToEdge(rim[j]!, x, y) < ON_FACE);
  const turned = pocket.contours.map(reversedContour);
  if (within(face, index, pocket)) return { region: { contours: [...face.contours, ...turned] }, isEdge };
  const cut = decided(() => subtract(face, pocket));
  return { region: cut ?? { contours: turned }, isEdge };
}

/** Whether the whole pocket lies inside the face: then no boolean is needed, which is far quicker. */
function within(face: Region, index: EdgesIndex, pocket: Region): boolean {
  const rim = face.contours.flat();
  return pocket.contours.every((c) => {
    if (!contains(face, c[0]!.x0, c[0]!.y0)) return false;
    for (const e of c) {
      let met = false;
      for (const j of index.around(e, ON_FACE))
        crossings(e, rim[j]!, () => {
          met = true;
        });
      if (met) return false;
    }
    return true;
  });
}
