import { timingSafeEqual } from 'node:crypto';
import type { IncomingHttpHeaders } from 'node:http';
import { Denied } from './denied.js';

/** Names of this machine's loopback that a browser may have asked for. */
const NAMES = ['127.0.0.1', 'localhost'];

/**
 * Lets only requests in that this server's own page sent: asked of this machine by its own name (or a foreign name was
 * made to point here: DNS rebinding), and not on behalf of another site. Throws Denied.
 */
export function checkSource(headers: IncomingHttpHeaders, port: number): void {
  const host = headers.host ?? '';
  if (!NAMES.some((name) => host === `${name}:${port}`))
    throw new Denied(421, 'this server answers to its own address only');
  const { origin } = headers;
  if (origin !== undefined && origin !== `http://${host}`)
    throw new Denied(403, 'another site may not ask this server');
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none')
    throw new Denied(403, 'another site may not ask this server');
}

/** Whether a request knows the run's token. */
export function isToken(given: string | string[] | undefined, token: string): boolean {
  if (typeof given !== 'string') return false;
  const [a, b] = [Buffer.from(given), Buffer.from(token)];
  return a.length === b.length && timingSafeEqual(a, b);
}

/** What every answer carries. */
export const ALWAYS: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'x-frame-options': 'DENY',
};

/** The page runs its own scripts and the text engine's WASM, and speaks with this server alone. */
export const PAGE_POLICY = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self'",
  "style-src 'self'",
  "img-src 'self' blob: data:",
  "font-src 'self'",
  "connect-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** A made sheet or picture runs no script and loads nothing; its styles and pictures are within it. */
export const MADE_POLICY = [
  "default-src 'none'",
  "style-src 'unsafe-inline'",
  'img-src data:',
  'font-src data:',
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');
