/**
 * Draws patterns/fonts/NAME.png, a line of each bundled font as a 1/8 in cutter leaves it at the font's least height,
 * and writes the table of them, patterns/fonts/README.md. Run it after changing the fonts or the cutter pass.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { main, ROOT, setUp } from './setup.mjs';

const TEXT = 'Orchard 27 & Co';
/** Cutters of the table; the picture is of the middle one. */
const CUTTERS = ['1/16in', '1/8in', '1/4in'];
const OWN = '1/8in';
/** A tenth of 1/8 in; other cutters' ease has the same proportion to their diameter. */
const EASE = 0.3175;
/** Height the search starts from, mm. */
const FIRST = 40;
/** A font whose least height is above this is no use, and its line is wider than a recipe allows, mm. */
const MOST_HEIGHT = 165;
/** Height that the note is drawn at before it is made small, mm. */
const NOTE = 60;
const WIDTHS = [720, 600, 500];
const MOST_BYTES = 60_000;
const FIELD = '#e6cfa6';
const PLUG = '#55382a';

main(setUp);
const dist = (file) => import(new URL(`../dist/${file}`, import.meta.url));
const [
  { loadAssets, loadRenderer },
  { readRecipe, build, limits },
  { faces, packageOf },
  { pathData },
  { frameOf },
] = await Promise.all(
  ['disk/load.js', 'index.js', 'generators/lettering/faces.js', 'output/svg.js', 'output/ring.js'].map(dist),
);
const renderer = await loadRenderer();
const folder = join(ROOT, 'patterns', 'fonts');
mkdirSync(folder, { recursive: true });
const rows = faces.map((face) => {
  const least = leastHeights(face);
  const height = least[CUTTERS.indexOf(OWN)];
  let picture;
  try {
    picture = drawn(face, height ?? FIRST, height === null ? 'no least height' : `from ${height} mm`);
  } catch (error) {
    trouble(`${face.name} cannot be cut at ${height ?? FIRST} mm: ${error.message}`);
    return { face, least };
  }
  writeFileSync(join(folder, `${face.name}.png`), picture);
  console.error(`patterns/fonts/${face.name}.png, ${picture.length} bytes, ${least.join(' ')}`);
  return { face, least };
});
writeFileSync(join(folder, 'README.md'), page(rows));

/** Cap heights, mm, from which each cutter of the table loses nothing, rounded up; null where there is none of use. */
function leastHeights(face) {
  const { rows } = limits(...setIn(face, FIRST));
  return CUTTERS.map((name) => {
    const { scale } = rows.find((row) => row.cutter.name === name);
    const height = scale === null ? null : name === OWN ? made(face, scale * FIRST) : up(scale * FIRST);
    if (height !== null && height <= MOST_HEIGHT) return height;
    trouble(`${face.name} has no least height under ${MOST_HEIGHT} mm with ${name} (${height})`);
    return null;
  });
}

/** Up to the next half millimetre: at the height written nothing is lost. */
function up(height) {
  return Math.ceil(height * 2) / 2;
}

/** The next half millimetre at which the line is really cut; at the one just above the limit it may be refused yet. */
function made(face, least) {
  for (let height = up(least); height < least + 3; height += 0.5)
    try {
      build(...setIn(face, height));
      return height;
    } catch {}
  return null;
}

function trouble(line) {
  console.error(line);
  process.exitCode = 1;
}

/** A recipe of one line of the text on a face with room for it, and what it needs. */
function setIn(face, height, text = TEXT, font = face.name) {
  const recipe = {
    name: 'font-line',
    units: 'mm',
    outline: { shape: 'rectangle', width: height * (text.length + 3), height: height * 3, margin: 0 },
    pattern: { generator: 'lettering', text, height, tracking: 0, font },
    stock: { field: 12, plug: 12 },
    cutter: { diameter: OWN, flute: 22, ease: EASE, thin: 'widen', touch: 'part' },
    fit: { clearance: 0.08, from: 'plug', plug: 'loose' },
    depth: 8,
    skin: 1.5,
    woods: { field: 'white ash', plug: 'black walnut', fieldGrain: 0, plugGrain: 0 },
  };
  const read = readRecipe(JSON.stringify(recipe), face.name);
  return [read, loadAssets(read, join(folder, 'line.json'))];
}

