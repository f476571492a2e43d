/** The built command in a child, which says at its end what it took. */
import { run } from '../../dist/commands/run.js';

process.exitCode = await run(process.argv.slice(2));
const { userCPUTime, systemCPUTime, maxRSS } = process.resourceUsage();
process.send({ seconds: (userCPUTime + systemCPUTime) / 1e6, megabytes: maxRSS / 1024 });
process.disconnect();
