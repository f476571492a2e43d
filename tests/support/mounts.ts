import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** A small disk of its own, in memory. Its block is a page of it: 4096 bytes. */
export class SmallDisk {
  readonly folder = mkdtempSync(join(tmpdir(), 'small-disk-'));

  constructor(kilobytes: number) {
    const wrong = mount('-t', 'tmpfs', '-o', `size=${kilobytes}k,mode=777`, 'none', this.folder);
    if (wrong === null) return;
    rmSync(this.folder, { recursive: true });
    throw new Error(wrong);
  }

  readOnly(yes: boolean): void {
    const wrong = mount('-o', `remount,${yes ? 'ro' : 'rw'}`, this.folder);
    if (wrong !== null) throw new Error(wrong);
  }

  /** Fills it until that many blocks are free. */
  leave(blocks: number): void {
    const filler = join(this.folder, 'filler');
    const free = (): number => {
      const { stdout } = spawnSync('stat', ['-f', '-c', '%a', this.folder], { encoding: 'utf8' });
      return Number(stdout);
    };
    writeFileSync(filler, '');
    writeFileSync(filler, Buffer.alloc(Math.max(0, free() - blocks) * 4096));
    if (free() !== blocks) throw new Error(`${free()} blocks are free, not ${blocks}`);
  }

  makeRoom(): void {
    rmSync(join(this.folder, 'filler'));
  }

  close(): void {
    spawnSync('umount', [this.folder]);
    rmSync(this.folder, { recursive: true });
  }
}

function mount(...args: string[]): string | null {
  const { status, stderr, error } = spawnSync('mount', args, { encoding: 'utf8' });
  return status === 0 ? null : (error?.message ?? stderr);
}

/** Why no disk can be mounted here, as for most users; null when it can. */
export const noMount: string | null = (() => {
  try {
    new SmallDisk(64).close();
    return null;
  } catch (e) {
    return (e as Error).message.trim();
  }
})();
