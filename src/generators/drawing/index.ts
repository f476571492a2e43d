import type { Generator } from '../generator.js';
import { drawing as own } from './drawing.js';

export const drawing: readonly Generator[] = [own];
