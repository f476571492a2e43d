import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { make } from '../../src/commands/make.js';
import { checkFolder } from '../../src/disk/folder.js';
import { jobText } from '../../src/output/index.js';
import { prove } from '../../src/proof/index.js';
import { findWood } from '../../src/shop/woods.js';
import { blocks, filesOf, jobOf, proofsOf } from './job.js';

const THREE = { 'left face': 'padauk', 'top face': 'red alder' };
const EACH = ['plug.dxf', 'plug.svg', 'pocket.dxf', 'pocket.svg'];
const FURTHER = [2, 3].flatMap((k) => EACH.map((f) => f.replace('.', `-${k}.`)));

describe('make, three woods', () => {
  const out = mkdtempSync(join(tmpdir(), 'woods-'));
  const recipe = join(out, 'blocks.json');
  const lines: string[] = [];
  const run = async (woods: object | undefined): Promise<number> => {
    writeFileSync(recipe, JSON.stringify(blocks(woods as Record<string, unknown>)));
    return make([recipe], { out, set: [] });
  };

  beforeAll(async () => {
    vi.spyOn(process.stdout, 'write').mockImplementation((t) => lines.push(String(t)) > 0);
    vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    expect(await run(THREE)).toBe(0);
  });
  afterAll(() => {
    vi.restoreAllMocks();
    rmSync(out, { recursive: true });
  });
  const read = (name: string): string => readFileSync(join(out, 'blocks', name), 'utf8');

  it('writes a pocket and a plug for each, the first under the usual names', () => {
    const names = readdirSync(join(out, 'blocks'));
    expect(names).toEqual(expect.arrayContaining([...EACH, ...FURTHER]));
    expect(names.filter((n) => n.includes('-4'))).toEqual([]);
  });

  it('every pair as written is proven, and not by another one of them', () => {
    const asked = { radius: 1.5, clearance: 0.08, carrier: false };
    const files = (pocket: string, plug: string) => ({
      pocketSvg: read(`pocket${pocket}.svg`),
      plugSvg: read(`plug${plug}.svg`),
      pocketDxf: read(`pocket${pocket}.dxf`),
      plugDxf: read(`plug${plug}.dxf`),
    });
    for (const k of ['', '-2', '-3']) expect(prove(files(k, k), asked).failures).toEqual([]);
    expect(prove(files('-2', '-3'), asked).holds).toBe(false);
  });

  it('job.json lists the inlays with their files and proofs; the first one’s proof stands at the top', () => {
    const job = JSON.parse(read('job.json'));
    expect(job.inlays.map((i: { wood: string }) => i.wood)).toEqual(['black walnut', 'padauk', 'red alder']);
    expect(job.inlays[0].proof).toEqual(job.proof);
    expect(job.inlays[0].parts).toEqual(job.parts);
    // Three drawings, three proofs: none is another's.
    expect(new Set(job.inlays.map((i: { proof: object }) => JSON.stringify(i.proof))).size).toBe(3);
    job.inlays.forEach((i: { files: string[]; proof: { pocket: { holds: boolean } } }) => {
      for (const f of i.files) expect(existsSync(join(out, 'blocks', f))).toBe(true);
      expect(i.proof.pocket.holds).toBe(true);
    });
    expect(job.recipe.woods.plugs).toEqual([
      { pieces: 'left face', wood: 'padauk' },
      { pieces: 'top face', wood: 'red alder' },
    ]);
  });

  it('says how many woods it made', () => expect(lines.join('')).toMatch(/plugs of 3 woods; proven/));

  it('a later run with one wood takes the numbered files away', async () => {
    expect(await run(undefined)).toBe(0);
    expect(readdirSync(join(out, 'blocks')).filter((n) => /-\d/.test(n))).toEqual([]);
  });

  it('a file that only looks like ours is not lost', () => {
    for (const name of ['pocket-1.svg', 'pocket-02.svg', 'plug-2.png']) {
      writeFileSync(join(out, 'blocks', name), '');
      expect(() => checkFolder(out, 'blocks')).toThrow(`holds ${name}`);
      rmSync(join(out, 'blocks', name));
    }
  });
});

describe('what is written', () => {
  it('one wood by another way of saying it: the same files, byte for byte', () => {
    const plain = jobOf(blocks(undefined));
    const named = jobOf(blocks({ top: 'walnut', left: 'black walnut' }));
    expect(named.inlays).toHaveLength(1);
    const files = filesOf(plain);
    expect([...files.keys()].filter((n) => /-\d/.test(n))).toEqual([]);
    expect([...filesOf(named)]).toEqual([...files]);
    const [proof] = proofsOf(plain, files);
    expect(jobText(plain, proof!)).not.toContain('"inlays"');
  });

  it('the only wood is the one the keys give', () => {
    const job = jobOf(blocks({ top: 'teak', left: 'teak', right: 'teak' }));
    const files = filesOf(job);
    expect(job.inlays.map((i) => i.wood)).toEqual(['teak']);
    expect(String(files.get('picture.svg'))).toContain(findWood('teak')!.colour);
    expect(String(files.get('sheet.html'))).toContain('teak in sugar maple');
  });

  it('the picture shows later woods over earlier ones', () => {
    const picture = String(filesOf(jobOf(blocks(THREE))).get('picture.svg'));
    const places = ['sugar maple', 'black walnut', 'padauk', 'red alder'].map((w) =>
      picture.indexOf(`fill="${findWood(w)!.colour}"`),
    );
    expect(places.every((p) => p > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('the sheet gives the order, the files and what is cut into what', () => {
    const sheet = String(filesOf(jobOf(blocks(THREE))).get('sheet.html'));
    expect(sheet).toContain('black walnut, padauk and red alder in sugar maple');
    expect(sheet).toContain(
      '1. black walnut: cut, glue, plane; 2. padauk: cut, glue, plane; 3. red alder: cut',
    );
    expect(sheet).toMatch(
      /<b>padauk<\/b> \(pocket-2\.svg and plug-2\.svg.*cut into black walnut: not before/,
    );
    expect(sheet).toMatch(/<b>red alder<\/b> .*cut into black walnut and padauk/);
    expect(sheet).toContain('<b>pocket-3.svg, plug-3.svg</b> (and .dxf): red alder');
    const apart = String(filesOf(jobOf(blocks(THREE, { wall: 4 }))).get('sheet.html'));
    expect(apart).toMatch(
      /<b>padauk<\/b> .*touches no wood before it: its pocket can be cut in the same setting/,
    );
  });
});
