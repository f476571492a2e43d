import type { Generator } from '../generator.js';
import { tiling } from './tiling.js';

export const tilings: readonly Generator[] = [tiling];
