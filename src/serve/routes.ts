import type { IncomingMessage, ServerResponse } from 'node:http';
import {
  type Change,
  type Make,
  type Making,
  MOST_FILE,
  MOST_TEXT,
  type Round,
  type Save,
  type Start,
} from '../wire.js';
import { keepBeside, readAsset, readFont } from './assets.js';
import { bytesOf, jsonOf } from './body.js';
import { Denied } from './denied.js';
import type { Maker } from './making.js';
import { zipOf } from './pieces.js';
import { listRecipes, openRecipe, openShipped, saveRecipe, shippedNames } from './recipes.js';
import { vesselOf } from './vessel.js';
import type { Watch } from './watch.js';

/** What the routes work on. */
export interface Bench {
  readonly root: string;
  readonly out: string;
  readonly patterns: string;
  readonly open: string | null;
  readonly folder: string;
  readonly version: string;
  readonly maker: Maker;
  readonly watch: Watch;
}

export interface Call {
  readonly bench: Bench;
  readonly query: URLSearchParams;
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
}

/** An answer: data as JSON, bytes as they are, or null when the route has written its own. */
export type Answer = object | Buffer | Uint8Array | null;

/** Escaped text of JSON has at most six letters for one. */
const MOST_JSON = 2 * MOST_TEXT;

/** Every route that wants the token, by method and path. */
export const ROUTES: Readonly<Record<string, (call: Call) => Answer | Promise<Answer>>> = {
  'GET /api/start': ({ bench: { version, folder, open, patterns } }): Start => ({
    version,
    folder,
    open,
    shipped: shippedNames(patterns),
  }),
  'GET /api/recipes': ({ bench: { root, out } }) => listRecipes(root, out),
  'GET /api/recipe': ({ bench, query }) => {
    if (query.has('shipped')) return openShipped(bench.patterns, asked(query, 'shipped'));
    const opened = openRecipe(bench.root, asked(query, 'file'));
    bench.watch.knows(opened.file!, opened.version);
    return opened;
  },
  'PUT /api/recipe': async ({ bench, request }) => {
    const save = await jsonOf<Save>(request, MOST_JSON, ['file', 'text', 'over'], ['over']);
    if (Buffer.byteLength(save.text) > MOST_TEXT) throw new Denied(413, 'a recipe is 1 MB at most');
    const saved = saveRecipe(bench.root, save);
    bench.watch.knows(save.file, saved.version);
    return saved;
  },
  'PUT /api/beside': async ({ bench, query, request }) =>
    keepBeside(bench.root, asked(query, 'of'), asked(query, 'name'), await bytesOf(request, MOST_FILE)),
  'GET /api/asset': ({ bench, query }) =>
    query.has('shipped')
      ? readAsset(bench.patterns, `${asked(query, 'shipped')}.json`, asked(query, 'path'))
      : readAsset(bench.root, asked(query, 'of'), asked(query, 'path')),
  'GET /api/font': ({ query }) => readFont(asked(query, 'name'), Number(asked(query, 'part'))),
  'POST /api/vessel': async ({ bench, request, response }) => {
    const { file, shipped, text } = await jsonOf<Round>(
      request,
      MOST_JSON,
      ['file', 'shipped', 'text'],
      ['file', 'shipped'],
    );
    const from =
      file === null
        ? { root: bench.patterns, file: `${shipped ?? 'card'}.json` }
        : { root: bench.root, file };
    return vesselOf({ ...from, text }, (end) => response.on('close', end));
  },
  'GET /api/zip': ({ bench, query }) => zipOf(bench.out, asked(query, 'name')),
  'GET /api/changes': ({ bench, response }) => {
    const stop = bench.watch.listen(stream<Change>(response));
    const beat = setInterval(() => response.write('\n'), 15_000).unref();
    response.on('close', () => {
      stop();
      clearInterval(beat);
    });
    return null;
  },
  'POST /api/make': async ({ bench, request, response }) => {
    const make = await jsonOf<Make>(request, MOST_JSON, ['file', 'text']);
    const early: Making[] = [];
    let say = (making: Making): void => void early.push(making);
    const stop = bench.maker.make(make, (making) => say(making));
    // Only now is it sure that it will be made: the answer begins.
    const tell = stream<Making>(response);
    say = (making) => {
      tell(making);
      if (!('step' in making)) response.end();
    };
    early.forEach(say);
    response.on('close', stop);
    return null;
  },
};

function asked(query: URLSearchParams, key: string): string {
  const all = query.getAll(key);
  if (all.length !== 1 || all[0] === '') throw new Denied(400, `this wants ${key}, once`);
  return all[0]!;
}

/** Begins an answer of lines of JSON; the returned function writes one. */
function stream<T>(response: ServerResponse): (line: T) => void {
  response.writeHead(200, { 'content-type': 'application/x-ndjson', 'cache-control': 'no-store' });
  response.flushHeaders();
  return (line) => void response.write(`${JSON.stringify(line)}\n`);
}
