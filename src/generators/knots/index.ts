import type { Generator } from '../generator.js';

export const knots: readonly Generator[] = [];
