/** `npm start`: makes every recipe in patterns/ into out/ and says what came of each. */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { main, ROOT, Stop, setUp } from './setup.mjs';

main(() => {
  setUp();
  const recipes = readdirSync(join(ROOT, 'patterns'))
    .filter((name) => name.endsWith('.json'))
    .sort();
  if (recipes.length === 0) throw new Stop('there are no recipes in patterns/');
  console.error(`Making ${recipes.length} recipes from patterns/ into out/ ...`);
  const made = spawnSync(
    process.execPath,
    [join('dist', 'cli.js'), 'make', ...recipes.map((name) => join('patterns', name)), '--out', 'out'],
    { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'] },
  );
  if (made.status !== 0) {
    console.error('Not every recipe was made: see the lines above.');
    process.exitCode = made.status ?? 1;
    return;
  }
  report(recipes.map((file) => JSON.parse(readFileSync(join(ROOT, 'patterns', file), 'utf8')).name));
});

function report(names) {
  const unproven = names.filter((name) => !proven(name));
  if (unproven.length > 0) throw new Stop(`no proof was found for ${unproven.join(', ')}`);
  console.log(
    `\n${names.length} pieces made, each proven by reading back its own drawings. To look at them, open`,
  );
  for (const name of names) console.log(`  ${join(ROOT, 'out', name, 'sheet.html')}`);
}

function proven(name) {
  const file = join(ROOT, 'out', name, 'job.json');
  if (!existsSync(file)) return false;
  const { proof } = JSON.parse(readFileSync(file, 'utf8'));
  return proof.pocket.holds === true && proof.plug.holds === true;
}
