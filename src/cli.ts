#!/usr/bin/env node
try {
  const { run } = await import('./commands/run.js');
  process.exitCode = await run(process.argv.slice(2));
} catch (e) {
  // Nothing of ours may be loaded yet: the system had no file handles to read it with.
  const { code, message } = e as NodeJS.ErrnoException;
  const full = code === 'EMFILE' || code === 'ENFILE';
  const said = full ? 'too many files are open: raise the limit (ulimit -n), then run this again' : message;
  process.stderr.write(`inlaywright: ${said.split('\n')[0]}\n`);
  process.exitCode = full ? 2 : 1;
}
