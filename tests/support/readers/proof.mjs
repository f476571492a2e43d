import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { alike } from './alike.mjs';

const FILES = ['pocketSvg', 'plugSvg', 'pocketDxf', 'plugDxf'];

/**
 * Reads a damaged drawing of ours back, proves it among its three sound fellows, and measures it as the command does. The
 * four sound ones lie in the folder; the first byte of what is sent says which it is.
 */
export async function start(from, folder) {
  const { prove, readDxf, readSvg } = await from('proof/index.js');
  const { readProveFile } = await from('commands/prove-read.js');
  const sound = JSON.parse(readFileSync(join(folder, 'sound.json'), 'utf8'));
  const read = (which, text) => (which.endsWith('Svg') ? readSvg : readDxf)(text);
  const ours = Object.fromEntries(FILES.map((which) => [which, read(which, sound.files[which])]));
  return (bytes) => {
    const which = FILES[bytes[0]];
    const text = bytes.subarray(1).toString('utf8');
    const svg = which.endsWith('Svg');
    const path = join(folder, svg ? 'drawing.svg' : 'drawing.dxf');
    writeFileSync(path, bytes.subarray(1));
    let drawing = null;
    const proven = () => unclear(prove({ ...sound.files, [which]: text }, sound.asked), drawing, ours[which]);
    try {
      drawing = read(which, text);
    } catch (e) {
      const wrong = proven();
      if (wrong) return wrong;
      // The command reads a DXF that is none of ours as it does any other drawing, and an SVG not at all.
      if (!svg) return unsound(readProveFile(path).drawing);
      throw e;
    }
    if ([...drawing.edges.x0, ...drawing.edges.y0].some(Number.isNaN)) return 'a point that is none';
    const wrong = proven();
    if (wrong || far(drawing) || text.length > MOST_TIMES * sound.files[which].length) return wrong;
    return unsound(drawing) || unsound(readProveFile(path).drawing);
  };
}

/**
 * What the command measures too, any drawing at all: points of a kilometre and many contours on top of each other take it
 * minutes, and it is for the user to stop.
 */
const FARTHEST = 1000;
const MOST_TIMES = 2;

function far({ edges: { x0, y0, cx, cy, r } }) {
  return !([...x0, ...y0].every((v) => Math.abs(v) <= FARTHEST) && [...cx, ...cy, ...r].every(Number.isFinite));
}

function unsound({ edges, starts }) {
  const { count, x0, y0, x1, y1, cx, cy, r } = edges;
  for (const [name, column] of Object.entries({ x0, y0, x1, y1, cx, cy, r }))
    for (const v of column) if (!Number.isFinite(v)) return `${name} is ${v}`;
  if (starts[0] !== 0 || starts.at(-1) !== count) return 'edges of no contour';
  for (let k = 0; k + 1 < starts.length; k++) {
    if (starts[k + 1] <= starts[k]) return 'a contour without edges';
    for (let i = starts[k]; i < starts[k + 1]; i++) {
      const next = i + 1 < starts[k + 1] ? i + 1 : starts[k];
      if (x1[i] !== x0[next] || y1[i] !== y0[next]) return 'an open contour';
    }
  }
  return '';
}

function unclear({ holds, failures }, drawing, ours) {
  // Every one of the four counts, so what holds has to be what was written.
  if (holds && !(drawing && alike(drawing, ours))) return 'proven to hold, and yet is not what was written';
  if (holds !== (failures.length === 0)) return `holds ${holds} with ${failures.length} failures`;
  // Words of the file itself stand in quotes, and may be any.
  const plain = failures.map((f) => f.replace(/"(?:[^"\\]|\\.)*"/g, '""'));
  const bad = plain.findIndex((f) => !/^[^\p{Cc}]{20,400}$/u.test(f) || /undefined|\[object|NaN/.test(f));
  return bad < 0 ? '' : `a failure in no clear line: ${failures[bad]}`;
}
