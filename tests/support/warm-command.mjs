/**
 * The built command, kept running: each message is a command's arguments and the folder it is started in, each answer its
 * exit code and what it wrote. A command that is started anew loads and compiles for a second what then works for a moment.
 */
import { readFileSync } from 'node:fs';

const cli = new URL('../../dist/cli.js', import.meta.url);
const [, path] = /import\("(\.[^"]+)"\)/.exec(readFileSync(cli, 'utf8'));
const { run } = await import(new URL(path, cli).href);

const home = process.cwd();
for (const stream of [process.stdout, process.stderr]) stream.setMaxListeners(0);

/** Hears what is written to a stream until it is let go. */
function heard(stream) {
  const { write } = stream;
  let text = '';
  stream.write = (chunk, encoding, done) => {
    text += chunk;
    (typeof encoding === 'function' ? encoding : done)?.();
    return true;
  };
  return () => {
    stream.write = write;
    return text;
  };
}

process.on('message', async ({ args, cwd }) => {
  const [stdout, stderr] = [heard(process.stdout), heard(process.stderr)];
  let status = 1;
  let thrown = '';
  try {
    process.chdir(cwd);
    status = await run(args);
  } catch (e) {
    thrown = `${e.stack}\n`;
  } finally {
    process.chdir(home);
  }
  process.send({ status, stdout: stdout(), stderr: stderr() + thrown });
});
process.on('disconnect', () => process.exit());
process.send('ready');
