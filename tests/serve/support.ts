import { createHash } from 'node:crypto';
import {
  cpSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { type IncomingHttpHeaders, request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Running, ServeOptions } from '../../src/serve/server.js';
import { TOKEN_HEADER } from '../../src/wire.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** What nobody outside the folder may ever read or lose. */
export const CANARY = 'the canary outside sings';

/** A server of its own on a folder of its own, with something precious beside it. */
export interface Bench {
  /** Holds `served`, the folder; `outside.json` and `outside/`, which nobody may touch. */
  readonly above: string;
  readonly folder: string;
  readonly out: string;
  readonly running: Running;
  close(): Promise<void>;
}

/** As it ships: threads are started from built files, so the server is the built one too. */
export async function bench(more: Partial<ServeOptions> = {}): Promise<Bench> {
  const { startServer } = (await import(
    '../../dist/serve/server.js' as string
  )) as typeof import('../../src/serve/server.js');
  const above = mkdtempSync(join(tmpdir(), 'inlaywright-serve-'));
  const folder = join(above, 'served');
  mkdirSync(join(folder, 'drawings'), { recursive: true });
  mkdirSync(join(above, 'outside'));
  writeFileSync(join(above, 'outside.json'), JSON.stringify({ outline: CANARY, pattern: CANARY }));
  writeFileSync(
    join(above, 'outside', 'leaf.svg'),
    `<svg xmlns="http://www.w3.org/2000/svg"><!-- ${CANARY} --></svg>`,
  );
  cpSync(join(root, 'patterns', 'trivet-dots.json'), join(folder, 'trivet-dots.json'));
  const out = join(folder, 'out');
  const running = await startServer({
    root: folder,
    open: null,
    out,
    page: join(root, 'dist', 'page'),
    patterns: join(root, 'patterns'),
    version: '0.0.0',
    port: 0,
    ...more,
  });
  return {
    above,
    folder,
    out,
    running,
    async close() {
      await running.close();
      rmSync(above, { recursive: true, force: true });
    },
  };
}

export interface Reply {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly bytes: Buffer;
  readonly text: string;
}

export interface Sent {
  readonly method?: string;
  /** Sent as it is written: nothing in it is put right. */
  readonly path: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer;
}

/** Sends what it is told, as no browser would; the headers of the page's own requests unless others are given. */
export function send({ running }: Bench, { method = 'GET', path, headers = {}, body }: Sent): Promise<Reply> {
  return new Promise((done, failed) => {
    const sent = request(
      {
        host: '127.0.0.1',
        port: running.port,
        method,
        path,
        setHost: false,
        headers: { host: `127.0.0.1:${running.port}`, ...headers },
      },
      (reply) => {
        const parts: Buffer[] = [];
        reply.on('data', (d) => parts.push(d));
        reply.on('end', () => {
          const bytes = Buffer.concat(parts);
          done({ status: reply.statusCode!, headers: reply.headers, bytes, text: bytes.toString('utf8') });
        });
        reply.on('error', failed);
      },
    );
    sent.on('error', failed);
    sent.end(body);
  });
}

/** The same with the run's key. */
export function ask(of: Bench, sent: Sent): Promise<Reply> {
  return send(of, { ...sent, headers: { [TOKEN_HEADER]: of.running.token, ...sent.headers } });
}

/** A body of JSON with the key. */
export function put(of: Bench, path: string, json: unknown, method = 'PUT'): Promise<Reply> {
  return ask(of, {
    method,
    path,
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(json),
  });
}

/** Everything below a folder: names, links and contents. */
export function snapshot(folder: string): string {
  const lines: string[] = [];
  const walk = (at: string): void => {
    for (const name of readdirSync(at).sort()) {
      const path = join(at, name);
      const stat = lstatSync(path);
      if (stat.isSymbolicLink()) lines.push(`${path} -> ${readlinkSync(path)}`);
      else if (stat.isDirectory()) {
        lines.push(`${path}/`);
        walk(path);
      } else if (stat.isFile())
        lines.push(`${path} ${createHash('sha256').update(readFileSync(path)).digest('hex')}`);
      else lines.push(`${path} (special)`);
    }
  };
  walk(folder);
  return lines.join('\n');
}
