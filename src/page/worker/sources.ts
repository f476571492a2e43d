import wasm from 'harfbuzzjs/dist/harfbuzz.wasm?url';
import { makeShaper, type Shaper } from '../../generators/lettering/shaper.js';
import { TOKEN_HEADER, type Wrong } from '../../wire.js';
import type { Sources } from './assets.js';
import type { Origin } from './protocol.js';

/** From the page's own server; nothing else is ever asked. */
export function serverSources(): Sources {
  let shaper: Promise<Shaper> | undefined;
  return {
    file: (origin, path) =>
      fetched(
        '/api/asset',
        {
          ...(origin.file === null ? { shipped: origin.shipped ?? '' } : { of: origin.file }),
          path,
        },
        origin,
      ),
    font: (origin, name, part) => fetched('/api/font', { name, part: String(part) }, origin),
    shaper: () => (shaper ??= started()),
  };
}

async function started(): Promise<Shaper> {
  const reply = await fetch(wasm);
  return makeShaper(new Uint8Array(await reply.arrayBuffer()));
}

async function fetched(path: string, query: Record<string, string>, { token }: Origin): Promise<ArrayBuffer> {
  const reply = await fetch(`${path}?${new URLSearchParams(query)}`, { headers: { [TOKEN_HEADER]: token } });
  if (reply.ok) return reply.arrayBuffer();
  const said = (await reply.json().catch(() => null)) as Wrong | null;
  throw new Error(said?.lines?.join(' ') ?? `the server answered ${reply.status}`);
}
