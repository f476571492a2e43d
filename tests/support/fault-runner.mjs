/** Runs built commands in one process, each on a disk that fails as planned: many trials for one start. */
import { readFileSync } from 'node:fs';
import { arm, disarm } from './faulty-fs.mjs';

const { run } = await import('../../dist/commands/run.js');
const { saveRecipe, versionOf } = await import('../../dist/serve/recipes.js');
// What a run leaves is to be taken for a dead run's by the next one. No process has this number.
Object.defineProperty(process, 'pid', { value: 999_999_999 });
process.stdout.setMaxListeners(0);
process.stderr.setMaxListeners(0);

/** The page's way of writing a recipe, told like a command: 2 and one line when it cannot. */
function save(file, text, plan) {
  disarm();
  const over = versionOf(readFileSync(file));
  arm(plan);
  try {
    saveRecipe(process.cwd(), { file, text, over });
    return 0;
  } catch (e) {
    process.stderr.write(`${e.status === undefined ? 'internal error' : 'inlaywright'}: ${e.message}\n`);
    return 2;
  }
}

process.on('message', async ({ args, plan }) => {
  const said = { stdout: '', stderr: '' };
  const writes = ['stdout', 'stderr'].map((name) => {
    const { write } = process[name];
    process[name].write = (text) => {
      said[name] += text;
      return true;
    };
    return () => {
      process[name].write = write;
    };
  });
  let code;
  try {
    arm(plan);
    code = args[0] === 'save' ? save(args[1], args[2], plan) : await run(args);
  } catch (e) {
    said.stderr += `thrown: ${e.stack}\n`;
    code = -1;
  }
  const seen = disarm();
  for (const restore of writes) restore();
  process.send({ code, ...said, ...seen });
});
process.send('ready');
