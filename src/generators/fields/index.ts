import type { Generator } from '../generator.js';
import { contours } from './contours.js';
import { dots } from './dots.js';
import { gosper } from './gosper.js';
import { hilbert } from './hilbert.js';
import { plant } from './plant.js';
import { superellipse } from './superellipse.js';
import { voronoi } from './voronoi.js';

export const fields: readonly Generator[] = [dots, voronoi, contours, hilbert, gosper, plant, superellipse];
