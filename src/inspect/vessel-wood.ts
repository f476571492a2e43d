import { lastGap } from '../bowl/angles.js';
import { makeVessel, type Vessel } from '../bowl/vessel.js';
import { degrees } from '../geometry/trig.js';
import { inwards, lengthText, numberText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** A gap in the last joint that glue does not bridge, mm. Common practice, no source. */
const GAPES = 0.2;

/** The shell of staves: where the wall leaves the wood, and how far its last joint may gape. */
export function vesselWood({ recipe }: Setup): Finding[] {
  if (!recipe.bowl || recipe.bowl.sides === 1) return [];
  const vessel = makeVessel(recipe.bowl);
  return [...filled(vessel, recipe), ...gaping(vessel, recipe)];
}

function filled({ left, stave, setup }: Vessel, { units }: Setup['recipe']): Finding[] {
  const missing = left.thickness - stave.thickness;
  if (missing <= 1e-9) return [];
  const text = (mm: number): string => lengthText(mm, units);
  return [
    {
      code: 'filler-blocks',
      severity: 'warn',
      where: null,
      numbers: { missing, height: left.under.z, thickness: left.thickness },
      do: `The wall leaves the staves by ${text(missing - setup.under)} at a height of ${text(left.under.z)}: glue blocks onto their inside there (sheet), or make the staves ${text(inwards(left.thickness, units, Math.ceil))} thick.`,
    },
  ];
}

function gaping({ setup, stave }: Vessel, { units }: Setup['recipe']): Finding[] {
  const faces = 2 * setup.sides;
  const gap = lastGap(setup.angleError, faces, stave.thickness);
  if (gap <= GAPES) return [];
  return [
    {
      code: 'last-joint',
      severity: 'note',
      where: null,
      numbers: { gap, faces, error: setup.angleError },
      do: `${numberText(degrees(setup.angleError), 2)} degrees (bowl.angleError) on each of ${faces} joint faces, all one way, would let the last joint gape ${lengthText(gap, units)} over its thickness. Glue two halves first and true their faces together, and dry-fit before any glue.`,
    },
  ];
}
