/** Prints the peak memory of this process in MB after one contender of ours ran over `count` shapes (0: none). */
import { existsSync, readFileSync } from 'node:fs';
import { ours } from './ours.mjs';
import { field } from './shapes.mjs';

const [name, count] = process.argv.slice(2);
const { contenders } = await ours();
const contender = contenders.find((c) => c.name === name);
if (!contender) process.exit(1);
if (Number(count) > 0) contender.run(contender.prepare(field('mixed', Number(count))));
console.log(peak() / 1024);

/** KB. Where there is /proc it is asked: the resource usage of a fresh process starts from its parent's peak there. */
function peak() {
  const status = '/proc/self/status';
  const own = existsSync(status) ? /VmHWM:\s*(\d+) kB/.exec(readFileSync(status, 'utf8')) : null;
  return own ? Number(own[1]) : process.resourceUsage().maxRSS;
}
