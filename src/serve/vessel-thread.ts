import { parentPort, workerData } from 'node:worker_threads';
import { makeVessel } from '../bowl/vessel.js';
import { build } from '../build.js';
import { loadKernel } from '../disk/load.js';
import { describeError } from '../disk/report.js';
import { DARK, PALE, woodOr } from '../output/wood-looks.js';
import { readRecipe } from '../recipe/read.js';
import { BadInput } from '../schema/fault.js';
import { glb } from '../solid/glb.js';
import { type Body, vesselModel } from '../solid/vessel.js';
import { assetsWithin } from './assets.js';

/** A recipe's text, and the file it stands for, from the folder that holds its drawings and fonts. */
export interface VesselTask {
  readonly root: string;
  readonly file: string;
  readonly text: string;
}

export type VesselSays = { readonly model: Uint8Array } | { readonly lines: readonly string[] };

/** Coarser than the files' models: a screen shows no more, and it is there sooner. Mm. */
const CHORD = 0.05;

const { root, file, text } = workerData as VesselTask;
const say = (said: VesselSays): void => parentPort!.postMessage(said);

try {
  const recipe = readRecipe(text, file);
  if (!recipe.bowl) throw new BadInput([{ where: 'bowl', message: 'is missing: this card is of no vessel' }]);
  const { inlays } = build(recipe, assetsWithin(root, file, recipe));
  const model = vesselModel(await loadKernel(), {
    vessel: makeVessel(recipe.bowl),
    field: recipe.woods.field,
    figures: inlays.map(({ wood, pair }) => ({ wood, region: pair.pocket })),
    foot: recipe.depth - recipe.fit.glueGap,
    chord: CHORD,
  });
  const shown = (bodies: readonly Body[], of: string) =>
    bodies.map(({ name, wood, mesh }) => ({
      name: `${of} ${name}`,
      mesh,
      colour: woodOr(wood, name === 'field' ? PALE : DARK, recipe.woods.own).colour,
    }));
  say({ model: await glb([...shown(model.bodies, 'whole'), ...shown(model.cutAway, 'cut')], recipe.name) });
} catch (e) {
  say({ lines: describeError(e, file).lines });
}
