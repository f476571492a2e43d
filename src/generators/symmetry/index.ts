import type { Generator } from '../generator.js';
import { frieze } from './frieze.js';
import { wallpaper } from './wallpaper.js';

export const symmetry: readonly Generator[] = [wallpaper, frieze];
