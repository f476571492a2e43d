import type { Generator } from '../generator.js';
import { chain } from './chain.js';
import { dentil } from './dentil.js';
import { guilloche } from './guilloche.js';
import { meander } from './meander.js';
import { ribbon } from './ribbon.js';
import { rope } from './rope.js';
import { scroll } from './scroll.js';
import { wave } from './wave.js';

export const bands: readonly Generator[] = [meander, wave, rope, guilloche, chain, dentil, ribbon, scroll];
