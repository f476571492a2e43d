import type { Generator } from '../generator.js';

export const bands: readonly Generator[] = [];
