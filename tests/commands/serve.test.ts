import { spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const CLI = join(root, 'dist', 'cli.js');

let dir: string;
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'serve-test-'));
  cpSync(join(root, 'patterns', 'trivet-dots.json'), join(dir, 'trivet-dots.json'));
  writeFileSync(join(dir, 'notes.txt'), 'no recipe');
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const VESSEL = JSON.stringify({
  name: 'bowl',
  bowl: { sides: 8, height: 60, slope: 80, outside: { shape: 'straight', bottom: 100, top: 120 } },
  outline: { margin: 8 },
  pattern: { generator: 'wave', height: 15, strap: 4 },
  cutter: { diameter: 3, flute: 20 },
  depth: 14,
  skin: 1,
});

interface Served {
  readonly said: () => string;
  readonly port: string;
  readonly token: string;
  end(): Promise<number | null>;
}

/** The command started on a path of the folder, once it has printed its address. */
async function served(path: string): Promise<Served> {
  const child = spawn(process.execPath, [CLI, 'serve', path, '--no-open'], { cwd: dir });
  let [out, err] = ['', ''];
  child.stdout.on('data', (d) => {
    out += d;
  });
  child.stderr.on('data', (d) => {
    err += d;
  });
  while (!out.includes('\n')) await new Promise((go) => setTimeout(go, 20));
  const [, port, token] = /^http:\/\/127\.0\.0\.1:(\d+)\/#([\w-]{43})\n$/.exec(out)!;
  const gone = new Promise<number | null>((done) => child.once('exit', done));
  return {
    said: () => err,
    port: port!,
    token: token!,
    end() {
      child.kill('SIGINT');
      return gone;
    },
  };
}

describe('serve', () => {
  it('prints one address with its key, serves it, and ends well when told to', async () => {
    const { port, token, said, end } = await served('trivet-dots.json');
    const page = await fetch(`http://127.0.0.1:${port}/`);
    expect(await page.text()).toContain('<title>Inlaywright');
    const start = await fetch(`http://127.0.0.1:${port}/api/start`, { headers: { 'x-card-token': token } });
    expect(await start.json()).toMatchObject({ open: 'trivet-dots.json' });
    expect(said()).toContain('this machine only');
    expect(await end()).toBe(0);
  });

  it('makes a piece and turns a vessel in threads of the command as it is put together', async () => {
    const { port, token, end } = await served('trivet-dots.json');
    const post = (path: string, body: object) =>
      fetch(`http://127.0.0.1:${port}/api/${path}`, {
        method: 'POST',
        headers: { 'x-card-token': token, 'content-type': 'application/json' },
        body: JSON.stringify(body),
      });
    const text = readFileSync(join(dir, 'trivet-dots.json'), 'utf8');
    const making = (await (await post('make', { file: 'trivet-dots.json', text })).text()).trim().split('\n');
    expect(JSON.parse(making.at(-1)!).made.files).toContain('pocket.dxf');
    const vessel = await post('vessel', { file: null, shipped: null, text: VESSEL });
    // Binary glTF 2.0 begins with the magic "glTF".
    expect(
      Buffer.from(await vessel.arrayBuffer())
        .subarray(0, 4)
        .toString(),
    ).toBe('glTF');
    expect(await end()).toBe(0);
  });

  test.each([
    [['none.json'], /none\.json/],
    [['notes.txt'], /notes\.txt/],
    [['.', '--port', 'x'], /port/],
    [['.', '--port', '70000'], /port/],
    [['.', '--port', '-1'], /port/],
    [['.', 'more', '--no-open'], /argument/],
  ])('refuses %j in one line', (args, says) => {
    const run = spawnSync(process.execPath, [CLI, 'serve', ...args], {
      cwd: dir,
      encoding: 'utf8',
      timeout: 20_000,
    });
    expect(run.status).toBe(2);
    expect(run.stderr).toMatch(says);
    expect(run.stderr).not.toMatch(/\n\s+at /);
  });

  it('says so when the port is taken', async () => {
    const other = createServer();
    await new Promise<void>((done) => {
      other.listen(0, '127.0.0.1', done);
    });
    const { port } = other.address() as AddressInfo;
    const run = spawnSync(process.execPath, [CLI, 'serve', '.', '--no-open', '--port', String(port)], {
      cwd: dir,
      encoding: 'utf8',
      timeout: 20_000,
    });
    other.close();
    expect(run.status).toBe(2);
    expect(run.stderr).toContain(`${port} is taken`);
  });
});
