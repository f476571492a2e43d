/**
 * Seeded fields of shapes for the benchmark. A field is a list of { rings }, polygons ([x, y] points, counter-clockwise, mm) on
 * a square grid, so far apart that neighbours never matter to each other at the corner radius R.
 */

/** Corner radius of the benchmark: a 3.175 mm cutter and a little ease. */
export const R = 1.6;
/** Shapes reach at most 16 mm from their middle, so gaps are at least 8 mm = 5 R. */
const PITCH = 40;

/** Small steady generator of numbers in [0, 1): mulberry32. */
export function random(seed) {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const KINDS = [star, plus, notchedHexagon, dumbbell];
const SHARE = { free: 0, mixed: 1 / 3, dense: 1 };

/**
 * @param {'free' | 'mixed' | 'dense'} name free: no corners interact; mixed: in a third of the shapes; dense: in all
 * @param {number} count
 * @param {number} seed
 * @returns {{ rings: [number, number][][], interacts: boolean }[]}
 */
export function field(name, count, seed = 1) {
  const next = random(seed * 7919 + name.length);
  const between = (low, high) => low + (high - low) * next();
  const columns = Math.ceil(Math.sqrt(count));
  return Array.from({ length: count }, (_, i) => {
    const interacts = next() < SHARE[name];
    const kind = KINDS[Math.floor(next() * KINDS.length)];
    const turn = between(0, 2 * Math.PI);
    const dx = (i % columns) * PITCH;
    const dy = Math.floor(i / columns) * PITCH;
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    const points = kind(interacts, between).map(([x, y]) => [dx + x * c - y * s, dy + x * s + y * c]);
    return { rings: [points], interacts };
  });
}

/** 5 to 8 points. Interacting: so pointed that the setbacks of tip and notch overlap on an edge. */
function star(interacts, between) {
  const n = 5 + Math.floor(between(0, 4));
  const outer = between(14, 16);
  const inner =
    outer * (interacts ? between(0.4, 0.48) - 0.012 * (n - 5) : between(0.62, 0.7) + 0.025 * (n - 5));
  return Array.from({ length: 2 * n }, (_, i) => {
    const a = (Math.PI * i) / n;
    const radius = i % 2 === 0 ? outer : inner;
    return [radius * Math.cos(a), radius * Math.sin(a)];
  });
}

/** Interacting: arms that stick out less than the setbacks of their two ends. */
function plus(interacts, between) {
  const w = between(2.3, 3) * R;
  const arm = w + R * (interacts ? between(0.6, 1.6) : between(2.3, 3.5));
  return [
    [arm, -w],
    [arm, w],
    [w, w],
    [w, arm],
    [-w, arm],
    [-w, w],
    [-arm, w],
    [-arm, -w],
    [-w, -w],
    [-w, -arm],
    [w, -arm],
    [w, -w],
  ];
}

/** A regular hexagon with a notch in its top side. Interacting: the notch is narrower than 2 R and gets filled. */
function notchedHexagon(interacts, between) {
  const side = between(14, 16);
  const half = R * (interacts ? between(0.5, 0.9) : between(1.15, 1.5));
  const top = (side * Math.sqrt(3)) / 2;
  const depth = R * between(2.3, 4);
  return [
    [side, 0],
    [side / 2, top],
    [half, top],
    [half, top - depth],
    [-half, top - depth],
    [-half, top],
    [-side / 2, top],
    [-side, 0],
    [-side / 2, -top],
    [side / 2, -top],
  ];
}

/** Two squares joined by a limb. Interacting: the limb is narrower than 2 R and parts. */
function dumbbell(interacts, between) {
  const half = R * (interacts ? between(0.5, 0.9) : between(1.15, 1.5));
  const near = R * between(1.4, 2);
  const head = R * between(4, 4.6);
  const far = near + R * between(4, 4.6);
  return [
    [far, -head],
    [far, head],
    [near, head],
    [near, half],
    [-near, half],
    [-near, head],
    [-far, head],
    [-far, -head],
    [-near, -head],
    [-near, -half],
    [near, -half],
    [near, -head],
  ];
}
