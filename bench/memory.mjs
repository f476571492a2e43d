/** Prints the peak memory of this process in MB after one contender of ours ran over `count` shapes (0: none). */
import { ours } from './ours.mjs';
import { field } from './shapes.mjs';

const [name, count] = process.argv.slice(2);
const { contenders } = await ours();
const contender = contenders.find((c) => c.name === name);
if (!contender) process.exit(1);
if (Number(count) > 0) contender.run(contender.prepare(field('mixed', Number(count))));
console.log(process.resourceUsage().maxRSS / 1024);