/** The line after the pass, its bounds, mm, and its pocket as a path. */
function line(face, height, text, font) {
  const { safe } = build(...setIn(face, height, text, font));
  const edges = safe.region.contours.flat();
  const xs = edges.flatMap((e) => [e.x0, e.x1]);
  const ys = edges.flatMap((e) => [e.y0, e.y1]);
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  return { contours: safe.region.contours, box };
}

function moved(contours, dx, dy, scale) {
  const at = (e, key, by) => e[key] * scale + by;
  return contours.map((c) =>
    c.map((e) => ({
      ...e,
      r: e.r * scale,
      x0: at(e, 'x0', dx),
      y0: at(e, 'y0', dy),
      x1: at(e, 'x1', dx),
      y1: at(e, 'y1', dy),
      cx: at(e, 'cx', dx),
      cy: at(e, 'cy', dy),
    })),
  );
}

/** The picture: the line on its wood, and the note below it in the plainest of the faces. */
function drawn(face, height, note) {
  const { contours, box } = line(face, height);
  const words = line(face, NOTE, `${face.title}, ${note}`, 'varela-round');
  const size = (box[2] - box[0]) / 720;
  const mat = 24 * size;
  const small = (17 * size) / NOTE;
  const wide = box[2] - box[0] + 2 * mat;
  const plank = box[3] - box[1] + 2 * mat;
  const frame = frameOf({ width: wide, height: plank + 2.2 * mat }, 'mm');
  const top = (plank + 2.2 * mat) / 2;
  const cut = moved(contours, -(box[0] + box[2]) / 2, top - plank / 2 - (box[1] + box[3]) / 2, 1);
  const text = moved(
    words.contours,
    -wide / 2 + mat - words.box[0] * small,
    -top + 0.5 * mat - words.box[1] * small,
    small,
  );
  const box2 = `0 0 ${frame.width / 1e6} ${frame.height / 1e6}`;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box2}"><rect width="100%" height="100%" fill="#fff"/>` +
    `<rect width="${wide}" height="${plank}" fill="${FIELD}"/>` +
    `<path fill-rule="evenodd" fill="${PLUG}" d="${pathData(cut, frame)}"/>` +
    `<path fill-rule="evenodd" fill="#333" d="${pathData(text, frame)}"/></svg>`;
  return WIDTHS.map((w) => renderer.png(svg, w)).find((png) => png.length < MOST_BYTES);
}

function page(rows) {
  const cells = rows.map(({ face, least }) =>
    [
      `\`${face.name}\``,
      face.title,
      face.style,
      face.suits,
      ...least.map((mm) => (mm === null ? 'none found' : `${mm} mm`)),
      face.licence,
      `\`${packageOf(face)}\``,
    ].join(' | '),
  );
  return `# Bundled fonts

Each is a whole TTF file of the package named, under the licence named; the licence's text lies in the package as
LICENSE_FONT. The least heights are the cap heights from which a cutter loses nothing of "${TEXT}" with \`thin: "widen"\`
and an ease of a tenth of its diameter. Other texts have others: \`inlaywright limits\` tells a recipe's own.
Written by \`node scripts/fonts.mjs\`.

| name | font | style | good for | 1/16 in | 1/8 in | 1/4 in | licence | package |
|---|---|---|---|---|---|---|---|---|
${cells.map((c) => `| ${c} |`).join('\n')}

${rows.map(({ face }) => `![${face.title}](${face.name}.png)`).join('\n\n')}
`;
}
