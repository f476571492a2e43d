/**
 * Fields of what the product itself draws, for the benchmark: lettering, stars in contact, and cells crowded together.
 * A shape is { rings, edges? }: polygons for libraries that know no others, and where it has arcs its edges for ours.
 */
import { random } from './shapes.mjs';

/** Chords of the polygons, mm: what they lose beside the arcs is a third of what is asked of a peer. */
const CHORD = 0.001;

const TEXT =
  'The quick heron judged my box of five vases with zeal\nPACK MY BOX WITH FIVE DOZEN OAK JUGS 0123456789 &';

/** Recipes of which the pieces are taken; moved on by `pitch` they fill as large a field as is wanted. */
const DRAWN = {
  lettering: {
    outline: { shape: 'rectangle', width: 1800, height: 220, margin: 10 },
    pattern: { generator: 'lettering', text: TEXT, font: 'varela-round', height: 36 },
    pitch: [1800, 220],
  },
  stars: {
    outline: { shape: 'rectangle', width: 600, height: 600, margin: 5 },
    pattern: {
      generator: 'contact-stars',
      tiling: '4.8.8',
      edge: 19.5,
      plug: 'tiles',
      wall: 3.6,
      fill: 'whole',
    },
    pitch: [600, 600],
  },
};

/** @param {'lettering' | 'stars'} name */
async function drawn(name) {
  const dist = (file) => import(`../dist/${file}`);
  const { readRecipe } = await dist('recipe/read.js');
  const { compose } = await dist('generators/compose.js');
  const { loadAssets } = await dist('disk/load.js');
  const { flatten } = await dist('geometry/region.js');
  const { pitch, ...parts } = DRAWN[name];
  const recipe = readRecipe(
    JSON.stringify({ name, cutter: { diameter: 2.6, flute: 12, thin: 'drop' }, depth: 8, ...parts }),
    name,
  );
  const artwork = compose(recipe.pattern, recipe.outline, loadAssets(recipe, `${name}.json`), {
    r: 1.6,
    widen: false,
  });
  const shapes = artwork.pieces.map((p) => p.region.contours);
  return { pitch, shapes: shapes.map((edges) => ({ edges, rings: edges.map((c) => flatten(c, CHORD)) })) };
}

const made = new Map();

/** Prepares a field's pieces; call before `figures`. */
export async function prepareFigures() {
  for (const name of Object.keys(DRAWN)) made.set(name, await drawn(name));
}

export function figures(name, count) {
  const { pitch, shapes } = made.get(name);
  const blocks = Math.ceil(count / shapes.length);
  const across = Math.ceil(Math.sqrt(blocks));
  return Array.from({ length: count }, (_, i) => {
    const block = Math.floor(i / shapes.length);
    return moved(
      shapes[i % shapes.length],
      (block % across) * pitch[0],
      Math.floor(block / across) * pitch[1],
    );
  });
}

function moved({ edges, rings }, dx, dy) {
  if (dx === 0 && dy === 0) return { edges, rings };
  return {
    edges: edges.map((c) =>
      c.map((e) => ({
        x0: e.x0 + dx,
        y0: e.y0 + dy,
        x1: e.x1 + dx,
        y1: e.y1 + dy,
        cx: e.r === 0 ? 0 : e.cx + dx,
        cy: e.r === 0 ? 0 : e.cy + dy,
        r: e.r,
      })),
    ),
    rings: rings.map((ring) => ring.map(([x, y]) => [x + dx, y + dy])),
  };
}

const SPACE = 14;
/** Cells lie 3.6 mm apart: the cutter's 3.2 and a little, so that what interacts are their own short edges. */
const WALL = 3.6;

/**
 * Voronoi cells of points strewn one to a square of 14 mm, each drawn in by half the wall: every cell of its own shape,
 * many of its edges shorter than the corner radius.
 */
export function cells(count) {
  const next = random(4711);
  const across = Math.ceil(Math.sqrt(count)) + 4;
  const points = Array.from({ length: across * across }, (_, i) => [
    ((i % across) + next()) * SPACE,
    (Math.floor(i / across) + next()) * SPACE,
  ]);
  const out = [];
  for (let y = 2; y < across - 2; y++)
    for (let x = 2; x < across - 2 && out.length < count; x++) {
      const [px, py] = points[y * across + x];
      let ring = [
        [px - 3 * SPACE, py - 3 * SPACE],
        [px + 3 * SPACE, py - 3 * SPACE],
        [px + 3 * SPACE, py + 3 * SPACE],
        [px - 3 * SPACE, py + 3 * SPACE],
      ];
      for (let v = y - 2; v <= y + 2; v++)
        for (let u = x - 2; u <= x + 2; u++)
          if (u !== x || v !== y) ring = nearer(ring, px, py, points[v * across + u]);
      if (ring.length > 2) out.push({ rings: [ring] });
    }
  return out;
}

/** The part of a convex ring that is nearer to p than to q, and half a wall from being as near. */
function nearer(ring, px, py, [qx, qy]) {
  const [dx, dy] = [qx - px, qy - py];
  const l = Math.hypot(dx, dy);
  const limit = l / 2 - WALL / 2;
  const over = ([x, y]) => ((x - px) * dx + (y - py) * dy) / l - limit;
  const out = [];
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length];
    const [s, t] = [over(a), over(b)];
    if (s <= 0) out.push(a);
    if (s < 0 !== t < 0 && s !== t)
      out.push([a[0] + ((b[0] - a[0]) * s) / (s - t), a[1] + ((b[1] - a[1]) * s) / (s - t)]);
  });
  return out;
}
