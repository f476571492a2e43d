/** `npm run bench`: measures this package against general polygon libraries and itself, and prints markdown tables. */
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { checkFree, errors } from './accuracy.mjs';
import { coldStarts, cores, eachMade } from './commands.mjs';
import { cells, figures, prepareFigures } from './figures.mjs';
import { sizes } from './files.mjs';
import { floorOf } from './floor.mjs';
import { peakMemory, slope, timed } from './measure.mjs';
import { ours } from './ours.mjs';
import { peers } from './peers.mjs';
import { large, pipeline, pipelineLines } from './pipeline.mjs';
import { field } from './shapes.mjs';
import { LARGE } from './stages.mjs';

const quick = process.argv.includes('--quick');
const jsonAt = process.argv.indexOf('--json');
const TIMES = quick ? 3 : 5;
const ENOUGH = 0.003;
/** Shapes of each field that all are compared on. Peers work shape by shape, so their time grows in step with the count. */
const COUNT = quick ? 200 : 1000;
/** The most that may be taken: as a share of the fastest peer that is exact enough, and in times of the floor. */
const FIELDS = {
  free: { count: COUNT, share: 1 / 20, make: field },
  mixed: { count: COUNT, share: 1 / 4, make: field },
  dense: { count: COUNT, share: 1 / 2, make: field },
  lettering: { count: COUNT / 5, share: 1 / 4, make: figures },
  stars: { count: COUNT, share: 1 / 4, make: figures },
  cells: { count: COUNT, share: 1 / 2, make: (_, n) => cells(n) },
};
const FLOOR = 6;
const GROWTH = quick ? [100, 1000, 3000] : [100, 1000, 10_000, 100_000];
const MEMORY = quick ? [1000, 3000] : [1000, 10_000, 100_000];

const say = (text) => process.stderr.write(`${text}\n`);
const own = await ours();
if (own.missing.length > 0) throw new Error(`not built: ${own.missing.join('; ')}`);
checkFree(field('free', 1000));
await prepareFigures();
const shapesOf = (name) => FIELDS[name].make(name, FIELDS[name].count);

const rows = [];
const measure = (contender, kind) => {
  say(`${contender.title} ...`);
  const error = errors(contender, quick ? 20 : 60);
  // Warm: compiled, and the heap grown. Of ours the first would else be measured while it is compiled.
  for (let i = 0; i < (kind === 'ours' ? 6 : 3); i++)
    for (const name of ['free', 'mixed', 'dense']) timed(contender, field(name, 300, 3 + i), 1);
  const times = {};
  for (const name of Object.keys(FIELDS))
    times[name] = timed(contender, shapesOf(name), kind === 'ours' ? TIMES : 3);
  rows.push({ contender: contender.title, kind, simplifies: contender.simplifies === true, error, times });
};
for (const contender of own.contenders) measure(contender, 'ours');
for (const contender of peers(0.001)) measure(contender, 'peer');
const near = (row) => Math.max(row.error.free, row.error.dense) <= ENOUGH;

const verdicts = [];
const judge = (what, value, limit, unit = '', most = true) =>
  verdicts.push({ what, value, limit, unit, most, holds: most ? value <= limit : value >= limit });
const last = own.contenders.at(-1);
const mine = rows.find((row) => row.contender === last.title);
const able = rows.filter((row) => row.kind === 'peer' && near(row));
for (const [name, { count, share }] of Object.entries(FIELDS)) {
  const fastest = (list) => list.reduce((a, b) => (b.times[name].median < a.times[name].median ? b : a));
  const peer = fastest(able);
  // GEOS simplifies its input by 1 % of the distance and cannot be told not to: what these fields show of its error is no
  // promise for others, so the fastest library that does not is compared too.
  const faithful = able.filter((row) => !row.simplifies);
  if (peer.simplifies && faithful.length > 0) {
    const other = fastest(faithful);
    judge(
      `${name}, ${count} shapes: share of ${other.contender}, the fastest that does not simplify`,
      mine.times[name].median / other.times[name].median,
      share,
    );
  }
  judge(
    `${name}, ${count} shapes: share of ${peer.contender}`,
    mine.times[name].median / peer.times[name].median,
    share,
  );
}
say('floor ...');
for (const name of Object.keys(FIELDS)) {
  const input = last.prepare(shapesOf(name));
  const floor = floorOf(last.run(input).region.contours, TIMES);
  judge(
    `${name}: times the index alone (${figure(floor.median)} ms)`,
    mine.times[name].median / floor.median,
    FLOOR,
  );
}
say('growth ...');
for (let i = 0; i < 3; i++) timed(last, field('mixed', 1000, 5 + i), 1);
const growth = GROWTH.map((n) => [n, timed(last, field('mixed', n), n > 10_000 ? 1 : TIMES).median]);
judge(`growth slope, ${GROWTH[0]} to ${GROWTH.at(-1)} shapes (mixed)`, slope(growth), 1.1);
say('memory ...');
const base = peakMemory(last.name, 0);
const memory = MEMORY.map((n) => [n, peakMemory(last.name, n) - base]);
for (const [n, mb] of memory)
  judge(`peak memory of ${n} shapes, KB a corner`, (mb * 1024) / (n * 11), 5, 'KB');
