import type { Generator } from '../generator.js';

export const symmetry: readonly Generator[] = [];
