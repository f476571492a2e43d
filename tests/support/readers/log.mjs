import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** The advice takes a hundred times as long as the reading. */
const SELDOM = 20;

/** Asks for advice on a damaged fit log, then adds a line, which has to count whatever stands before it. */
export async function start(from, folder) {
  const { appendLine, keepAside, readLog } = await from('commands/fit-log.js');
  const { next } = await from('commands/fit.js');
  const { readLine } = await from('fit/log/read-line.js');
  const { BadInput } = await from('schema/fault.js');
  const { lineText } = await from('fit/log/entry.js');
  const recipe = join(folder, 'recipe.json');
  const path = join(folder, 'recipe.fitlog.jsonl');
  // A log that ends in half a line is read again after 10 ms; nobody else writes here.
  Atomics.wait = () => 'timed-out';
  let turn = 0;
  return (bytes) => {
    rmSync(join(folder, 'recipe.fitlog.damaged'), { force: true });
    writeFileSync(path, bytes);
    const { lines, problems } = readLog(path);
    for (const { line } of lines) {
      if (!possible(line)) return `an impossible line: ${JSON.stringify(line)}`;
      if (JSON.stringify(readLine(lineText(line)).line) !== JSON.stringify(line))
        return 'a line that does not read back';
    }
    const unclear = [...problems, ...(turn++ % SELDOM ? [] : printed(() => next(recipe, {})))].find(
      (l) => !/^[^\p{Cc}\p{Cs}]{12,1000}$/u.test(l) || /NaN|undefined|\[object/.test(l),
    );
    if (unclear !== undefined) return `no clear line: ${unclear}`;
    if (!readFileSync(path).equals(bytes)) return 'the log was changed by reading it';
    keepAside(readLog(path));
    if (existsSync(join(folder, 'recipe.fitlog.damaged')) !== problems.some((p) => /damaged/.test(p)))
      return 'damage and no file aside, or a file aside and no damage';
    appendLine(path, ADDED);
    if (!readFileSync(path).subarray(0, bytes.length).equals(bytes)) return 'what stood there was changed';
    const wrong = counted(readLog(path).lines, lines) || counted(afterHalf(bytes), lines);
    // Damage is told and not thrown; here it counts as turned away.
    if (wrong === '' && problems.length > 0) throw new BadInput(problems.map((message) => ({ where: '', message })));
    return wrong;
  };

  /** As when another writer was killed between this one's look and its write: the line lies right behind the other's. */
  function afterHalf(bytes) {
    writeFileSync(path, Buffer.concat([bytes, Buffer.from(`${lineText(ADDED)}\n`)]));
    return readLog(path).lines;
  }
}

/** Whether a cutter can cut it: lengths in mm, none far from what the words of the log allow. */
function possible(line) {
  const within = (v, least, most) => Number.isFinite(v) && v >= least && v <= most;
  if (line.kind === 'coupon') return line.ladder.length > 0 && line.ladder.every((c) => within(c, 0, 10));
  const { clearance, cutter, depth, moisture, woods, result, tried, date, note, step } = line;
  return (
    within(clearance, 0, 10) &&
    within(depth, 0.001, 1000) &&
    within(cutter.diameter, 0.001, 1000) &&
    (cutter.cuts === null || within(cutter.cuts, 0.001, 1000)) &&
    (moisture === null || within(moisture, 0, 100)) &&
    (step === null || step >= 1) &&
    [woods.field, woods.plug].every((wood) => typeof wood === 'string' && wood.trim() !== '') &&
    ['cracked', 'tight', 'good', 'loose', 'gappy'].includes(result) &&
    ['dry', 'glued'].includes(tried) &&
    (date === null || new Date(`${date}T00:00:00Z`).toISOString().startsWith(date)) &&
    (note === null || typeof note === 'string')
  );
}

function counted(after, before) {
  const last = after.at(-1)?.line;
  if (JSON.stringify(last) !== JSON.stringify(ADDED)) return 'the added line does not count';
  return after.length === before.length + 1 ? '' : `${after.length} lines after ${before.length} and one more`;
}

const ADDED = {
  version: 1,
  kind: 'result',
  clearance: 0.12,
  step: 2,
  result: 'good',
  tried: 'glued',
  cutter: { diameter: 3, cuts: null },
  woods: { field: 'white ash', plug: 'black walnut' },
  depth: 8,
  moisture: null,
  date: null,
  note: 'the line that must count',
};

/** What a command prints, as lines. */
function printed(command) {
  const streams = [process.stdout, process.stderr];
  const real = streams.map((s) => s.write);
  let text = '';
  for (const s of streams)
    s.write = (piece) => {
      text += piece;
      return true;
    };
  try {
    command();
  } finally {
    streams.forEach((s, k) => {
      s.write = real[k];
    });
  }
  return text.split('\n').filter((l) => l !== '');
}
