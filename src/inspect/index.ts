import { boardTooThin } from './board-too-thin.js';
import { chips } from './chips.js';
import { colletMeets } from './collet-meets.js';
import { cornerFeed } from './corner-feed.js';
import { deepSteps } from './deep-steps.js';
import { dustShoe } from './dust-shoe.js';
import type { Finding } from './finding.js';
import { fullDepthContact } from './full-depth-contact.js';
import { leaningWalls } from './leaning-walls.js';
import { looseParts } from './loose-parts.js';
import { lost } from './lost.js';
import { madeWider } from './made-wider.js';
import { movingWood } from './moving-wood.js';
import { pressLoad } from './press-load.js';
import { remarks } from './remarks.js';
import type { Setup } from './setup.js';
import { shortFlute } from './short-flute.js';
import { spiral } from './spiral.js';
import { stainingDust } from './staining-dust.js';
import { stickout } from './stickout.js';
import { stillTight } from './still-tight.js';
import { thinLimbs } from './thin-limbs.js';
import { thinPlug } from './thin-plug.js';
import { thinSkin } from './thin-skin.js';
import { thinWalls } from './thin-walls.js';
import { trappedGlue } from './trapped-glue.js';
import { turnedPart } from './turned-part.js';
import { uncertainClearance } from './uncertain-clearance.js';
import { underBridge } from './under-bridge.js';
import { unreached } from './unreached.js';
import { vesselCutter } from './vessel-cutter.js';
import { vesselFigure } from './vessel-figure.js';
import { vesselWood } from './vessel-wood.js';
import { weakContrast } from './weak-contrast.js';

const inspectors = [
  shortFlute,
  stickout,
  colletMeets,
  dustShoe,
  underBridge,
  boardTooThin,
  looseParts,
  spiral,
  thinSkin,
  thinPlug,
  uncertainClearance,
  deepSteps,
  chips,
  cornerFeed,
  unreached,
  fullDepthContact,
  leaningWalls,
  thinWalls,
  thinLimbs,
  movingWood,
  trappedGlue,
  pressLoad,
  weakContrast,
  stainingDust,
  lost,
  stillTight,
  madeWider,
  turnedPart,
  vesselFigure,
  vesselWood,
  vesselCutter,
  remarks,
];

/** Every finding about a setup, in the order the inspectors are listed. */
export function inspect(setup: Setup): Finding[] {
  return inspectors.flatMap((find) => find(setup));
}
