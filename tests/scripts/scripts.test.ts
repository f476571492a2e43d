import { describe, expect, it } from 'vitest';
import { ensure } from '../../scripts/debian.mjs';
import { checkNode } from '../../scripts/setup.mjs';
import { tally, told } from '../../scripts/tally.mjs';

const report = (...files: { status: string; tests: string[] }[]): string =>
  JSON.stringify({
    testResults: files.map((f) => ({
      status: f.status,
      assertionResults: f.tests.map((status) => ({ status })),
    })),
  });

describe('tally', () => {
  it('adds up reports', () => {
    const a = report(
      { status: 'passed', tests: ['passed', 'passed', 'skipped'] },
      { status: 'failed', tests: ['failed', 'passed'] },
    );
    const b = report({ status: 'passed', tests: ['passed', 'todo'] });
    const total = tally([
      { code: 1, report: a },
      { code: 0, report: b },
    ]);
    expect(told(total)).toBe('4 passed, 1 failed, 2 skipped');
  });

  it('counts a file that did not load, a run without a report, and a run that failed with none to blame', () => {
    expect(told(tally([{ code: 1, report: report({ status: 'failed', tests: [] }) }]))).toBe(
      '0 passed, 1 failed',
    );
    expect(told(tally([{ code: 1, report: null }]))).toBe('0 passed, 1 failed');
    expect(told(tally([{ code: 0, report: null }]))).toBe('0 passed, 1 failed');
    const fine = report({ status: 'passed', tests: ['passed'] });
    expect(told(tally([{ code: 1, report: fine }]))).toBe('1 passed, 1 failed');
    expect(told(tally([{ code: 0, report: fine }]))).toBe('1 passed, 0 failed');
  });
});

describe('set-up', () => {
  it('refuses a Node that is too old in one clear line', () => {
    expect(() => checkNode('18.19.0')).toThrow('Node 18.19.0 is too old: install Node 20 or newer');
    expect(() => checkNode('20.0.0')).not.toThrow();
    expect(() => checkNode('101.2.3')).not.toThrow();
  });
});

describe('packages of the system', () => {
  const needed = [{ name: 'tool-package', program: 'tool', purpose: 'the drawing tests' }];
  const machine = (root: boolean, works: boolean) => {
    const programs = new Set(['apt-get']);
    const asked: string[][] = [];
    const install = (names: string[]): boolean => {
      asked.push(names);
      if (works) programs.add('tool');
      return works;
    };
    return { asked, has: (p: string) => programs.has(p), isRoot: () => root, install };
  };

  it('installs what is missing as root, once', () => {
    const m = machine(true, true);
    expect(ensure(needed, m)).toEqual([]);
    expect(ensure(needed, m)).toEqual([]);
    expect(m.asked).toEqual([['tool-package']]);
  });

  it('says what will be skipped when it cannot', () => {
    const line = 'tool is missing, so the drawing tests will be skipped: apt-get install tool-package';
    expect(ensure(needed, machine(true, false))).toEqual([line]);
    const m = machine(false, true);
    expect(ensure(needed, m)).toEqual([line]);
    expect(m.asked).toEqual([]);
  });

  it('asks for nothing when nothing is needed', () => {
    const m = machine(true, true);
    expect(ensure([], m)).toEqual([]);
    expect(m.asked).toEqual([]);
  });
});
