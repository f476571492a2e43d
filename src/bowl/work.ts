import { cos, sin, tan } from '../geometry/trig.js';
import { type Angles, anglesOf, lastGap } from './angles.js';
import { type Filler, fillersOf } from './fillers.js';
import {
  type Blank,
  blankOf,
  faceAt,
  ringAt,
  shellVolume,
  type Trapezoid,
  turnedVolume,
  type WoodUsed,
  woodUsed,
} from './shell.js';
import { halfAngle, toStave } from './stave.js';
import type { Vessel } from './vessel.js';

/** A dowel in a joint face: along the joint from its lower end, and from the outer face, mm. */
export interface Dowel {
  readonly along: number;
  readonly deep: number;
  /** Is it carved away in the end, or does it stay in the wall? */
  readonly stays: boolean;
}

/** All that a maker saws, glues and turns by. Millimetres, radians, mm2, mm3. */
export interface Work {
  readonly angles: Angles | null;
  readonly blank: Blank;
  /** The stave's faces between the levels of foot and rim, true size. */
  readonly outer: Trapezoid;
  readonly inner: Trapezoid;
  readonly fillers: readonly Filler[];
  readonly dowels: readonly Dowel[];
  readonly wood: WoodUsed;
  /** The glued shell, and what is turned out of it. */
  readonly shell: number;
  readonly finished: number;
  /** Of the rim, when the shell stands on it for carving from below. */
  readonly rim: number;
  /** Across the flats and across the corners of the hole that the staves leave at the foot. */
  readonly hole: { readonly flats: number; readonly corners: number };
  /** How far the last joint would gape if all joint faces were off by the angle given, all one way. */
  readonly gap: number;
  /** Places of two dowels on the machine's board that let the shell be turned over about the x axis, from its middle. */
  readonly flip: readonly (readonly [x: number, y: number])[];
}

/** Diameter that a dowel's place is reckoned for, and wood round it, mm. Common practice, no source. */
const DOWEL = 6;
const ROUND_IT = 2;
const AT = [0.25, 0.75] as const;
/** From the widest place of the shell to the dowels of the board, mm. */
const BESIDE = 25;

export function workOf(vessel: Vessel): Work {
  const { stave, wall, setup } = vessel;
  const { height, trim } = setup;
  const widest = 2 * Math.max(...[0, 0.25, 0.5, 0.75, 1].map((s) => wall.outside.radius(s * height)));
  const finished = turnedVolume(wall.outside) - turnedVolume(wall.inside);
  if (stave.sides === 1) {
    const d = widest + 2 * setup.over;
    const block = d * d * stave.thickness;
    return {
      angles: null,
      blank: { length: d, width: d, thickness: stave.thickness },
      outer: { bottom: d, top: d, length: d },
      inner: { bottom: d, top: d, length: d },
      fillers: [],
      dowels: [],
      wood: { staves: block, block, rings: block, finished },
      shell: block,
      finished,
      rim: (Math.PI * d * d) / 4,
      hole: { flats: 0, corners: 0 },
      gap: 0,
      flip: flipOf(d / 2),
    };
  }
  const inner = stave.apothem - stave.thickness / sin(stave.slope);
  const top = stave.apothem + (height * cos(stave.slope)) / sin(stave.slope);
  return {
    angles: anglesOf(stave.sides, stave.slope),
    blank: blankOf(stave, height, trim),
    outer: faceAt(stave, 0, height, 0),
    inner: faceAt(stave, 0, height, stave.thickness),
    fillers: fillersOf(vessel),
    dowels: dowelsOf(vessel),
    wood: woodUsed(stave, height, trim, wall.outside, wall.inside),
    shell: shellVolume(stave, height),
    finished,
    rim: ringAt(stave, height),
    hole: { flats: 2 * Math.max(0, inner), corners: (2 * Math.max(0, inner)) / cos(halfAngle(stave)) },
    gap: lastGap(setup.angleError, 2 * stave.sides, stave.thickness),
    flip: flipOf(Math.max(top, stave.apothem) / cos(halfAngle(stave))),
  };
}

function flipOf(radius: number): [number, number][] {
  const x = Math.ceil(radius + BESIDE);
  return [
    [-x, 0],
    [x, 0],
  ];
}

/** Two dowels a joint: in the waste outside the wall where it is thick enough, else in the middle of the thickness. */
function dowelsOf({ stave, wall, setup }: Vessel): Dowel[] {
  const half = halfAngle(stave);
  // Along the joint a level rises by the sine of the edge's own steepness.
  const steep = Math.sqrt(1 + (cos(stave.slope) / sin(stave.slope)) ** 2 * (1 + tan(half) ** 2));
  return AT.map((share) => {
    const z = share * setup.height;
    const { depth } = toStave(stave, wall.outside.radius(z), half, z);
    const waste = depth >= DOWEL + 2 * ROUND_IT;
    return { along: z * steep, deep: waste ? depth / 2 : stave.thickness / 2, stays: !waste };
  });
}
