/** How large the written figure is: lines and true arcs against polygons of the same figure at one micron. */
const CHORD = 0.001;

/**
 * Per corner of a field: edges and bytes of SVG path data as written, of the same boundary flattened, and of what a peer
 * gives. Bytes are of the same text form, coordinates to a millionth.
 * @param {{ contours: readonly (readonly object[])[], corners: number, peer: readonly [number, number][][] }} figure
 */
export async function sizes({ contours, corners, peer }) {
  const { flatten } = await import('../dist/geometry/region.js');
  const { pathData } = await import('../dist/output/svg.js');
  const { frameOf } = await import('../dist/output/ring.js');
  const frame = frameOf({ width: 4000, height: 4000 }, 'mm');
  const polygons = contours.map((c) => flatten(c, CHORD));
  return {
    ours: per(corners, contours.flat().length, pathData(contours, frame).length),
    flattened: per(corners, polygons.flat().length, textOf(polygons).length),
    peer: per(corners, peer.flat().length, textOf(peer).length),
  };
}

function per(corners, edges, bytes) {
  return { edges: edges / corners, bytes: bytes / corners };
}

function textOf(rings) {
  const digits = (x) => String(Math.round(x * 1e6) / 1e6);
  return rings
    .map((ring) => `M ${ring.map(([x, y]) => `${digits(x)} ${digits(y)}`).join(' L ')} Z`)
    .join(' ');
}