say('files ...');
for (const name of ['free', 'lettering']) {
  const shapes = FIELDS[name].make(name, 100);
  const { region } = last.run(last.prepare(shapes));
  const [geos] = peers(0.001);
  const peer = geos.rings(geos.run(geos.prepare(shapes))).flat();
  const corners = shapes.reduce((n, s) => n + (s.edges ?? s.rings).reduce((m, c) => m + c.length, 0), 0);
  const { ours: o, flattened: f, peer: p } = await sizes({ contours: region.contours, corners, peer });
  judge(
    `${name}: bytes a corner ${figure(o.bytes)}, of the same flattened at 1 µm ${figure(f.bytes)}: times smaller`,
    f.bytes / o.bytes,
    15,
    '',
    false,
  );
  judge(
    `${name}: edges a corner ${figure(o.edges)}, of GEOS at 1 µm chords ${figure(p.edges)}: times fewer`,
    p.edges / o.edges,
    15,
    '',
    false,
  );
}
say('cores ...');
const many = cores(quick ? 1 : 3);
if (many) {
  judge(
    `${many.recipes} recipes on two cores (${figure(many.two.median)} ms; ${figure(many.fasterThanOneThread.median)} times faster than with one thread there): times faster than on one`,
    many.fasterThanOneCore.median,
    1.7,
    '',
    false,
  );
}
say('commands ...');
const cold = coldStarts(TIMES);
const each = eachMade(quick ? 1 : 2);
judge(
  `make, each of ${each.count} recipes, beyond Node's start (${figure(each.least)} to ${figure(each.most)}, ${each.slowest})`,
  each.median,
  700,
  'ms',
);
say('stages ...');
const recipes = await pipeline(quick ? 1 : 3);
const largest = await large(quick ? 1 : 3, LARGE);

const shown = ({ median, least, most }) => `${figure(median)} (${figure(least)} to ${figure(most)})`;
function figure(n) {
  return n >= 100 ? n.toFixed(0) : n.toPrecision(n < 1 ? 2 : 3);
}
const names = Object.keys(FIELDS);
const lines = [
  `Node ${process.version}, ${process.platform} ${process.arch}, ${cpus()[0]?.model ?? 'unknown processor'}. ` +
    'Milliseconds, median of warm runs (least to most). Errors: largest distance from what is exact, µm.',
  '',
  `| | error free | error dense | ${names.map((n) => `${n} ${FIELDS[n].count}`).join(' | ')} |`,
  `|---|${'---:|'.repeat(names.length + 2)}`,
  ...rows.map((row) => {
    const error = [row.error.free, row.error.dense].map((e) => (e * 1000).toFixed(2));
    const cellsOf = names.map((n) => shown(row.times[n]));
    return `| ${row.contender}${near(row) ? '' : ' (not near enough)'} | ${[...error, ...cellsOf].join(' | ')} |`;
  }),
  '',
  '| target | measured | asked | |',
  '|---|---:|---:|---|',
  ...verdicts.map(
    (v) =>
      `| ${v.what} | ${figure(v.value)} ${v.unit} | at ${v.most ? 'most' : 'least'} ${figure(v.limit)} ${v.unit} | ${v.holds ? 'holds' : 'FAILS'} |`,
  ),
  '',
  `Growth (shapes: ms): ${growth.map(([n, ms]) => `${n}: ${figure(ms)}`).join(', ')}. Memory (shapes: MB over the bare process): ${memory.map(([n, mb]) => `${n}: ${figure(mb)}`).join(', ')}.`,
  '',
  '| cold start, ms beyond the first | |',
  '|---|---:|',
  ...cold.map((c) => `| ${c.what} | ${shown(c)} |`),
  '',
  ...pipelineLines(recipes),
  ...largest.flatMap((p) => [
    '',
    `| ${p.name}, ${p.pieces} pieces | ${p.stages.map((s) => s.name).join(' | ')} |`,
    `|---|${'---:|'.repeat(p.stages.length)}`,
    `| ms | ${p.stages.map(shown).join(' | ')} |`,
  ]),
];
console.log(lines.join('\n'));
if (jsonAt >= 0)
  writeFileSync(
    process.argv[jsonAt + 1],
    `${JSON.stringify({ node: process.version, rows, verdicts, growth, memory, cold, each, many, recipes, large: largest }, null, 2)}\n`,
  );
