import { atan2, cos, sin } from '../../geometry/trig.js';
import type { ChoiceParameter, Parameter } from '../../schema/parameter.js';
import { bad, length } from '../values.js';
import { type Isometry, image, isReflection, type Point } from './isometry.js';
import { type Lattice, sides, stepsInto } from './lattice.js';

/** Where the first motif stands and how it is turned there, radians counter-clockwise from upright. */
export interface Stand {
  place(size: number): Point;
  readonly lean: number;
  /** The point of the mirror or centre that it stands on; null in the domain. */
  readonly hinge: Point | null;
  /** In which directions it may be moved and stay what it is; unit vectors. */
  readonly free: readonly Point[];
  /** Whether it may be turned. */
  readonly turns: boolean;
}

/** A symmetry group laid out in mm. */
export interface Layout {
  readonly name: string;
  readonly lattice: Lattice;
  readonly motions: readonly Isometry[];
  /** A place in the middle of a fundamental domain, clear of mirrors and centres of rotation. */
  readonly home: Point;
  /** Turn of the motif there, radians counter-clockwise from upright. */
  readonly lean: number;
}

export const placeParameter: ChoiceParameter = {
  kind: 'choice',
  name: 'place',
  meaning: 'Where the motif stands.',
  say: 'motif in the … place',
  default: 'snug',
  options: [
    { value: 'snug', meaning: 'where it can be large and still keep the gap' },
    { value: 'apart', meaning: 'in the middle of its share of the pattern' },
    { value: 'mirror', meaning: 'on a mirror, so that it and its image make one figure' },
    { value: 'centre', meaning: 'with its foot on a centre of rotation, so that copies make one flower' },
  ],
};

/** How the user moves and turns the motif from there. */
export const shiftParameters: readonly Parameter[] = [
  length(
    'x',
    'How far the motif is moved to the right from where it stands.',
    'moved … to the right',
    0,
    -1000,
  ),
  length('y', 'How far the motif is moved upwards from where it stands.', '… upwards', 0, -1000),
  {
    kind: 'angle',
    name: 'lean',
    meaning: 'Turn of the motif where it stands, counter-clockwise.',
    say: 'motif leaning …',
    default: 0,
    min: -360,
    max: 360,
  },
];

/**
 * The stand for a value of `placeParameter`; a mirror runs through the motif `seam` sizes to the right of its middle.
 * Throws BadInput when the group has no mirrors or turns.
 */
export function standFor(place: string, layout: Layout, seam: number): Stand {
  if (place === 'mirror') {
    const stand = onMirror(layout, seam);
    if (stand) return stand;
    throw bad('place', `${layout.name} has no mirrors; use snug or apart, or another group`);
  }
  if (place !== 'centre') return inDomain(layout);
  if (layout.motions.some((m) => !isReflection(m) && m.xx < 1 - GLIDES)) return onCentre(layout);
  throw bad('place', `${layout.name} has no centres of rotation; use snug or apart, or another group`);
}

function inDomain({ home, lean }: Layout): Stand {
  return {
    place: () => home,
    lean,
    hinge: null,
    free: [
      [1, 0],
      [0, 1],
    ],
    turns: true,
  };
}

/** How far from the middle of a motif its foot lies, in sizes: a little under half, so that feet at one point overlap. */
const FOOT = 0.44;

/** With its foot on the centre of rotation at (0, 0), pointing to where it would stand in the domain. */
function onCentre({ home: [x, y] }: Layout): Stand {
  const far = Math.sqrt(x * x + y * y);
  return {
    place: (size) => [((FOOT * x) / far) * size, ((FOOT * y) / far) * size],
    lean: atan2(y, x) - Math.PI / 2,
    hinge: [0, 0],
    free: [],
    turns: false,
  };
}

/** A reflection that moves its own mirror line by more than this along it is a glide, mm. */
const GLIDES = 1e-6;

/** Upright along the nearest mirror. Null when there are none. */
function onMirror({ home, lattice, motions }: Layout, seam: number): Stand | null {
  const reach = 2 * sides(lattice).longer;
  const box = {
    minX: home[0] - reach,
    minY: home[1] - reach,
    maxX: home[0] + reach,
    maxY: home[1] + reach,
  };
  let best: { foot: Point; far: number; along: number } | null = null;
  for (const m of motions.filter(isReflection))
    for (const [sx, sy] of stepsInto(box, lattice, image(m, home))) {
      const to = image(m, home);
      // A reflection's matrix is (cos 2p, sin 2p; sin 2p, -cos 2p) for a mirror in direction p.
      const along = atan2(m.yx, m.xx) / 2;
      const at: Point = [(home[0] + to[0] + sx) / 2, (home[1] + to[1] + sy) / 2];
      const back = image({ ...m, dx: m.dx + sx, dy: m.dy + sy }, at);
      if (Math.abs(back[0] - at[0]) + Math.abs(back[1] - at[1]) > GLIDES) continue;
      const far = Math.abs(to[0] + sx - home[0]) + Math.abs(to[1] + sy - home[1]);
      if (!best || far < best.far - GLIDES) best = { foot: at, far, along };
    }
  if (!best) return null;
  const { foot, along } = best;
  const outwards = foot[0] * cos(along) + foot[1] * sin(along) >= -GLIDES ? along : along + Math.PI;
  const [rx, ry] = [sin(outwards), -cos(outwards)];
  return {
    place: (size) => [foot[0] - rx * seam * size, foot[1] - ry * seam * size],
    lean: outwards - Math.PI / 2,
    hinge: foot,
    free: [[-ry, rx]],
    turns: false,
  };
}
