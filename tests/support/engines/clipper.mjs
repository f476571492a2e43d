import Clipper2Z from 'clipper2-wasm/dist/es/clipper2z.js';

const clipper = await Clipper2Z();

/** Decimal places kept by the engine, which works on whole numbers inside: 1e-6 mm. */
const PLACES = 6;

/**
 * Moves the boundary outwards by each distance in turn (negative: inwards), round joins.
 * @param {readonly import('./rings.mjs').Ring[]} rings
 * @param {readonly number[]} distances
 * @param {number} chord
 * @returns {import('./rings.mjs').Ring[]}
 */
export function offsets(rings, distances, chord) {
  let now = pathsOf(rings);
  for (const distance of distances) {
    const { Round } = clipper.JoinType;
    const { Polygon } = clipper.EndType;
    const next = clipper.InflatePathsD(now, distance, Round, Polygon, 2, PLACES, chord);
    now.delete();
    now = next;
  }
  return taken(now);
}

/**
 * @param {'union' | 'intersection' | 'difference' | 'xor'} operation
 * @param {readonly import('./rings.mjs').Ring[]} a
 * @param {readonly import('./rings.mjs').Ring[]} b
 * @returns {import('./rings.mjs').Ring[]}
 */
export function combined(operation, a, b) {
  const calls = {
    union: clipper.UnionD,
    intersection: clipper.IntersectD,
    difference: clipper.DifferenceD,
    xor: clipper.XorD,
  };
  const subjects = pathsOf(a);
  const clips = pathsOf(b);
  const out = calls[operation](subjects, clips, clipper.FillRule.NonZero, PLACES);
  subjects.delete();
  clips.delete();
  return taken(out);
}

/** The build stores three numbers a point: x, y and a label that is not used here. */
function pathsOf(rings) {
  const paths = new clipper.PathsD();
  for (const ring of rings) {
    const flat = new Float64Array(ring.length * 3);
    for (let i = 0; i < ring.length; i++) {
      flat[3 * i] = ring[i][0];
      flat[3 * i + 1] = ring[i][1];
    }
    const path = new clipper.PathD();
    path.assign(flat);
    paths.push_back(path);
    path.delete();
  }
  return paths;
}

function taken(paths) {
  const rings = [];
  for (let i = 0; i < paths.size(); i++) {
    const path = paths.get(i);
    const flat = path.view();
    const ring = [];
    for (let k = 0; k < flat.length; k += 3) ring.push([flat[k], flat[k + 1]]);
    rings.push(ring);
    path.delete();
  }
  paths.delete();
  return rings;
}
