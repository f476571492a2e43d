import { spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
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

describe('serve', () => {
  it('prints one address with its key, serves it, and ends well when told to', async () => {
    const child = spawn(process.execPath, [CLI, 'serve', 'trivet-dots.json', '--no-open'], { cwd: dir });
    let [out, err] = ['', ''];
    child.stdout.on('data', (d) => {
      out += d;
    });
    child.stderr.on('data', (d) => {
      err += d;
    });
    while (!out.includes('\n')) await new Promise((go) => setTimeout(go, 20));
    const [, port, token] = /^http:\/\/127\.0\.0\.1:(\d+)\/#([\w-]{43})\n$/.exec(out)!;
    const page = await fetch(`http://127.0.0.1:${port}/`);
    expect(await page.text()).toContain('<title>Inlaywright');
    const start = await fetch(`http://127.0.0.1:${port}/api/start`, { headers: { 'x-card-token': token! } });
    expect(await start.json()).toMatchObject({ open: 'trivet-dots.json' });
    expect(err).toContain('this machine only');
    const gone = new Promise<number | null>((done) => child.once('exit', done));
    child.kill('SIGINT');
    expect(await gone).toBe(0);
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
