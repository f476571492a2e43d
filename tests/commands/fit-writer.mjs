/**
 * A process that adds to a fit log until it is killed: `node fit-writer.mjs FIT_LOG_MODULE LOG NAME COUNT`. Prints each
 * number once its line is written. A NAME that begins with "half" writes halves of lines instead, as a killed run would.
 */
import { closeSync, openSync, writeSync } from 'node:fs';

const [module, path, name, count] = process.argv.slice(2);
const { appendLine } = await import(module);
const entry = (note) => ({
  version: 1,
  kind: 'result',
  clearance: 0.12,
  step: null,
  result: 'good',
  tried: 'dry',
  cutter: { diameter: 3, cuts: null },
  woods: { field: 'white ash', plug: 'black walnut' },
  depth: 8,
  moisture: null,
  date: null,
  note,
});
for (let k = 0; k < Number(count); k++) {
  if (name.startsWith('half')) {
    const file = openSync(path, 'a');
    const line = Buffer.from(JSON.stringify(entry(`${name} ${k} é`)));
    // Cut at changing places, in the middle of a letter of two bytes too.
    writeSync(file, line.subarray(0, line.length - 3 - (k % 90)));
    closeSync(file);
  } else {
    appendLine(path, entry(`${name} ${k} ${'x'.repeat(k % 400)}`));
    writeSync(1, `${k}\n`);
  }
}
