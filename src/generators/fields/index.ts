import type { Generator } from '../generator.js';

export const fields: readonly Generator[] = [];
