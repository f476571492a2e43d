import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { refuseOthers, writeBeside } from '../../src/disk/beside.js';
import { BadInput } from '../../src/schema/fault.js';

let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'beside-test-'));
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

const files = (folder: string) => [
  { path: join(folder, 'a.json'), what: 'the recipe', content: 'new' },
  { path: join(folder, 'a.svg'), what: 'the copy', content: Uint8Array.of(0, 255) },
];

it('takes back what it wrote: files, folders that were not there, and what was there before', () => {
  const folder = join(dir, 'deep', 'er');
  const lines: string[] = [];
  const takeBack = writeBeside(folder, files(folder), (line) => lines.push(line));
  expect(readFileSync(join(folder, 'a.json'), 'utf8')).toBe('new');
  expect([...readFileSync(join(folder, 'a.svg'))]).toEqual([0, 255]);
  expect(lines.map((l) => l.split(' ')[0])).toEqual(['writing', 'writing']);
  takeBack();
  expect(existsSync(join(dir, 'deep'))).toBe(false);

  writeFileSync(join(dir, 'a.json'), 'old');
  writeBeside(dir, files(dir), () => undefined)();
  expect(readdirSync(dir)).toEqual(['a.json']);
  expect(readFileSync(join(dir, 'a.json'), 'utf8')).toBe('old');
});

it('writes all or nothing', () => {
  writeFileSync(join(dir, 'a.json'), 'old');
  mkdirSync(join(dir, 'a.svg'));
  expect(() => writeBeside(dir, files(dir), () => undefined)).toThrow(BadInput);
  expect(readFileSync(join(dir, 'a.json'), 'utf8')).toBe('old');
});

it('refuses to replace another file of the name, and only another', () => {
  expect(() => refuseOthers(files(dir), false)).not.toThrow();
  writeFileSync(join(dir, 'a.svg'), Uint8Array.of(0, 255));
  expect(() => refuseOthers(files(dir), false)).not.toThrow();
  writeFileSync(join(dir, 'a.svg'), Uint8Array.of(0, 254));
  expect(() => refuseOthers(files(dir), false)).toThrow(/a\.svg is there and differs/);
  expect(() => refuseOthers(files(dir), true)).not.toThrow();
});
