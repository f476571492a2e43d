import { spawn } from 'node:child_process';
import { statSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fileFault } from '../disk/files.js';
import { message } from '../disk/report.js';
import { BadInput } from '../schema/fault.js';
import { startServer } from '../serve/server.js';
import { version } from './version.js';

export interface ServeOptions {
  readonly out: string;
  readonly port?: string;
  /** False with --no-open. */
  readonly open: boolean;
}

/** Serves the page for a folder until it is interrupted. Throws BadInput. */
export async function serve(path: string, { out, port, open }: ServeOptions): Promise<void> {
  const { root, recipe } = place(path);
  const running = await startServer({
    root,
    open: recipe,
    out,
    page: fileURLToPath(new URL('../page/', import.meta.url)),
    patterns: fileURLToPath(new URL('../../patterns/', import.meta.url)),
    version: version(),
    port: portOf(port),
  });
  process.stdout.write(`${running.url}\n`);
  message(`serving ${root} to this machine only; pieces go to ${out}; Ctrl-C ends it`);
  if (open) openBrowser(running.url);
  await new Promise<void>((done) => {
    process.once('SIGINT', done);
    process.once('SIGTERM', done);
  });
  await running.close();
}

function place(path: string): { root: string; recipe: string | null } {
  try {
    if (statSync(path).isDirectory()) return { root: path, recipe: null };
  } catch (e) {
    throw fileFault(e, `cannot serve ${path}`, 'give a folder, or a recipe file (JSON)');
  }
  if (!/\.json$/i.test(path))
    throw new BadInput([
      {
        where: '',
        message: `cannot serve ${path}: it is no recipe, whose name ends in .json; give one, or a folder`,
      },
    ]);
  return { root: dirname(path), recipe: basename(path) };
}

function portOf(given: string | undefined): number {
  if (given === undefined) return 0;
  const port = /^\d{1,5}$/.test(given) ? Number(given) : -1;
  if (port < 1 || port > 65_535)
    throw new BadInput([
      {
        where: '--port',
        message: `${JSON.stringify(given)} is no port: give a number from 1 to 65535, or leave it out`,
      },
    ]);
  return port;
}

/** Asks the system to show an address. Where it will not, the printed one can be opened by hand. */
function openBrowser(url: string): void {
  const [program, ...args] =
    process.platform === 'darwin'
      ? ['open', url]
      : process.platform === 'win32'
        ? ['rundll32', 'url.dll,FileProtocolHandler', url]
        : ['xdg-open', url];
  const child = spawn(program!, args, { stdio: 'ignore', detached: true });
  child.on('error', () => message('no browser could be opened: open the address above yourself'));
  child.unref();
}
