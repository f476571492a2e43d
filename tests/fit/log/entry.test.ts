import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Entry, isDate, lineText, RESULTS, TRIED } from '../../../src/fit/log/entry.js';
import { depthClass, unlike } from '../../../src/fit/log/match.js';
import { readLine } from '../../../src/fit/log/read-line.js';

const entry: Entry = {
  version: 1,
  kind: 'result',
  clearance: 0.12,
  step: 3,
  result: 'good',
  tried: 'glued',
  cutter: { diameter: 3.175, cuts: 3.19 },
  woods: { field: 'white ash', plug: 'black walnut' },
  depth: 8,
  moisture: 8.5,
  date: '2026-03-09',
  note: 'rapped home with a mallet',
};

/** The entry's line with values replaced; undefined takes a key out. */
const changed = (changes: object): string => JSON.stringify({ ...entry, ...changes });

describe('a line of the log', () => {
  it('comes back as it was written, whatever its texts hold, and is one line', () => {
    fc.assert(
      fc.property(
        fc.record({
          clearance: fc.integer({ min: 0, max: 20000 }).map((n) => n / 10000),
          step: fc.option(fc.integer({ min: 1, max: 12 })),
          result: fc.constantFrom(...RESULTS),
          tried: fc.constantFrom(...TRIED),
          note: fc.option(fc.string({ unit: 'binary' })),
          moisture: fc.option(fc.integer({ min: 0, max: 100 })),
          cuts: fc.option(fc.constant(3.2)),
        }),
        ({ cuts, ...rest }) => {
          const line: Entry = { ...entry, ...rest, cutter: { diameter: 3, cuts } };
          const text = lineText(line);
          expect(text).not.toMatch(/[\n\r]/);
          expect(readLine(text)).toEqual({ kind: 'good', line });
        },
      ),
    );
  });

  it('may name the steps of a coupon', () => {
    const line = { version: 1, kind: 'coupon', ladder: [0.04, 0.08] } as const;
    expect(readLine(lineText(line))).toEqual({ kind: 'good', line });
    expect(readLine('{"version":1,"kind":"coupon","ladder":[]}')).toMatchObject({ kind: 'damaged' });
  });

  it('may leave out what is not known, and hold more than is known here', () => {
    const text = changed({
      moisture: undefined,
      date: undefined,
      note: undefined,
      step: undefined,
      weather: 'dry',
    });
    expect(readLine(text)).toEqual({
      kind: 'good',
      line: { ...entry, moisture: null, date: null, note: null, step: null },
    });
  });

  it.each([
    ['{"version":1,"kind":"result","clear', /not a JSON object/],
    ['[1]', /not a JSON object/],
    ['null', /not a JSON object/],
    [changed({ version: undefined }), /version is missing/],
    [changed({ version: '1' }), /version is missing/],
    [changed({ kind: 'wish' }), /kind must be/],
    [changed({ clearance: -0.1 }), /clearance must be 0 to 2 mm/],
    [changed({ clearance: '0.1' }), /clearance/],
    [changed({ step: 0 }), /step/],
    [changed({ result: 'fine' }), /result must be cracked, tight/],
    [changed({ tried: 'wet' }), /tried must be dry or glued/],
    [changed({ cutter: undefined }), /cutter\.diameter/],
    [changed({ woods: { field: '', plug: 'oak' } }), /woods\.field/],
    [changed({ depth: 0 }), /depth/],
    [changed({ moisture: 101 }), /moisture/],
    [changed({ date: '2026-02-29' }), /date/],
    [changed({ note: 5 }), /note/],
  ])('%s is damaged', (text, reason) => {
    const reading = readLine(text);
    expect(reading.kind).toBe('damaged');
    expect((reading as { reason: string }).reason).toMatch(reason);
  });

  it('of another version is told apart from a damaged one, whatever else it holds', () => {
    expect(readLine('{"version":2,"fit":"snug"}')).toEqual({ kind: 'other-version', version: 2 });
    expect(readLine('  ')).toEqual({ kind: 'blank' });
  });
});

it('knows the days of the calendar', () => {
  // Gregorian rule: every fourth year, but of the hundreds only every fourth.
  for (const day of ['2024-02-29', '2000-02-29', '2026-12-31', '2026-04-30'])
    expect(isDate(day), day).toBe(true);
  for (const day of [
    '2026-02-29',
    '1900-02-29',
    '2026-04-31',
    '2026-13-01',
    '2026-00-10',
    '2026-1-1',
    '09.03.2026',
  ])
    expect(isDate(day), day).toBe(false);
});

describe('like setups', () => {
  it('share woods, cutter and depth class', () => {
    const other = (changes: object): string | null => unlike(entry, { ...entry, ...changes });
    expect(other({ depth: 11.9 })).toBeNull();
    expect(other({ depth: 12.1 })).toBe('another depth');
    expect(other({ woods: { field: ' White Ash', plug: 'black walnut' } })).toBeNull();
    expect(other({ woods: { field: 'black walnut', plug: 'white ash' } })).toBe('other woods');
    expect(other({ cutter: { diameter: 3.175, cuts: 3.194 } })).toBeNull();
    expect(other({ cutter: { diameter: 3.175, cuts: 3.2 } })).toBe('another cutter');
    expect(other({ cutter: { diameter: 3.175, cuts: null } })).toBe('another cutter');
    expect(other({ cutter: { diameter: 3, cuts: 3.19 } })).toBe('another cutter');
  });

  it('have depth classes up to 6, 12, 20 and over 20 mm', () => {
    expect([1, 6, 6.1, 12, 20, 20.01].map(depthClass)).toEqual([
      'up to 6 mm',
      'up to 6 mm',
      '6 to 12 mm',
      '6 to 12 mm',
      '12 to 20 mm',
      'over 20 mm',
    ]);
  });
});
