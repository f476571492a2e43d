import type { Vessel } from './vessel.js';
import { under } from './wall.js';

/** A block glued onto the inside of every stave, so that the wall finds wood there. Heights are levels, mm. */
export interface Filler {
  readonly from: number;
  readonly to: number;
  /** How far it stands off the stave's inner face, square to it, mm. */
  readonly thickness: number;
}

/** Levels that are looked at. */
const LEVELS = 800;
/** How far a block reaches past where it is needed, so that its ends are carved away, mm. Common practice, no source. */
const PAST = 4;

/** The blocks a vessel wants where its wall leaves the staves, from the bottom up; none where it does not. */
export function fillersOf({ stave, wall, setup }: Vessel): Filler[] {
  if (stave.sides === 1) return [];
  const deep = under(stave, wall.inside);
  const { from, to } = wall.inside;
  const out: { from: number; to: number; thickness: number }[] = [];
  let open = false;
  for (let k = 0; k <= LEVELS; k++) {
    const z = from + ((to - from) * k) / LEVELS;
    const missing = deep(z) + setup.under - stave.thickness;
    if (missing <= 1e-9) {
      open = false;
      continue;
    }
    const last = out.at(-1);
    if (open && last) {
      last.to = Math.min(to, z + PAST);
      last.thickness = Math.max(last.thickness, missing);
    } else out.push({ from: Math.max(0, z - PAST), to: Math.min(to, z + PAST), thickness: missing });
    open = true;
  }
  return joined(out).map((f) => ({ ...f, thickness: Math.ceil(f.thickness * 10 - 1e-6) / 10 }));
}

/** Blocks that would touch are one. */
function joined(all: readonly Filler[]): Filler[] {
  const out: Filler[] = [];
  for (const f of all) {
    const last = out.at(-1);
    if (last && f.from <= last.to)
      out[out.length - 1] = { from: last.from, to: f.to, thickness: Math.max(last.thickness, f.thickness) };
    else out.push(f);
  }
  return out;
}
