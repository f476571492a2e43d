import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { allowed, faults, packages, page, written } from '../../scripts/dependencies.mjs';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

describe('the packages that are installed with this one', () => {
  it('may be passed on, need no script of their own, and name no registry', () => {
    expect(packages().length).toBeGreaterThan(40);
    expect(faults(packages())).toEqual([]);
  });

  it('are listed in the docs with their licences', () => expect(written()).toBe(page(packages())));

  it('are found out when they do not fit', () => {
    const lock = {
      packages: {
        '': { license: 'none' },
        'node_modules/a': { version: '1.0.0', license: 'GPL-3.0-only' },
        'node_modules/b': { version: '1.0.0', license: 'LGPL-3.0-or-later' },
        'node_modules/c': {
          version: '1.0.0',
          license: 'LGPL-3.0-or-later',
          dev: true,
          hasInstallScript: true,
        },
        'node_modules/b/node_modules/d': { version: '1.0.0', license: 'MIT', hasInstallScript: true },
        'node_modules/e': { version: '1.0.0' },
        'node_modules/f': { version: '1.0.0', license: 'MIT', resolved: 'https://registry.example/f.tgz' },
      },
    };
    expect(faults(packages(lock))).toEqual([
      'a 1.0.0: licence GPL-3.0-only is not one that we may pass on',
      'b 1.0.0: licence LGPL-3.0-or-later is not one that we may pass on',
      'd 1.0.0: wants to run a script when it is installed',
      'e 1.0.0: licence unknown is not one that we may pass on',
      'f 1.0.0: the lockfile names where it was fetched: https://registry.example/f.tgz',
    ]);
  });

  it.each([
    ['MIT', true],
    ['MIT AND OFL-1.1', true],
    ['MIT AND GPL-2.0', false],
    ['(GPL-2.0 OR MIT)', true],
    ['', false],
  ])('under %j: %s', (expression, fine) => expect(allowed(expression, ['MIT', 'OFL-1.1'])).toBe(fine));

  it('have no known faults, where the registry can be asked', ({ skip }) => {
    const { stdout } = spawnSync('npm', ['audit', '--omit=dev', '--json'], { cwd: ROOT, encoding: 'utf8' });
    const answer = asJson(stdout);
    if (!answer?.metadata) return skip("the registry's list of known faults cannot be reached");
    expect(answer.metadata.vulnerabilities.total, stdout).toBe(0);
  });
});

function asJson(text: string): { metadata?: { vulnerabilities: { total: number } } } | null {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
