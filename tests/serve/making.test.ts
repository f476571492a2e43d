import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { TOKEN_HEADER } from '../../src/wire.js';
import { ran } from '../support/warm.js';
import { ask, type Bench, bench, put, snapshot } from './support.js';

const FILE = 'trivet-dots.json';
let of: Bench;
beforeEach(async () => {
  of = await bench();
});
afterEach(() => of.close());

const text = (): string => readFileSync(join(of.folder, FILE), 'utf8');
const make = (body: string) => put(of, '/api/make', { file: FILE, text: body }, 'POST');
const said = (reply: { text: string }): Record<string, unknown>[] =>
  reply.text
    .trim()
    .split('\n')
    .map((l) => JSON.parse(l));

/** Begins a request and hands its lines out one by one. */
function begun(method: string, path: string, body?: unknown) {
  const lines: Record<string, unknown>[] = [];
  let waiting: (() => void) | null = null;
  const sent = request(
    {
      host: '127.0.0.1',
      port: of.running.port,
      method,
      path,
      headers: {
        host: `127.0.0.1:${of.running.port}`,
        [TOKEN_HEADER]: of.running.token,
        'content-type': 'application/json',
      },
    },
    (reply) => {
      let rest = '';
      reply.on('error', () => {});
      reply.on('data', (d) => {
        rest += d;
        const all = rest.split('\n');
        rest = all.pop()!;
        for (const l of all) if (l !== '') lines.push(JSON.parse(l));
        waiting?.();
      });
    },
  );
  sent.on('error', () => {});
  sent.end(body === undefined ? undefined : JSON.stringify(body));
  return {
    async next(n: number): Promise<Record<string, unknown>> {
      while (lines.length < n)
        await new Promise<void>((done) => {
          waiting = done;
        });
      return lines[n - 1]!;
    },
    stop: () => sent.destroy(),
  };
}

describe('making', () => {
  it('writes what the command line writes, byte for byte, step by step', async () => {
    const lines = said(await make(text()));
    expect(lines.slice(0, -1).map((l) => l.step)).toEqual([
      'reading',
      'building',
      'drawing',
      'proving',
      'writing',
    ]);
    const { made } = lines.at(-1) as {
      made: { name: string; files: string[]; proof: Record<string, number> };
    };
    expect(made.proof.pocket).toBeGreaterThanOrEqual(made.proof.required!);
    const other = join(of.above, 'by-command');
    expect(ran(['make', join(of.folder, FILE), '--out', other], of.folder).status).toBe(0);
    expect(made.files).toEqual(readdirSync(join(other, made.name)).sort());
    for (const f of made.files) {
      const mine = readFileSync(join(of.out, made.name, f));
      expect(mine.equals(readFileSync(join(other, made.name, f))), f).toBe(true);
      const shown = await ask(of, { path: `/made/${of.running.token}/${made.name}/${f}` });
      expect(shown.bytes.equals(mine), f).toBe(true);
      expect(String(shown.headers['content-security-policy'])).toContain("default-src 'none'");
      expect(String(shown.headers['content-security-policy'])).not.toContain('script-src');
    }
  });

  it('makes the text that was sent, whatever lies on disk', async () => {
    await make(text().replace(/"depth": [\d.]+/, '"depth": 6.25'));
    const job = JSON.parse(readFileSync(join(of.out, 'trivet-dots', 'job.json'), 'utf8'));
    expect(job.recipe.depth).toBe(6.25);
  });

  it('says what is wrong in lines, and leaves the piece made before whole', async () => {
    await make(text());
    const before = snapshot(of.out);
    const lines = said(await make(text().replace(/"depth": [\d.]+/, '"depth": 9999')));
    expect((lines.at(-1) as { wrong: { lines: string[] } }).wrong.lines.join()).toMatch(
      /depth.*out of range/,
    );
    expect(snapshot(of.out)).toBe(before);
  });

  it('stopped on the way leaves the piece made before whole, and nothing else', async () => {
    await make(text());
    const before = snapshot(of.out);
    const other = text().replace(/"depth": [\d.]+/, '"depth": 6.25');
    for (const steps of [1, 2, 3]) {
      const on = begun('POST', '/api/make', { file: FILE, text: other });
      await on.next(steps);
      on.stop();
      await new Promise((go) => setTimeout(go, 400));
      expect(snapshot(of.out)).toBe(before);
    }
    // It can be made again at once.
    expect(said(await make(text())).at(-1)).toHaveProperty('made');
  });

  it('does not make one piece twice at once', async () => {
    const first = begun('POST', '/api/make', { file: FILE, text: text() });
    await first.next(1);
    expect((await make(text())).status).toBe(409);
    first.stop();
  });

  it('does not touch a folder that is not ours', async () => {
    await make(text());
    writeFileSync(join(of.out, 'trivet-dots', 'my notes.txt'), 'precious');
    const lines = said(await make(text()));
    expect(lines.at(-1)).toHaveProperty('wrong');
    expect(readFileSync(join(of.out, 'trivet-dots', 'my notes.txt'), 'utf8')).toBe('precious');
  });

  it('packs one zip that another reader opens, the same bytes every time', async () => {
    await make(text());
    const [a, b] = [
      await ask(of, { path: '/api/zip?name=trivet-dots' }),
      await ask(of, { path: '/api/zip?name=trivet-dots' }),
    ];
    expect(a.bytes.equals(b.bytes)).toBe(true);
    const at = join(of.above, 'piece.zip');
    writeFileSync(at, a.bytes);
    const program =
      'import sys,zipfile,hashlib\nz=zipfile.ZipFile(sys.argv[1])\nassert z.testzip() is None\nfor n in sorted(z.namelist()): print(n, hashlib.sha256(z.read(n)).hexdigest())';
    const read = spawnSync('python3', ['-c', program, at], { encoding: 'utf8' });
    // Without Python the sizes in the central directory have to do.
    if (read.status !== 0) return expect(a.bytes.subarray(0, 2).toString()).toBe('PK');
    const files = readdirSync(join(of.out, 'trivet-dots')).sort();
    expect(
      read.stdout
        .trim()
        .split('\n')
        .map((l) => l.split(' ')[0]),
    ).toEqual(files.map((f) => `trivet-dots/${f}`));
  });
});

