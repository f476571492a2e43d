import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../', import.meta.url));

/** Median and extremes of a list of numbers. */
export function spread(list) {
  const sorted = [...list].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  const median = sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  return { median, least: sorted[0], most: sorted.at(-1) };
}

/**
 * Milliseconds of a contender on shapes, at least `times` runs and at least a third of a second of them. Inputs are
 * prepared afresh outside the clock, so that no run gains from what an earlier one left in its input. Rubbish is not
 * collected by force between runs: that also throws away compiled code, and then measures the compiler.
 */
export function timed(contender, shapes, times) {
  const list = [];
  for (let spent = 0; list.length < times || spent < 333; ) {
    const input = contender.prepare(shapes);
    const start = performance.now();
    contender.run(input);
    const ms = performance.now() - start;
    list.push(ms);
    spent += ms;
  }
  return spread(list);
}

/** Slope of the least-squares line through (log n, log ms): 1 when time grows in step with n. */
export function slope(points) {
  const logs = points.map(([n, ms]) => [Math.log(n), Math.log(ms)]);
  const mean = (k) => logs.reduce((sum, p) => sum + p[k], 0) / logs.length;
  const mx = mean(0);
  const my = mean(1);
  const over = logs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
  return over / logs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
}

/** Peak memory of a fresh process that runs the contender over a mixed field, in MB; -1 when it failed. */
export function peakMemory(name, count) {
  const ran = spawnSync(process.execPath, [join(ROOT, 'bench', 'memory.mjs'), name, String(count)], {
    encoding: 'utf8',
  });
  return ran.status === 0 ? Number(ran.stdout) : -1;
}
