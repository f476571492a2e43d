import type { Finding } from './finding.js';
import { leaningWalls } from './leaning-walls.js';
import { lost } from './lost.js';
import { movingWood } from './moving-wood.js';
import { pressLoad } from './press-load.js';
import { remarks } from './remarks.js';
import type { Setup } from './setup.js';
import { shortFlute } from './short-flute.js';
import { stainingDust } from './staining-dust.js';
import { thinPlug } from './thin-plug.js';
import { thinSkin } from './thin-skin.js';
import { trappedGlue } from './trapped-glue.js';
import { turnedPart } from './turned-part.js';
import { uncertainClearance } from './uncertain-clearance.js';
import { weakContrast } from './weak-contrast.js';

const inspectors = [
  shortFlute,
  thinSkin,
  thinPlug,
  uncertainClearance,
  leaningWalls,
  movingWood,
  trappedGlue,
  pressLoad,
  weakContrast,
  stainingDust,
  lost,
  turnedPart,
  remarks,
];

/** Every finding about a setup, in the order the inspectors are listed. */
export function inspect(setup: Setup): Finding[] {
  return inspectors.flatMap((find) => find(setup));
}
