import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { ROUTES } from '../../src/serve/routes.js';
import { TOKEN_HEADER } from '../../src/wire.js';
import { ask, type Bench, bench, CANARY, put, send, snapshot } from './support.js';

let of: Bench;
beforeAll(async () => {
  of = await bench();
});
afterAll(() => of.close());

const routes = Object.keys(ROUTES).map((r) => r.split(' ') as [string, string]);
const BODY = JSON.stringify({ file: 'trivet-dots.json', text: '{}', over: null, shipped: null });

/** Every route, whatever it does, with what would otherwise let it do it. */
const tried = (headers: Record<string, string>, more = '') =>
  Promise.all(
    routes.map(([method, path]) =>
      send(of, {
        method,
        path: `${path}?file=trivet-dots.json&of=trivet-dots.json&name=x.svg&path=x.svg${more}`,
        headers: { 'content-type': 'application/json', ...headers },
        ...(method === 'GET' ? {} : { body: BODY }),
      }),
    ),
  );

describe('whoever lacks the run’s key', () => {
  test.each([
    ['none', {}],
    ['an empty one', { [TOKEN_HEADER]: '' }],
    ['a wrong one', { [TOKEN_HEADER]: 'x'.repeat(43) }],
    ['one of another length', { [TOKEN_HEADER]: 'x'.repeat(4000) }],
    ['one in a cookie or in the address', { cookie: 'token' }],
  ])('with %s is told nothing by any route, and changes nothing', async (_, headers) => {
    const before = snapshot(of.above);
    for (const reply of await tried(headers, `&${TOKEN_HEADER}=${of.running.token}`)) {
      expect(reply.status).toBe(401);
      expect(reply.text).not.toContain('outline');
    }
    expect(snapshot(of.above)).toBe(before);
  });

  it('gets no file of a made piece either', async () => {
    for (const token of ['', 'x', 'x'.repeat(43)])
      expect((await send(of, { path: `/made/${token}/trivet-dots/sheet.html` })).status).toBe(401);
  });
});

describe('a name that was made to point here (DNS rebinding)', () => {
  test.each([
    'evil.example',
    'evil.example:PORT',
    '127.0.0.1',
    '127.0.0.1:1',
    'localhost.evil.example:PORT',
    '127.0.0.1:PORT.evil.example',
    '[::1]:PORT',
    '0.0.0.0:PORT',
    '',
  ])('"%s" is turned away, key or no key, by every route and by the page', async (host) => {
    const headers = {
      host: host.replace('PORT', String(of.running.port)),
      [TOKEN_HEADER]: of.running.token,
    };
    const before = snapshot(of.above);
    for (const reply of await tried(headers)) expect(reply.status).toBe(421);
    const page = await send(of, { path: '/', headers });
    expect(page.status).toBe(421);
    expect(page.text).not.toContain('<html');
    expect(snapshot(of.above)).toBe(before);
  });

  it('but the loopback by its own two names is let in', async () => {
    for (const name of ['127.0.0.1', 'localhost']) {
      const host = `${name}:${of.running.port}`;
      const reply = await ask(of, { path: '/api/start', headers: { host, origin: `http://${host}` } });
      expect(reply.status).toBe(200);
    }
  });
});

describe('another site', () => {
  test.each<[string, Record<string, string>]>([
    ['by its origin', { origin: 'http://evil.example' }],
    ['by this origin in https', { origin: 'https://127.0.0.1:PORT' }],
    ['by another port of this machine', { origin: 'http://127.0.0.1:1' }],
    ['by the loopback’s other name', { origin: 'http://localhost:PORT' }],
    ['by an origin that is hidden', { origin: 'null' }],
    ['by the browser’s word: cross-site', { 'sec-fetch-site': 'cross-site' }],
    ['by the browser’s word: same-site', { 'sec-fetch-site': 'same-site' }],
  ])('is turned away %s, even with the key', async (_, given) => {
    const headers = Object.fromEntries(
      Object.entries(given).map(([k, v]) => [k, v.replace('PORT', String(of.running.port))]),
    );
    const before = snapshot(of.above);
    for (const reply of await tried({ ...headers, [TOKEN_HEADER]: of.running.token }))
      expect(reply.status).toBe(403);
    expect(snapshot(of.above)).toBe(before);
  });

  it('cannot post a form: it has no key, and JSON is wanted', async () => {
    const reply = await ask(of, {
      method: 'POST',
      path: '/api/make',
      headers: { 'content-type': 'text/plain' },
      body: BODY,
    });
    expect(reply.status).toBe(415);
  });
});

describe('the server', () => {
  it('is bound to the loopback alone', async () => {
    const own = Object.values(networkInterfaces())
      .flat()
      .find((i) => i && !i.internal && i.family === 'IPv4');
    if (!own) return expect(of.running.url).toContain('//127.0.0.1:');
    const refused = await new Promise<string>((done) => {
      const socket = connect({ host: own.address, port: of.running.port, timeout: 2000 });
      socket.on('connect', () => done('connected'));
      socket.on('error', (e: NodeJS.ErrnoException) => done(e.code ?? 'error'));
      socket.on('timeout', () => done('timeout'));
    });
    expect(refused).not.toBe('connected');
  });

  it('has another key every run, long and of the kind an address can hold', async () => {
    const other = await bench();
    try {
      expect(other.running.token).not.toBe(of.running.token);
      // 32 random bytes in base64url (RFC 4648).
      expect(other.running.token).toMatch(/^[\w-]{43}$/);
    } finally {
      await other.close();
    }
  });

  it('knows no other way to a route, and no other address', async () => {
    for (const [method, path] of routes) {
      const wrong = method === 'GET' ? 'DELETE' : 'GET';
      const known = routes.some(([m, p]) => m === wrong && p === path);
      if (!known) expect((await ask(of, { method: wrong, path })).status).toBe(405);
    }
    expect((await ask(of, { path: '/api/none' })).status).toBe(404);
    expect((await send(of, { path: '/nothing' })).status).toBe(404);
    expect((await send(of, { method: 'POST', path: '/' })).status).toBe(405);
  });

  test.each(['/', '/api/start', '/api/none', '/nothing', '/made/x/y/z'])(
    'guards its answer to %s: no sniffing, no framing, no referrer',
    async (path) => {
      const { headers } = await ask(of, { path });
      expect(headers).toMatchObject({
        'x-content-type-options': 'nosniff',
        'x-frame-options': 'DENY',
        'referrer-policy': 'no-referrer',
        'cross-origin-resource-policy': 'same-origin',
        'cross-origin-opener-policy': 'same-origin',
      });
      expect(headers['access-control-allow-origin']).toBeUndefined();
    },
  );

  it('lets the page run its own scripts and nothing else', async () => {
    const { headers } = await send(of, { path: '/' });
    const policy = String(headers['content-security-policy']);
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/'unsafe-inline'|'unsafe-eval'|https?:|\*/);
    for (const part of ["base-uri 'none'", "form-action 'none'", "frame-ancestors 'none'"])
      expect(policy).toContain(part);
  });

  it('tells nothing of the machine when it fails', async () => {
    const reply = await put(of, '/api/recipe', { file: 'a.json', text: 'no json', over: null });
    expect(reply.status).toBe(422);
    for (const path of ['/api/recipe?file=none.json', '/api/zip?name=none', '/api/font?name=none&part=0']) {
      const { text } = await ask(of, { path });
      expect(text).not.toContain(of.above);
      expect(text).not.toContain(CANARY);
      expect(text).not.toMatch(/at .*\.(js|ts):\d/);
    }
  });
});
