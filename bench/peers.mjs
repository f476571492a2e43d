/**
 * General polygon libraries doing opening + closing shape by shape, which is how each of them does best.
 * Opening, closing is four offsets, or three when the two in the middle are one: each library gets what is quicker
 * for it (measured: one offset by 2r costs the JTS family more than two by r; it costs Clipper2 less).
 */
import { readFileSync } from 'node:fs';
import * as clipper from '../tests/support/engines/clipper.mjs';
import * as geos from '../tests/support/engines/geos.mjs';
import * as jsts from '../tests/support/engines/jsts.mjs';
import { R } from './shapes.mjs';

const FOUR = [-R, R, R, -R];
const THREE = [-R, 2 * R, -R];

const LIBRARIES = [
  { package: 'geos-wasm', title: 'GEOS for the web', engine: geos, steps: FOUR, simplifies: true },
  { package: 'jsts', title: 'JSTS', engine: jsts, steps: FOUR },
  { package: 'clipper2-wasm', title: 'Clipper2', engine: clipper, steps: THREE },
];

/** @param {number} chord mm; shown in the title in microns */
export function peers(chord) {
  return LIBRARIES.map(({ package: name, title, engine, steps, simplifies }) => ({
    name,
    simplifies,
    title: `${title} ${version(name)}, ${chord * 1000} µm chords`,
    prepare: (shapes) => shapes.map((s) => s.rings),
    run: (prepared) => prepared.map((rings) => engine.offsets(rings, steps, chord)),
    rings: (result) => result,
  }));
}

/** Opening, closing as finely as is of use: the measure for shapes whose corners interact, which have no closed form. */
export function reference(points) {
  return clipper.offsets([points], THREE, 5e-5);
}

function version(name) {
  const file = new URL(`../node_modules/${name}/package.json`, import.meta.url);
  const { version, GEOS_VERSION } = JSON.parse(readFileSync(file, 'utf8'));
  return GEOS_VERSION ? `${GEOS_VERSION} (${name} ${version})` : version;
}
