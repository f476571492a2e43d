import type { Generator } from '../generator.js';
import { knotGrid } from './knot-grid.js';
import { torusKnot } from './torus-knot.js';

export const knots: readonly Generator[] = [knotGrid, torusKnot];
