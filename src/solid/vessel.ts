import type { Profile } from '../bowl/profile.js';
import { halfAngle } from '../bowl/stave.js';
import type { Vessel } from '../bowl/vessel.js';
import { flatten, type Region } from '../geometry/region.js';
import { atan, cos, sin } from '../geometry/trig.js';
import { frameOf, turnOf } from './frame.js';
import { Bench, type Kernel, type Mesh, meshOf, type Solid } from './kernel.js';

/** How far a model's chords may stand off what they stand for, mm. */
export const CHORD = 0.01;

/** The figure in one plug wood, on the drawn face of a stave. */
export interface Figure {
  readonly wood: string;
  readonly region: Region;
}

/** A body of the finished vessel: its wood, and its triangles. */
export interface Body {
  readonly name: string;
  readonly wood: string;
  readonly mesh: Mesh;
  /** mm3. */
  readonly volume: number;
}

export interface VesselModel {
  /** The field first, then one body a plug wood. */
  readonly bodies: readonly Body[];
  /** The same without the half in front of the axis, to look inside. */
  readonly cutAway: readonly Body[];
}

/** What goes into the model of a finished vessel. */
export interface Made {
  readonly vessel: Vessel;
  readonly field: string;
  readonly figures: readonly Figure[];
  /** From the drawn face down to the plug's foot, mm. */
  readonly foot: number;
  /** How far chords may stand off; left out: as `CHORD`. */
  readonly chord?: number;
}

/** The finished vessel: turned, with the inlay as bodies of its own. In mm, standing on z = 0 about the z axis. */
export function vesselModel(kernel: Kernel, made: Made): VesselModel {
  const { vessel, field, figures, foot, chord = CHORD } = made;
  const bench = new Bench();
  try {
    const whole = bench.keep(turned(kernel, bench, vessel, chord));
    // Field and inlay are both cut by the same prisms, never by each other: faces that coincide would leave films.
    const prisms = figures.map(({ region }) => inlaid(kernel, bench, vessel, region, { foot, chord }));
    // A later wood is let into the ones before it.
    const own = prisms.map((p, k) =>
      prisms.slice(k + 1).reduce((a, later) => bench.keep(a.subtract(later)), p),
    );
    const apart = own.map((p, k) => ({ wood: figures[k]!.wood, solid: bench.keep(whole.intersect(p)) }));
    const rest = prisms.reduce((a, p) => bench.keep(a.subtract(p)), whole);
    const all = [{ wood: field, solid: rest }, ...apart];
    const bodies = (cut: (s: Solid) => Solid): Body[] =>
      all.map(({ wood, solid }, k) => {
        const own = bench.keep(cut(solid));
        return { name: k === 0 ? 'field' : `inlay ${k}`, wood, mesh: meshOf(own), volume: own.volume() };
      });
    return {
      bodies: bodies((s) => s.translate([0, 0, 0])),
      cutAway: bodies((s) => s.trimByPlane([0, 1, 0], 0)),
    };
  } finally {
    bench.clear();
  }
}

/** The turned wall and its floor. */
function turned(kernel: Kernel, bench: Bench, { wall, setup }: Vessel, chord: number): Solid {
  const { outside, inside } = wall;
  const out = points(outside, chord);
  const back = points(inside, chord).reverse();
  const foot: [number, number][] =
    setup.floor > 0
      ? [
          [0, inside.from],
          [0, outside.from],
        ]
      : [];
  const outline = bench.keep(new kernel.CrossSection([...out, ...back, ...foot]));
  const widest = Math.max(...out.map(([r]) => r));
  // The model goes about the axis in equal steps, as many a stave, so that all staves are alike.
  const sides = Math.max(4, setup.sides);
  const steps = Math.ceil((2 * Math.PI) / (2 * halfChord(widest, chord)) / sides) * sides;
  return outline.revolve(steps);
}

/** Half the angle at which a chord of a circle stands off it by the chord error. */
function halfChord(radius: number, chord: number): number {
  const c = 1 - chord / radius;
  return atan(Math.sqrt(1 - c * c) / c);
}

/** A profile in chords that stand off it by no more than the chord error. */
function points(profile: Profile, most: number): [number, number][] {
  const { from, to } = profile;
  const out: [number, number][] = [[profile.radius(from), from]];
  const add = (a: number, b: number, depth: number): void => {
    const off = [0.25, 0.5, 0.75].some((t) => {
      const z = a + t * (b - a);
      const chord = profile.radius(a) + t * (profile.radius(b) - profile.radius(a));
      return Math.abs(profile.radius(z) - chord) > most;
    });
    if (off && depth < 12) {
      add(a, (a + b) / 2, depth + 1);
      add((a + b) / 2, b, depth + 1);
    } else out.push([profile.radius(b), b]);
  };
  // A first cut, so that a curve that happens to meet its chord is not taken for it.
  for (let k = 0; k < 4; k++) add(from + ((to - from) * k) / 4, from + ((to - from) * (k + 1)) / 4, 0);
  return out;
}

/** How far prisms begin above the drawn face, mm: the wall may lie right under it. */
const ABOVE = 1;

/** A figure as prisms in all staves that carry it, each cut off at its joints. */
function inlaid(
  kernel: Kernel,
  bench: Bench,
  vessel: Vessel,
  region: Region,
  { foot, chord }: { readonly foot: number; readonly chord: number },
): Solid {
  const { CrossSection, Manifold } = kernel;
  const rings = region.contours.map((c) => flatten(c, chord / 2));
  const section = bench.keep(new CrossSection(rings, 'NonZero'));
  const prism = bench.keep(section.extrude(foot + ABOVE));
  const lowered = bench.keep(prism.translate([0, 0, -foot]));
  const standing = bench.keep(lowered.transform(frameOf(vessel)));
  const own =
    vessel.stave.sides === 1 ? standing : bench.keep(standing.intersect(sector(kernel, bench, vessel)));
  const all = vessel.setup.inlaid.map((number) => bench.keep(own.rotate([0, 0, turnOf(vessel, number)])));
  return bench.keep(Manifold.union(all));
}

/** All that lies between the two joints of the first stave, so that nothing reaches over them. */
export function sector(kernel: Kernel, bench: Bench, { stave, setup }: Vessel): Solid {
  const far = 2 * (setup.height + stave.apothem + stave.thickness) + 1000;
  const half = halfAngle(stave);
  const corners = [-far, far].flatMap((z): [number, number, number][] => [
    [0, 0, z],
    [-far * sin(half), -far * cos(half), z],
    [far * sin(half), -far * cos(half), z],
  ]);
  return bench.keep(kernel.Manifold.hull(corners));
}