describe('a vessel to be turned', () => {
  const bowl = JSON.stringify({
    name: 'bowl',
    bowl: { sides: 8, height: 60, slope: 80, outside: { shape: 'straight', bottom: 100, top: 120 } },
    outline: { margin: 8 },
    pattern: { generator: 'wave', height: 15, strap: 4 },
    cutter: { diameter: 3, flute: 20 },
    depth: 14,
    skin: 1,
  });

  it('is a model, whole and cut', async () => {
    const reply = await put(of, '/api/vessel', { file: null, shipped: null, text: bowl }, 'POST');
    expect(reply.status).toBe(200);
    // Binary glTF 2.0: the magic "glTF", then the version.
    expect(reply.bytes.subarray(0, 4).toString()).toBe('glTF');
    const json = JSON.parse(reply.bytes.subarray(20, 20 + reply.bytes.readUInt32LE(12)).toString());
    expect(json.nodes.map((n: { name: string }) => n.name)).toEqual([
      'whole field',
      'whole inlay 1',
      'cut field',
      'cut inlay 1',
    ]);
  });

  it('is refused in words where there is none', async () => {
    const reply = await put(of, '/api/vessel', { file: FILE, shipped: null, text: text() }, 'POST');
    expect(reply.status).toBe(422);
    expect(JSON.parse(reply.text).lines[0]).toContain('bowl');
  });

  it('is made whole by making, with models and jigs, as the command line does', async () => {
    writeFileSync(join(of.folder, 'bowl.json'), bowl);
    const lines = said(await put(of, '/api/make', { file: 'bowl.json', text: bowl }, 'POST'));
    expect(lines.map((l) => l.step)).toContain('modelling');
    const other = join(of.above, 'by-command');
    const args = ['bowl', join(of.folder, 'bowl.json'), '--no-coupon', '--out', other];
    expect(ran(args, of.folder).status).toBe(0);
    const files = readdirSync(join(other, 'bowl')).sort();
    expect(files).toContain('vessel.glb');
    expect(readdirSync(join(of.out, 'bowl')).sort()).toEqual(files);
    for (const f of files)
      expect(readFileSync(join(of.out, 'bowl', f)).equals(readFileSync(join(other, 'bowl', f))), f).toBe(
        true,
      );
  });
});

describe('changes', () => {
  it('are told of files that were opened: edited, replaced and gone; own saves are not', async () => {
    const { version, text: was } = JSON.parse((await ask(of, { path: `/api/recipe?file=${FILE}` })).text);
    const on = begun('GET', '/api/changes');
    await new Promise((go) => setTimeout(go, 300));
    await put(of, '/api/recipe', { file: FILE, text: was.replace('"depth"', ' "depth"'), over: version });
    await new Promise((go) => setTimeout(go, 900));
    writeFileSync(join(of.folder, 'new'), '{"outline": 1, "pattern": 1}');
    renameSync(join(of.folder, 'new'), join(of.folder, FILE));
    const first = await on.next(1);
    expect(first.file).toBe(FILE);
    expect(first.version).toBe(
      JSON.parse((await ask(of, { path: `/api/recipe?file=${FILE}` })).text).version,
    );
    renameSync(join(of.folder, FILE), join(of.folder, 'away.json'));
    expect(await on.next(2)).toEqual({ file: FILE, version: null });
    on.stop();
    expect(existsSync(join(of.folder, 'away.json'))).toBe(true);
  });
});
