import { union } from '../geometry/boolean.js';
import { circle, polygon, type Region } from '../geometry/region.js';
import { cos, sin } from '../geometry/trig.js';
import type { Vessel } from './vessel.js';

/** A board with an opening that holds the glued shell at a level. Middle at 0, 0; the first stave's side towards -y. */
export interface Jig {
  /** Level of the board's lower face on the shell, mm. */
  readonly z: number;
  readonly opening: Region;
  /** Side of the square board, mm. */
  readonly board: number;
  /** Across the flats of the opening. */
  readonly across: number;
}

/** Wood round an opening, mm. Common practice, no source. */
const ROUND = 35;
/** Play, so that the board slips on, mm. Common practice, no source. */
const PLAY = 0.2;
/** Where the two boards sit, in shares of the height. */
const LEVELS = [0.2, 0.8] as const;

/** In a triangle's corners the way into a round as large as the cutter is too narrow for it. */
const WIDER = 1.5;

/**
 * The two clamp jigs of a shell: its own polygon, with a round of radius `relief` through every corner, where the shell's
 * arrises would bear and no cutter could go. The round's middle lies within the opening, so the cutter gets in.
 */
export function jigsOf(vessel: Vessel, relief: number): Jig[] {
  const { stave, setup } = vessel;
  if (stave.sides === 1) return [];
  return LEVELS.map((share) => {
    const z = share * setup.height;
    const apothem = stave.apothem + (z * cos(stave.slope)) / sin(stave.slope) + PLAY;
    const half = Math.PI / stave.sides;
    const round = apothem / cos(half);
    const rounded = stave.sides === 3 ? WIDER * relief : relief;
    // Corners half a side off the first stave's middle, which lies towards -y.
    const corners = Array.from({ length: stave.sides }, (_, k): [number, number] => {
      const turn = -Math.PI / 2 + half * (2 * k + 1);
      return [round * cos(turn), round * sin(turn)];
    });
    const opening = union([
      { contours: [polygon(corners)] },
      ...corners.map(([x, y]) => ({
        contours: [circle((x * (round - rounded)) / round, (y * (round - rounded)) / round, rounded)],
      })),
    ]);
    return { z, opening, board: Math.ceil(2 * (round + ROUND)), across: 2 * apothem };
  });
}
