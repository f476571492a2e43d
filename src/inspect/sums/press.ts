import type { Pair } from '../../fit/pair.js';
import { area } from '../../geometry/region.js';
import type { Outline } from '../../outline/outline.js';
import type { Recipe } from '../../recipe/recipe.js';
import { burstPressure } from '../../shop/burst.js';
import { fromTons } from '../../shop/conversions.js';
import { crushLoad, pressPressure, WARN_FROM } from '../../shop/press.js';
import { type FieldWall, thinnestWall } from './wall.js';

export interface PressSum {
  /** Face of all plug parts, pressed at once, mm2. */
  readonly area: number;
  /** Load at which the plug's wood would crush, and half of it, which is the limit, N; null for an unknown wood. */
  readonly crush: number | null;
  readonly limit: number | null;
  /** The press at its full load, N, and the pressure that makes on the plug, kPa; null with no press named. */
  readonly load: number | null;
  readonly pressure: number | null;
  readonly wall: FieldWall | null;
  /** Pressure of trapped glue at which that wall may burst, kPa, and the load that makes it, N; null where not known. */
  readonly burst: number | null;
  readonly burstLoad: number | null;
}

/** Estimates of shop/press.ts and shop/burst.ts for a pair; null with no plug at all. */
export function pressSum(recipe: Recipe, outline: Outline, pair: Pair): PressSum | null {
  const pressed = area(pair.plug);
  if (!(pressed > 0)) return null;
  const { depth, press, woods } = recipe;
  const crush = crushLoad(woods.plug, pressed, woods.own);
  // Beyond twice its height a wall bursts from its root, however long it is (see burst.ts).
  const wall = thinnestWall(outline, pair.pocket, 2 * depth);
  const burst = wall && burstPressure(woods.field, { ...wall, height: depth }, woods.own);
  return {
    area: pressed,
    crush,
    limit: crush === null ? null : crush * WARN_FROM,
    load: press && fromTons(press.tons, press.kind),
    pressure: press && pressPressure(press.tons, press.kind, pressed),
    wall,
    burst,
    burstLoad: burst === null ? null : (burst * pressed) / 1000,
  };
}
