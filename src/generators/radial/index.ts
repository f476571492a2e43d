import type { Generator } from '../generator.js';
import { compassRose } from './compass-rose.js';
import { petals } from './petals.js';
import { phyllotaxis } from './phyllotaxis.js';
import { rings } from './rings.js';
import { roseCurve } from './rose-curve.js';
import { rosette } from './rosette.js';
import { spiralArms } from './spiral-arms.js';
import { starPolygon } from './star-polygon.js';
import { sunburst } from './sunburst.js';
import { trochoid } from './trochoid.js';

export const radial: readonly Generator[] = [
  rosette,
  petals,
  starPolygon,
  compassRose,
  sunburst,
  rings,
  spiralArms,
  phyllotaxis,
  roseCurve,
  trochoid,
];
