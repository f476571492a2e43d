/**
 * Tries fonts, one at a time, in a process of its own: a hang can be ended, and what memory it took be seen. Started with the folder
 * of the built library (a URL); each message is a recipe's path, each answer how that recipe ended.
 */
import { readFileSync } from 'node:fs';

const [library] = process.argv.slice(2);
const from = (file) => import(new URL(file, library));
const [{ build }, { loadAssets }, { readRecipe }, { BadInput, Refusal }] = await Promise.all(
  ['build.js', 'disk/load.js', 'recipe/read.js', 'schema/fault.js'].map(from),
);

process.on('message', (path) => {
  const before = process.cpuUsage();
  const answer = tried(path);
  const { user, system } = process.cpuUsage(before);
  process.send({ ...answer, seconds: (user + system) / 1e6, megabytes: process.memoryUsage().rss / 1e6 });
});
process.send({ end: 'ready', said: '', seconds: 0, megabytes: 0 });

function tried(path) {
  try {
    const recipe = readRecipe(readFileSync(path, 'utf8'), path, []);
    const { safe, pair } = build(recipe, loadAssets(recipe, path));
    const regions = [safe.region, pair.pocket, pair.plug];
    const edges = regions.flatMap((r) => r.contours.flat());
    // A nearly straight arc may well have its centre a kilometre off, but no end.
    const wild = edges
      .flatMap((e) => [e.x0, e.y0, e.x1, e.y1].filter((n) => !(Math.abs(n) < 1e6)))
      .concat(edges.flatMap((e) => [e.cx, e.cy, e.r].filter((n) => !Number.isFinite(n))))[0];
    return { end: 'drawn', said: wild === undefined ? '' : `a coordinate of ${wild}` };
  } catch (e) {
    if (e instanceof BadInput) return { end: 'bad input', said: e.message };
    if (e instanceof Refusal) return { end: 'refused', said: e.message };
    return { end: 'error', said: String(e?.stack ?? e) };
  }
}
