/**
 * Plain polygons for the reference engines: a list of rings, each a list of [x, y] without repeating the first point,
 * outer rings counter-clockwise, holes clockwise. Millimetres.
 * @typedef {[number, number]} Point
 * @typedef {Point[]} Ring
 */

/**
 * Signed area by the shoelace formula, mm2.
 * @param {readonly Ring[]} rings
 * @returns {number}
 */
export function signedArea(rings) {
  let sum = 0;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      sum += ring[j][0] * ring[i][1] - ring[i][0] * ring[j][1];
    }
  }
  return sum / 2;
}

/**
 * Sorts rings into polygons: each outer ring followed by its holes.
 * @param {readonly Ring[]} rings
 * @returns {Ring[][]}
 */
export function nested(rings) {
  if (rings.length === 1) return [[rings[0]]];
  const outers = rings
    .map((ring) => ({ ring, size: signedArea([ring]) }))
    .filter((o) => o.size > 0)
    .sort((a, b) => a.size - b.size)
    .map((o) => [o.ring]);
  for (const ring of rings) {
    if (signedArea([ring]) >= 0) continue;
    const home = outers.find((o) => inRing(o[0], ring[0]));
    if (!home) throw new Error('a hole lies in no outer ring');
    home.push(ring);
  }
  return outers;
}

/** Crossing parity of a ray towards +x. */
function inRing(ring, [x, y]) {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
    const [ax, ay] = ring[j];
    const [bx, by] = ring[i];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

/**
 * Segments in a quarter circle of radius `radius` such that no chord is further than `chord` from its arc:
 * sagitta r (1 - cos(a / 2)) <= chord.
 * @param {number} radius
 * @param {number} chord
 * @returns {number}
 */
export function quadrantSegments(radius, chord) {
  return Math.ceil(Math.PI / 2 / (2 * Math.acos(1 - Math.min(1, chord / radius))));
}
