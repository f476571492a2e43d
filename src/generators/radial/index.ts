import type { Generator } from '../generator.js';
import { rosette } from './rosette.js';

export const radial: readonly Generator[] = [rosette];
