import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { basename, resolve } from 'node:path';
import { errorCode } from '../disk/files.js';
import { BadInput } from '../schema/fault.js';
import { TOKEN_HEADER, type Wrong } from '../wire.js';
import { Denied } from './denied.js';
import { ALWAYS, checkSource, isToken, MADE_POLICY, PAGE_POLICY } from './guard.js';
import { Maker } from './making.js';
import { type PageFile, pageFiles, typeOf } from './page-files.js';
import { madeFile } from './pieces.js';
import { type Bench, ROUTES } from './routes.js';
import { Watch } from './watch.js';

export interface ServeOptions {
  /** The folder served; nothing outside it, and outside `out`, is touched. */
  readonly root: string;
  /** A recipe of it to open first. */
  readonly open: string | null;
  /** Where pieces are made, as the user gave it. */
  readonly out: string;
  /** The built page, and the recipes that ship. */
  readonly page: string;
  readonly patterns: string;
  readonly version: string;
  /** 0: any that is free. */
  readonly port: number;
  /** ms that a request's head, and the whole of it, may take. */
  readonly patience?: { readonly head: number; readonly whole: number };
}

export interface Running {
  readonly port: number;
  readonly token: string;
  /** With the token. */
  readonly url: string;
  close(): Promise<void>;
}

/** More than a page, its workers and a second one open at once. */
const MOST_CONNECTIONS = 64;

/** Starts the page's server on this machine's loopback alone. Throws BadInput when it cannot. */
export async function startServer(options: ServeOptions): Promise<Running> {
  const files = pageFiles(options.page);
  const root = resolve(options.root);
  const bench: Bench = {
    root,
    out: options.out,
    patterns: options.patterns,
    open: options.open,
    folder: basename(root) || root,
    version: options.version,
    maker: new Maker(root, options.out),
    watch: new Watch(root),
  };
  const token = randomBytes(32).toString('base64url');
  const { head, whole } = options.patience ?? { head: 10_000, whole: 60_000 };
  const server = createServer(
    {
      maxHeaderSize: 8192,
      headersTimeout: head,
      requestTimeout: whole,
      connectionsCheckingInterval: Math.min(head, 2000),
    },
    (request, response) => {
      void answer(request, response, { bench, files, token, port: portOf(server) });
    },
  );
  server.maxConnections = MOST_CONNECTIONS;
  await listening(server, options.port);
  const port = portOf(server);
  return {
    port,
    token,
    url: `http://127.0.0.1:${port}/#${token}`,
    close: () =>
      new Promise((done) => {
        bench.maker.stopAll();
        bench.watch.stop();
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}

function portOf(server: Server): number {
  return (server.address() as AddressInfo).port;
}

function listening(server: Server, port: number): Promise<void> {
  return new Promise((done, failed) => {
    server.once('error', (e) => {
      const why = { EADDRINUSE: 'is taken', EACCES: 'needs rights that are missing' }[errorCode(e) ?? ''];
      failed(
        why === undefined
          ? e
          : new BadInput([
              { where: '--port', message: `${port} ${why}; leave --port out for any that is free` },
            ]),
      );
    });
    server.listen(port, '127.0.0.1', done);
  });
}

interface Desk {
  readonly bench: Bench;
  readonly files: ReadonlyMap<string, PageFile>;
  readonly token: string;
  readonly port: number;
}

async function answer(request: IncomingMessage, response: ServerResponse, desk: Desk): Promise<void> {
  for (const [name, value] of Object.entries(ALWAYS)) response.setHeader(name, value);
  try {
    checkSource(request.headers, desk.port);
    const { pathname, searchParams } = addressOf(request);
    if (pathname.startsWith('/api/')) await answerApi(request, response, desk, pathname, searchParams);
    else if (pathname.startsWith('/made/')) sendMade(request, response, desk, pathname);
    else sendPage(request, response, desk.files.get(pathname));
  } catch (e) {
    refuse(response, e);
  }
}

/** The path as it was sent: nothing in it is decoded or put right, so no way of writing "up" means up. */
function addressOf({ url = '' }: IncomingMessage): { pathname: string; searchParams: URLSearchParams } {
  const [pathname = '', ...query] = url.split('?');
  return { pathname, searchParams: new URLSearchParams(query.join('?')) };
}

async function answerApi(
  request: IncomingMessage,
  response: ServerResponse,
  { bench, token }: Desk,
  pathname: string,
  query: URLSearchParams,
): Promise<void> {
  if (!isToken(request.headers[TOKEN_HEADER], token))
    throw new Denied(401, 'the run’s key is missing or wrong');
  const route = ROUTES[`${request.method} ${pathname}`];
  if (!route) throw noSuch(pathname, Object.keys(ROUTES));
  const data = await route({ bench, query, request, response });
  if (data === null) return;
  const raw = data instanceof Uint8Array;
  send(response, 200, raw ? data : Buffer.from(JSON.stringify(data)), {
    'content-type': raw ? 'application/octet-stream' : 'application/json',
    'cache-control': 'no-store',
  });
}

function noSuch(pathname: string, known: readonly string[]): Denied {
  const elsewhere = known.some((k) => k.endsWith(` ${pathname}`));
  return elsewhere ? new Denied(405, 'not this way') : new Denied(404, 'there is no such address');
}

function sendMade(request: IncomingMessage, response: ServerResponse, desk: Desk, pathname: string): void {
  if (request.method !== 'GET') throw new Denied(405, 'not this way');
  const [, , token, name = '', file = '', ...more] = pathname.split('/');
  if (!isToken(token, desk.token)) throw new Denied(401, 'the run’s key is missing or wrong');
  if (more.length > 0) throw new Denied(404, 'there is no such address');
  send(response, 200, madeFile(desk.bench.out, name, file), {
    'content-type': typeOf(file),
    'content-security-policy': MADE_POLICY,
    'cache-control': 'no-store',
  });
}

function sendPage(request: IncomingMessage, response: ServerResponse, file: PageFile | undefined): void {
  if (request.method !== 'GET' && request.method !== 'HEAD') throw new Denied(405, 'not this way');
  if (!file) throw new Denied(404, 'there is no such address');
  const packed = /\bgzip\b/.test(String(request.headers['accept-encoding'] ?? ''));
  send(response, 200, packed ? file.packed : file.bytes, {
    'content-type': file.type,
    'content-security-policy': PAGE_POLICY,
    'cache-control': file.lasting ? 'public, max-age=31536000, immutable' : 'no-store',
    vary: 'accept-encoding',
    ...(packed ? { 'content-encoding': 'gzip' } : {}),
  });
}

function send(
  response: ServerResponse,
  status: number,
  bytes: Uint8Array,
  headers: Readonly<Record<string, string>>,
): void {
  response.writeHead(status, { ...headers, 'content-length': bytes.length });
  response.end(bytes);
}

/** Says no in words. What is our own fault is told as that, without its innards. */
function refuse(response: ServerResponse, e: unknown): void {
  if (response.headersSent || response.destroyed) {
    response.destroy();
    return;
  }
  const denied =
    e instanceof Denied ? e : new Denied(500, 'internal error of the page’s server; please report it');
  if (!(e instanceof Denied) && process.env.INLAYWRIGHT_DEBUG) console.error(e);
  const body = denied.body ?? ({ lines: [denied.message] } satisfies Wrong);
  // What was not read of a body too large is not waited for.
  response.setHeader('connection', 'close');
  send(response, denied.status, Buffer.from(JSON.stringify(body)), {
    'content-type': 'application/json',
    'cache-control': 'no-store',
  });
}
