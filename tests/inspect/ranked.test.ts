import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/inspect/finding.js';
import { ranked } from '../../src/inspect/ranked.js';

const finding = (code: string, severity: Finding['severity'], text = ''): Finding => ({
  code,
  severity,
  where: null,
  numbers: {},
  do: text,
});

describe('findings worst first', () => {
  it('go by severity, then by what they may do, then as found; numbered from 1', () => {
    const list = ranked([
      finding('turned-part', 'note'),
      finding('weak-contrast', 'warn'),
      finding('thin-walls', 'warn', 'a'),
      finding('thin-walls', 'warn', 'b'),
      finding('collet-meets-clamps', 'warn'),
      finding('collet-meets-face', 'note'),
      finding('cannot', 'stop'),
    ]);
    expect(list.map(({ number, finding: f }) => `${number} ${f.code}${f.do}`)).toEqual([
      '1 cannot',
      '2 collet-meets-clamps',
      '3 thin-wallsa',
      '4 thin-wallsb',
      '5 weak-contrast',
      '6 collet-meets-face',
      '7 turned-part',
    ]);
  });
});
