import type { Pair } from '../../fit/pair.js';
import type { Outline } from '../../outline/outline.js';
import { plugHeight, type Recipe } from '../../recipe/recipe.js';
import { contrast } from '../../shop/contrast.js';
import { clearanceLimits } from '../../shop/limits.js';
import { glueSum } from './glue.js';
import { leanSum } from './lean.js';
import { movementSum } from './movement.js';
import { pressSum } from './press.js';

/**
 * The fit's figures as job.json has them; what is not known for a wood is left out. All but the heights are estimates.
 *
 * Lengths mm: `plugHeight` of its cut walls, `plugProud` above the face when it is in (saw room and carrier with it),
 * `underFloor` wood left; per side `leastClearance`, `greatestClearance` (negative: interference), `movementCloses`,
 * `movementOpens`, `leanPocket`, `leanPlug` (foot less top of a wall), `leanGapMouth`, `leanGapFoot` (clearance left);
 * `leastGlueGap`, `thinnestWall`. Areas mm2: `glueArea`. Volumes mm3: `gapVolume`, `glueApplied`, `trappedAir`,
 * `glueSurplus`, `glueSqueezedOut`. Loads N: `crushLoad`, `pressLimit`, `pressLoad`, `burstLoad`, `leanForce`.
 * Pressures kPa: `pressPressure`, `burstPressure`. Differences of lightness L*: `contrastFresh`, `contrastAged`.
 */
export function fitNumbers(recipe: Recipe, outline: Outline, pair: Pair): Record<string, number> {
  const { depth, fit, machine, stock, woods } = recipe;
  const limits = clearanceLimits(fit.clearance, machine.accuracy);
  const movement = movementSum(recipe, pair);
  const lean = leanSum(recipe);
  const glue = glueSum(recipe, pair);
  const press = pressSum(recipe, outline, pair);
  const tones = contrast(woods.plug, woods.field, woods.own);
  return known({
    plugHeight: plugHeight(recipe),
    plugProud: stock.plug - depth + fit.glueGap,
    underFloor: Math.max(0, stock.field - depth),
    leastClearance: limits.least,
    greatestClearance: limits.greatest,
    movementCloses: typeof movement === 'string' ? null : movement.closes,
    movementOpens: typeof movement === 'string' ? null : movement.opens,
    leanForce: lean.force,
    leanPocket: lean.pocket.lean,
    leanPlug: lean.plug.lean,
    leanGapMouth: lean.mouth,
    leanGapFoot: lean.foot,
    glueArea: glue.coated,
    gapVolume: glue.volume,
    glueApplied: glue.applied,
    trappedAir: glue.airAtEntry,
    glueSurplus: glue.surplus,
    glueSqueezedOut: glue.squeezedOut,
    leastGlueGap: glue.worst?.gap,
    crushLoad: press?.crush,
    pressLimit: press?.limit,
    pressLoad: press?.load,
    pressPressure: press?.pressure,
    thinnestWall: press?.wall?.thickness,
    burstPressure: press?.burst,
    burstLoad: press?.burstLoad,
    contrastFresh: tones?.fresh,
    contrastAged: tones?.aged,
  });
}

function known(all: Readonly<Record<string, number | null | undefined>>): Record<string, number> {
  return Object.fromEntries(
    Object.entries(all).filter((entry): entry is [string, number] => typeof entry[1] === 'number'),
  );
}
