/** Measures this package's cutter pass against general polygon libraries, and prints one markdown table. */
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { checkFree, errors } from './accuracy.mjs';
import { commandTimes, peakMemory, slope, timed } from './measure.mjs';
import { ours } from './ours.mjs';
import { peers } from './peers.mjs';
import { field } from './shapes.mjs';
import { LARGE, stages } from './stages.mjs';

const quick = process.argv.includes('--quick');
const jsonAt = process.argv.indexOf('--json');
const TIMES = quick ? 3 : 5;
const FIELDS = ['free', 'mixed', 'dense'];
/** Peers work shape by shape, so their time grows in step with the count: 10,000 would only take longer to say so. */
const COUNTS = { peer: quick ? [300] : [100, 1000], ours: quick ? [300] : [100, 1000, 10_000] };
const GROWTH = quick ? [1000, 3000] : [1000, 3000, 10_000, 30_000];
const COMPARED = COUNTS.peer.at(-1);
const ENOUGH = 0.003;
const SHARE = { free: 0.1, mixed: 0.5, dense: 1.5 };
const TARGET = { slope: 1.15, memory: 500, command: 700 };

const say = (text) => process.stderr.write(`${text}\n`);
const own = await ours();
for (const line of own.missing) say(`not built, left out: ${line}`);
checkFree(field('free', 1000));

const rows = [];
const measure = (contender, kind) => {
  say(`${contender.title} ...`);
  const error = errors(contender, quick ? 30 : 100);
  const times = {};
  for (const name of FIELDS) {
    // Warm: compiled, and the heap grown.
    for (let i = 0; i < 3; i++) timed(contender, field(name, 300, 3 + i), TIMES);
    for (const count of COUNTS[kind]) times[`${name} ${count}`] = timed(contender, field(name, count), TIMES);
  }
  rows.push({ contender: contender.title, kind, simplifies: contender.simplifies === true, error, times });
};
for (const contender of own.contenders) measure(contender, 'ours');
for (const contender of peers(0.001)) measure(contender, 'peer');
const near = (row) => Math.max(row.error.free, row.error.dense) <= ENOUGH;
if (rows.some((row) => row.kind === 'peer' && !near(row))) {
  // Coarse peers get a second chance at a finer chord.
  const coarse = rows
    .filter((row) => row.kind === 'peer' && !near(row))
    .map((row) => row.contender.split(',')[0]);
  for (const contender of peers(0.00025)) {
    if (coarse.includes(contender.title.split(',')[0])) measure(contender, 'peer');
  }
}

const verdicts = [];
const judge = (what, value, limit, unit = '') =>
  verdicts.push({ what, value, limit, unit, holds: value >= 0 && value <= limit });
const last = own.contenders.at(-1);
if (last) {
  const mine = rows.find((row) => row.contender === last.title);
  for (const name of FIELDS) {
    const key = `${name} ${COMPARED}`;
    const able = rows.filter((row) => row.kind === 'peer' && near(row));
    const fastest = (list) => list.reduce((a, b) => (b.times[key].median < a.times[key].median ? b : a));
    // GEOS simplifies its input by 1 % of the distance and cannot be told not to: what these fields show of its
    // error is no promise for others, so the fastest library without that is compared too.
    const against = able.length === 0 ? [] : [fastest(able)];
    const faithful = able.filter((row) => !row.simplifies);
    if (faithful.length > 0 && against[0].simplifies) against.push(fastest(faithful));
    for (const peer of against) {
      const what = `${last.title}, ${name} field of ${COMPARED}, as a share of ${peer.contender}`;
      judge(what, mine.times[key].median / peer.times[key].median, SHARE[name]);
    }
  }
  say('growth ...');
  // The peers' runs since have aged our compiled code.
  for (let i = 0; i < 3; i++) timed(last, field('mixed', 1000, 5 + i), TIMES);
  const growth = GROWTH.map((n) => [n, timed(last, field('mixed', n), n > 10_000 ? 3 : TIMES).median]);
  judge(`growth slope over N = ${GROWTH[0]} to ${GROWTH.at(-1)} (mixed)`, slope(growth), TARGET.slope);
  say('memory ...');
  const count = quick ? 1000 : 10_000;
  const peak = peakMemory(last.name, count);
  const base = peakMemory(last.name, 0);
  judge(`peak memory, ${count} shapes (whole process ${peak.toFixed(0)})`, peak - base, TARGET.memory, 'MB');
  say('command ...');
  for (const { recipe, ms, made } of commandTimes(TIMES)) {
    judge(
      `make ${recipe}${made ? '' : ' (not made)'}, beyond Node's start`,
      made ? ms : -1,
      TARGET.command,
      'ms',
    );
  }
}

say('stages ...');
const pipelines = [];
if (own.missing.length === 0)
  for (const content of LARGE) pipelines.push({ name: content.name, ...(await stages(TIMES, content)) });

const shown = ({ median, least, most }) => `${figure(median)} (${figure(least)} to ${figure(most)})`;
function figure(n) {
  return n >= 100 ? n.toFixed(0) : n.toPrecision(3);
}
const columns = FIELDS.flatMap((name) => COUNTS.ours.map((count) => `${name} ${count}`));
const lines = [
  `Node ${process.version}, ${process.platform} ${process.arch}, ${cpus()[0]?.model ?? 'unknown processor'}. ` +
    `Milliseconds, median of ${TIMES} warm runs (least to most). Errors: largest distance from what is exact, µm.`,
  '',
  `| | error free | error dense | ${columns.join(' | ')} |`,
  `|---|${'---:|'.repeat(columns.length + 2)}`,
  ...rows.map((row) => {
    const cells = columns.map((key) => (row.times[key] ? shown(row.times[key]) : 'not run'));
    const error = [row.error.free, row.error.dense].map((e) => (e * 1000).toFixed(2));
    return `| ${row.contender}${near(row) ? '' : ' (not near enough)'} | ${[...error, ...cells].join(' | ')} |`;
  }),
  '',
  ...(verdicts.length > 0 ? ['| target | measured | at most | |', '|---|---:|---:|---|'] : []),
  ...verdicts.map(
    (v) =>
      `| ${v.what} | ${v.value < 0 ? 'none' : `${figure(v.value)} ${v.unit}`} | ${v.limit} ${v.unit} | ${v.holds ? 'pass' : 'FAIL'} |`,
  ),
  ...pipelines.flatMap((p) => [
    '',
    `| ${p.name}, ${p.pieces} pieces | ${p.stages.map((s) => s.name).join(' | ')} |`,
    `|---|${'---:|'.repeat(p.stages.length)}`,
    `| ms | ${p.stages.map(shown).join(' | ')} |`,
  ]),
  ...own.missing.map((line) => `\nNot built, left out: ${line}`),
];
console.log(lines.join('\n'));
if (jsonAt >= 0) {
  const result = { node: process.version, rows, verdicts, pipelines, missing: own.missing };
  writeFileSync(process.argv[jsonAt + 1], `${JSON.stringify(result, null, 2)}\n`);
}
