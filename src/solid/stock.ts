import type { Filler } from '../bowl/fillers.js';
import { toSpace } from '../bowl/stave.js';
import type { Vessel } from '../bowl/vessel.js';
import { cos, sin, tan } from '../geometry/trig.js';
import { turnOf } from './frame.js';
import { Bench, type Kernel, type Mesh, meshOf, type Solid } from './kernel.js';

/** Solids to carve from, in the finished vessel's own place. */
export interface Stock {
  readonly stave: Mesh;
  /** One a block of the first stave, from the bottom up. */
  readonly fillers: readonly Mesh[];
  readonly shell: Mesh;
  /** mm3: of one stave, and of the glued shell without blocks. */
  readonly volumes: { readonly stave: number; readonly shell: number };
}

/** The bevelled stave with level ends, its blocks, and the glued shell with all of them. */
export function stockOf(kernel: Kernel, vessel: Vessel, fillers: readonly Filler[]): Stock {
  const bench = new Bench();
  try {
    const { height } = vessel.setup;
    const { thickness, sides } = vessel.stave;
    const stave = slab(kernel, bench, vessel, 0, height, 0, thickness);
    const blocks = fillers.map((f) =>
      slab(kernel, bench, vessel, f.from, f.to, thickness, thickness + f.thickness),
    );
    const round = (parts: readonly Solid[]): Solid =>
      bench.keep(
        kernel.Manifold.union(
          Array.from({ length: sides }, (_, k) =>
            parts.map((p) => bench.keep(p.rotate([0, 0, turnOf(vessel, k + 1)]))),
          ).flat(),
        ),
      );
    const bare = round([stave]);
    const full = blocks.length > 0 ? round([stave, ...blocks]) : bare;
    return {
      stave: meshOf(stave),
      fillers: blocks.map(meshOf),
      shell: meshOf(full),
      volumes: { stave: stave.volume(), shell: bare.volume() },
    };
  } finally {
    bench.clear();
  }
}

/** Wood between two levels, two depths under the outer face, and the joints of the first stave. */
function slab(
  kernel: Kernel,
  bench: Bench,
  { stave }: Vessel,
  from: number,
  to: number,
  near: number,
  deep: number,
): Solid {
  const [c, s] = [cos(stave.slope), sin(stave.slope)];
  const half = tan(Math.PI / stave.sides);
  const corners = [from, to].flatMap((z) =>
    [near, deep].flatMap((depth): [number, number, number][] => {
      const { out } = toSpace(stave, { x: 0, y: (z - depth * c) / s, depth });
      const wide = Math.max(0, out) * half;
      return [
        [-wide, -Math.max(0, out), z],
        [wide, -Math.max(0, out), z],
      ];
    }),
  );
  return bench.keep(kernel.Manifold.hull(corners));
}
