import type { IncomingMessage } from 'node:http';
import { Denied } from './denied.js';

/** A request's body, at most `most` bytes: reading stops at the first byte too many. */
export async function bytesOf(request: IncomingMessage, most: number): Promise<Buffer> {
  const tooMuch = (): Denied => new Denied(413, `that is more than the ${most / 1e6} MB that are taken`);
  if (Number(request.headers['content-length'] ?? 0) > most) throw tooMuch();
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of request as AsyncIterable<Buffer>) {
    length += part.length;
    if (length > most) throw tooMuch();
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/** A request's body as JSON with the given keys, all of them texts; those in `orNull` may be null. */
export async function jsonOf<T>(
  request: IncomingMessage,
  most: number,
  keys: readonly (keyof T & string)[],
  orNull: readonly string[] = [],
): Promise<T> {
  if (!/^application\/json\b/i.test(request.headers['content-type'] ?? ''))
    throw new Denied(415, 'this wants JSON');
  const bytes = await bytesOf(request, most);
  let tree: unknown;
  try {
    tree = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    throw new Denied(400, 'that is no JSON');
  }
  const given = tree as Record<string, unknown>;
  const sound =
    tree !== null &&
    typeof tree === 'object' &&
    keys.every((k) => typeof given[k] === 'string' || (given[k] === null && orNull.includes(k)));
  if (!sound) throw new Denied(400, `this wants ${keys.join(', ')}`);
  return given as T;
}
