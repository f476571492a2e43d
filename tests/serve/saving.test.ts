import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, test } from 'vitest';
import { MOST_FILE, MOST_TEXT, TOKEN_HEADER } from '../../src/wire.js';
import { ask, type Bench, bench, put } from './support.js';

let of: Bench;
beforeEach(async () => {
  of = await bench({ patience: { head: 600, whole: 1500 } });
});
afterEach(() => of.close());

const FILE = 'trivet-dots.json';
const onDisk = (): string => readFileSync(join(of.folder, FILE), 'utf8');
const opened = async (): Promise<{ text: string; version: string }> =>
  JSON.parse((await ask(of, { path: `/api/recipe?file=${FILE}` })).text);
const keep = (name: string, body: string | Buffer) =>
  ask(of, {
    method: 'PUT',
    path: `/api/beside?of=${FILE}&name=${encodeURIComponent(name)}`,
    headers: { 'content-type': 'application/octet-stream' },
    body,
  });

describe('saving', () => {
  it('replaces the version that was seen, byte for byte, and tells the new one', async () => {
    const { text, version } = await opened();
    const next = text.replace('"units"', '"\u00fcber 漢字 😀": 1, "units"');
    const saved = await put(of, '/api/recipe', { file: FILE, text: next, over: version });
    expect(saved.status).toBe(200);
    expect(onDisk()).toBe(next);
    expect((await opened()).version).toBe(JSON.parse(saved.text).version);
    expect(readdirSync(of.folder).filter((f) => f.includes('.new'))).toEqual([]);
  });

  it('does not overwrite what changed underneath: it says what lies there now', async () => {
    const { text, version } = await opened();
    writeFileSync(join(of.folder, FILE), '{"outline": 1, "pattern": 2}');
    const reply = await put(of, '/api/recipe', { file: FILE, text, over: version });
    expect(reply.status).toBe(409);
    expect(JSON.parse(reply.text)).toMatchObject({ file: FILE, text: '{"outline": 1, "pattern": 2}' });
    expect(onDisk()).toBe('{"outline": 1, "pattern": 2}');
  });

  it('does not write a new file over another, nor one that is gone', async () => {
    const { text, version } = await opened();
    const before = onDisk();
    expect((await put(of, '/api/recipe', { file: FILE, text: '{"other": 1}', over: null })).status).toBe(409);
    expect(onDisk()).toBe(before);
    rmSync(join(of.folder, FILE));
    expect((await put(of, '/api/recipe', { file: FILE, text, over: version })).status).toBe(410);
    expect(readdirSync(of.folder)).not.toContain(FILE);
    expect((await put(of, '/api/recipe', { file: FILE, text, over: null })).status).toBe(200);
  });

  it('of the same words twice is no quarrel', async () => {
    const { text, version } = await opened();
    const next = text.replace('"depth"', ' "depth"');
    writeFileSync(join(of.folder, FILE), next);
    expect((await put(of, '/api/recipe', { file: FILE, text: next, over: version })).status).toBe(200);
  });

  it('makes the folders it needs', async () => {
    expect((await put(of, '/api/recipe', { file: 'a/b/c.json', text: '{}', over: null })).status).toBe(200);
    expect(readFileSync(join(of.folder, 'a/b/c.json'), 'utf8')).toBe('{}');
  });
});

describe('what is kept beside a recipe', () => {
  it('keeps its name, and another of that name gets a number', async () => {
    expect(JSON.parse((await keep('leaf.svg', '<svg/>')).text)).toEqual({ path: 'drawings/leaf.svg' });
    expect(JSON.parse((await keep('leaf.svg', '<svg/>')).text)).toEqual({ path: 'drawings/leaf.svg' });
    expect(JSON.parse((await keep('leaf.svg', '<svg><!----></svg>')).text)).toEqual({
      path: 'drawings/leaf-2.svg',
    });
    expect(readFileSync(join(of.folder, 'drawings/leaf.svg'), 'utf8')).toBe('<svg/>');
    expect(JSON.parse((await keep('Bär & Söhne (2).TTF', 'x')).text).path).toMatch(/^fonts\/[\w-]+\.ttf$/);
  });
});

