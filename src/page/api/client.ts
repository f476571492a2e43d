import { TOKEN_HEADER, type Wrong } from '../../wire.js';
import { token } from '../state/card.js';

/** What a request carries beside its path. */
export interface Sent {
  readonly query?: Readonly<Record<string, string>>;
  readonly json?: unknown;
  readonly bytes?: BodyInit;
  readonly signal?: AbortSignal;
}

/** The server said no: in words, with its status and what came with it. */
export class ApiWrong extends Error {
  constructor(
    readonly status: number,
    readonly lines: readonly string[],
    readonly body: unknown,
  ) {
    super(lines.join(' '));
  }
}

/** Asks the server for JSON. Throws ApiWrong when it says no, TypeError when it does not answer. */
export async function api<T>(method: string, path: string, sent: Sent = {}): Promise<T> {
  return (await fetched(method, path, sent)).json() as Promise<T>;
}

/** Asks the server for a file. Throws as `api` does. */
export async function bytesOf(path: string, sent: Sent = {}, method = 'GET'): Promise<ArrayBuffer> {
  return (await fetched(method, path, sent)).arrayBuffer();
}

/** The lines of JSON that the server sends one after the other, as they come; empty ones are left out. */
export async function* lines(
  path: string,
  { method, ...sent }: Sent & { method: string },
): AsyncIterable<unknown> {
  const reply = await fetched(method, path, sent);
  const decoder = new TextDecoder();
  let rest = '';
  const reader = reply.body!.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    rest += decoder.decode(value, { stream: !done });
    const all = rest.split('\n');
    rest = done ? '' : all.pop()!;
    for (const line of all) if (line.trim() !== '') yield JSON.parse(line);
    if (done) return;
  }
}

async function fetched(
  method: string,
  path: string,
  { query, json, bytes, signal }: Sent,
): Promise<Response> {
  const reply = await fetch(query ? `${path}?${new URLSearchParams(query)}` : path, {
    method,
    headers: {
      [TOKEN_HEADER]: token.value,
      ...(json === undefined ? {} : { 'content-type': 'application/json' }),
      ...(bytes === undefined ? {} : { 'content-type': 'application/octet-stream' }),
    },
    ...(json === undefined ? {} : { body: JSON.stringify(json) }),
    ...(bytes === undefined ? {} : { body: bytes }),
    ...(signal ? { signal } : {}),
  });
  if (reply.ok) return reply;
  const body: unknown = await reply.json().catch(() => null);
  throw new ApiWrong(reply.status, wordsIn(body) ?? [`The server answered ${reply.status}.`], body);
}

function wordsIn(body: unknown): readonly string[] | null {
  return body !== null && typeof body === 'object' && 'lines' in body ? (body as Wrong).lines : null;
}
