import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { ask, type Bench, bench, CANARY, put, snapshot } from './support.js';

let of: Bench;
beforeAll(async () => {
  of = await bench();
  symlinkSync(join(of.above, 'outside.json'), join(of.folder, 'link.json'));
  symlinkSync(join(of.above, 'outside'), join(of.folder, 'linked'));
  symlinkSync(join(of.above, 'not-there.json'), join(of.folder, 'dangling.json'));
  symlinkSync(join(of.above, 'outside', 'leaf.svg'), join(of.folder, 'drawings', 'link.svg'));
  mkdirSync(join(of.folder, 'folder.json'));
  writeFileSync(join(of.folder, 'plain'), 'a file');
});
afterAll(() => of.close());

const PATHS = [
  '../outside.json',
  'drawings/../../outside.json',
  '..%2foutside.json',
  '%2e%2e/outside.json',
  '..\\outside.json',
  '/etc/passwd.json',
  'file:///etc/passwd.json',
  'C:/x.json',
  '\\\\host\\share\\x.json',
  '.hidden.json',
  'a/.git/x.json',
  'x.json\u0000.svg',
  'x\n.json',
  'x.json.',
  'x.json ',
  './trivet-dots.json',
  'a//b.json',
  'link.json',
  'linked/x.json',
  'linked/leaf.json',
  'dangling.json',
  'folder.json',
  'plain/x.json',
  `${'a/'.repeat(300)}x.json`,
  '~/x.json',
];

/** What lies outside, as it was. */
const beyond = (): string =>
  snapshot(of.above)
    .split('\n')
    .filter((l) => !l.includes('/served'))
    .join('\n');

describe.each(PATHS)('the path %j', (path) => {
  it('reads nothing from outside the folder', async () => {
    const q = encodeURIComponent(path);
    for (const at of [
      `/api/recipe?file=${q}`,
      `/api/recipe?shipped=${q}`,
      `/api/asset?of=trivet-dots.json&path=${q}`,
      `/api/asset?of=trivet-dots.json&path=${q}.svg`,
      `/api/asset?of=${q}&path=leaf.svg`,
      `/api/asset?shipped=${q}&path=leaf.svg`,
      `/api/zip?name=${q}`,
      `/api/font?name=${q}&part=0`,
      `/made/${of.running.token}/${path.replaceAll(/[^\x21-\x7e]/g, '')}/sheet.html`,
      `/made/${of.running.token}/trivet-dots/${path.replaceAll(/[^\x21-\x7e]/g, '')}`,
    ]) {
      const reply = await ask(of, { path: at });
      expect(reply.status, at).toBeGreaterThanOrEqual(400);
      expect(reply.status, at).toBeLessThan(500);
      expect(reply.text).not.toContain(CANARY);
      expect(reply.text).not.toContain('root:');
    }
  });

  it('writes nothing outside the folder', async () => {
    const before = beyond();
    const replies = [
      await put(of, '/api/recipe', { file: path, text: '{}', over: null }),
      await ask(of, {
        method: 'PUT',
        path: `/api/beside?of=${encodeURIComponent(path)}&name=leaf.svg`,
        headers: { 'content-type': 'application/octet-stream' },
        body: '<svg/>',
      }),
      await ask(of, {
        method: 'PUT',
        path: `/api/beside?of=trivet-dots.json&name=${encodeURIComponent(`../../${path}.svg`)}`,
        headers: { 'content-type': 'application/octet-stream' },
        body: '<svg/>',
      }),
    ];
    expect(beyond()).toBe(before);
    // Taken as written, %2e and ~ are letters of a name in the folder like any others.
    if (!/%2|^~/.test(path)) expect(replies[0]!.status).toBeGreaterThanOrEqual(400);
    expect(existsSync(join(of.above, 'not-there.json'))).toBe(false);
  });
});

describe('what a recipe names', () => {
  const text = (file: string): string =>
    JSON.stringify({
      name: 'stolen',
      outline: { shape: 'circle', diameter: 96 },
      pattern: { generator: 'drawing', file },
      cutter: { diameter: 3 },
      depth: 5,
    });

  test.each([
    '../outside/leaf.svg',
    'drawings/link.svg',
    'linked/leaf.svg',
    '/etc/passwd.svg',
    '../../x.svg',
  ])('is not read from outside while it is made: %s', async (file) => {
    const reply = await put(of, '/api/make', { file: 'trivet-dots.json', text: text(file) }, 'POST');
    expect(reply.text).toContain('"wrong"');
    expect(reply.text).not.toContain(CANARY);
    expect(existsSync(join(of.out, 'stolen'))).toBe(false);
  });

  it('may not name the piece out of the folder of made pieces', async () => {
    const before = beyond();
    for (const name of ['../stolen', '..', 'a/b', '/tmp/x', 'con.', '']) {
      const body = text('drawings/leaf.svg').replace('"stolen"', JSON.stringify(name));
      const reply = await put(of, '/api/make', { file: 'trivet-dots.json', text: body }, 'POST');
      expect(reply.text).toContain('"wrong"');
    }
    expect(beyond()).toBe(before);
  });
});

describe('what is no plain file', () => {
  it('is turned away at once: a pipe, a folder', async () => {
    const made = spawnSync('mkfifo', [join(of.folder, 'pipe.json')]);
    if (made.status === 0) expect((await ask(of, { path: '/api/recipe?file=pipe.json' })).status).toBe(403);
    expect((await ask(of, { path: '/api/recipe?file=folder.json' })).status).toBe(403);
    // Nor does the list of recipes wait for it, or follow a link.
    const { text } = await ask(of, { path: '/api/recipes' });
    expect(JSON.parse(text)).toEqual([{ file: 'trivet-dots.json' }]);
  });

  it('and what is no recipe is not written: scripts, pages, settings', async () => {
    for (const file of ['a.html', 'a.js', 'a.svg', '.npmrc', 'a', 'a.json.js'])
      expect((await put(of, '/api/recipe', { file, text: '{}', over: null })).status).toBe(403);
    for (const name of ['a.html', 'a.js', 'a.json', 'a', 'a.svg.exe'])
      expect(
        (
          await ask(of, {
            method: 'PUT',
            path: `/api/beside?of=trivet-dots.json&name=${name}`,
            headers: { 'content-type': 'application/octet-stream' },
            body: 'x',
          })
        ).status,
      ).toBe(403);
  });
});
