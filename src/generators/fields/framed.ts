import { intersect, subtract } from '../../geometry/boolean.js';
import { offset } from '../../geometry/offset.js';
import { parts, type Region, reversedContour } from '../../geometry/region.js';

/** How straps end at the edge of a field. */
export interface Edging {
  /** Width of the straps, mm. */
  readonly strap: number;
  /** Least gap between straps, mm. */
  readonly gap: number;
  /** Whether the straps end in one more strap along the edge. */
  readonly frame: boolean;
  /** Whether the corners that the cut leaves are rounded, so that acute ones do not run out into cracks. */
  readonly round: boolean;
}

/**
 * Rounded corners and the least discs that openings and offcuts must hold have this share of the narrower of strap and
 * gap for their radius: under half, so that what is as wide as asked stays whole.
 */
const SHARE = 0.45;

/** Straps cut by the edge of the field, less the splinters and pinholes that the cut would leave there. */
export function framed(straps: Region, { strap, gap, frame, round }: Edging, field: Region): Region {
  const radius = SHARE * Math.min(strap, gap);
  const kept = (region: Region): Region =>
    round
      ? offset(offset(region, -radius), radius)
      : {
          contours: parts(region)
            .filter((contours) => offset({ contours }, -radius).contours.length > 0)
            .flat(),
        };
  if (!frame) return kept(intersect(straps, field));
  const openings = kept(subtract(offset(field, -strap), straps));
  // Openings lie a strap inside the field, so this is sound as it stands.
  return { contours: [...field.contours, ...openings.contours.map(reversedContour)] };
}
