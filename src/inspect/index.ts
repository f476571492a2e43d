import type { Finding } from './finding.js';
import { lost } from './lost.js';
import { remarks } from './remarks.js';
import type { Setup } from './setup.js';
import { shortFlute } from './short-flute.js';
import { thinPlug } from './thin-plug.js';
import { thinSkin } from './thin-skin.js';

const inspectors = [shortFlute, thinSkin, thinPlug, lost, remarks];

/** Every finding about a setup, in the order the inspectors are listed. */
export function inspect(setup: Setup): Finding[] {
  return inspectors.flatMap((find) => find(setup));
}
