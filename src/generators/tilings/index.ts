import type { Generator } from '../generator.js';
import { hat } from './aperiodic/hat.js';
import { penrose } from './aperiodic/penrose.js';
import { basketWeave } from './basket-weave.js';
import { chequer } from './chequer.js';
import { chevron } from './chevron.js';
import { contactStars } from './contact/contact-stars.js';
import { courses } from './courses.js';
import { dualTiling } from './dual-tiling.js';
import { herringbone } from './herringbone.js';
import { rhombs } from './rhombs.js';
import { tiling } from './tiling.js';
import { truchet } from './truchet.js';
import { tumblingBlocks } from './tumbling-blocks.js';

export const tilings: readonly Generator[] = [
  tiling,
  dualTiling,
  rhombs,
  chequer,
  courses,
  herringbone,
  basketWeave,
  chevron,
  tumblingBlocks,
  contactStars,
  hat,
  penrose,
  truchet,
];
