import { tmpdir } from 'node:os';
import { expect, it } from 'vitest';
import { bytesMade, bytesOf, differences, golden, shipped } from '../scripts/bytes.mjs';
import { chromiumPath } from './support/browser.js';
import { bytesInChromium } from './support/bytes-in-chromium.js';

/** One each of a tiling, lettering with woods, a drawing of one's own, and a carrier. The long run does them all. */
const SOME = ['tea-box-rosette', 'heron-door-panel', 'house-number-plate', 'fruit-bowl-wave'];

it('knows the bytes of every recipe that ships', () => {
  expect(Object.keys(golden()).filter((name) => !name.startsWith('bowl '))).toEqual(
    shipped().map((r) => r.name),
  );
});

it('some recipes have the bytes that the repository says, elsewhere too', () => {
  const env = { TZ: 'Asia/Kathmandu', LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8' };
  const found = bytesMade({ only: SOME, env, cwd: tmpdir() });
  expect(differences(bytesOf(golden(), SOME), found)).toEqual([]);
});

it.skipIf(chromiumPath === null)('and in Chromium', async () => {
  const some = shipped().filter((r) => SOME.includes(r.name));
  expect(differences(bytesOf(golden(), SOME, false), await bytesInChromium(some))).toEqual([]);
});

it('finds bytes that changed, files that are new and files that are gone', () => {
  const a = { lid: { 'job.json': '1', 'plug.svg': '2' }, 'bowl cup': { 'vessel.html': '3' } };
  const b = { lid: { 'job.json': '9', 'extra.svg': '2' }, 'bowl cup': { 'vessel.html': '3' } };
  expect(differences(a, b)).toEqual([
    'lid/extra.svg: new',
    'lid/job.json: other bytes',
    'lid/plug.svg: missing',
  ]);
});