describe('limits', () => {
  test.each([
    ['at the limit', MOST_TEXT - 2, 200],
    ['one over it', MOST_TEXT - 1, 413],
  ])('a recipe’s text %s', async (_, letters, status) => {
    const text = JSON.stringify('x'.repeat(letters));
    expect((await put(of, '/api/recipe', { file: 'big.json', text, over: null })).status).toBe(status);
    expect(readdirSync(of.folder).includes('big.json')).toBe(status === 200);
  });

  it('a file over 20 MB is turned away by its declared length before it is read', async () => {
    const answer = await raw(
      `PUT /api/beside?of=${FILE}&name=a.svg HTTP/1.1\r\nhost: HOST\r\n${TOKEN_HEADER}: TOKEN\r\ncontent-length: ${MOST_FILE + 1}\r\n\r\n`,
    );
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
  });

  it('and by what comes, when it declares nothing', async () => {
    const chunk = `10000\r\n${'x'.repeat(0x10000)}\r\n`;
    const answer = await raw(
      `PUT /api/recipe HTTP/1.1\r\nhost: HOST\r\n${TOKEN_HEADER}: TOKEN\r\ncontent-type: application/json\r\ntransfer-encoding: chunked\r\n\r\n${chunk.repeat(40)}`,
    );
    expect(answer).toMatch(/^HTTP\/1\.1 413 /);
  });

  test.each<[string, unknown, number]>([
    ['no object', [1], 400],
    ['null', null, 400],
    ['a missing key', { file: FILE, text: '{}' }, 400],
    ['a number for a text', { file: 1, text: '{}', over: null }, 400],
    ['a text that is no JSON', { file: 'x.json', text: '{', over: null }, 422],
  ])('%s is told in words', async (_, json, status) => {
    const reply = await put(of, '/api/recipe', json);
    expect(reply.status).toBe(status);
    expect(JSON.parse(reply.text).lines[0]).toMatch(/\w/);
  });

  it('bytes that are no UTF-8 are no recipe', async () => {
    writeFileSync(join(of.folder, 'latin.json'), Buffer.from([0x22, 0xe9, 0x22]));
    expect((await ask(of, { path: '/api/recipe?file=latin.json' })).status).toBe(422);
  });

  it('a head that never ends is cut off, and the server goes on', async () => {
    const answer = await raw('GET / HTTP/1.1\r\nhost: HOST\r\nx-slow: ');
    expect(answer === '' || answer.startsWith('HTTP/1.1 408')).toBe(true);
    expect((await ask(of, { path: '/api/start' })).status).toBe(200);
  });

  it('a body that breaks off leaves nothing half written', async () => {
    const before = readdirSync(of.folder).sort();
    const text = onDisk();
    await raw(
      `PUT /api/beside?of=${FILE}&name=half.svg HTTP/1.1\r\nhost: HOST\r\n${TOKEN_HEADER}: TOKEN\r\ncontent-length: 1000\r\n\r\n<svg`,
      200,
    );
    expect(readdirSync(of.folder).sort()).toEqual(before);
    expect(readdirSync(join(of.folder, 'drawings'))).toEqual([]);
    expect(onDisk()).toBe(text);
    expect((await ask(of, { path: '/api/start' })).status).toBe(200);
  });
});

/** Sends bytes as they are, and hears what comes until the other end closes, or hangs up after `ms`. */
function raw(text: string, ms = 8000): Promise<string> {
  const { port, token } = of.running;
  return new Promise((done) => {
    let said = '';
    const socket = connect(port, '127.0.0.1', () => {
      socket.write(text.replace('HOST', `127.0.0.1:${port}`).replace('TOKEN', token));
    });
    socket.on('data', (d) => {
      said += d;
    });
    socket.on('error', () => {});
    socket.on('close', () => done(said));
    setTimeout(() => socket.destroy(), ms);
  });
}
