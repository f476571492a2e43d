import { describe, expect, it, test } from 'vitest';
import {
  counted,
  measuredText,
  SEVERITIES,
  shortly,
  stamped,
  summed,
  TITLES,
} from '../../../src/page/drawing/words.js';
import { type Drawn, type Pencilled, type Trouble, VIEWS } from '../../../src/page/worker/protocol.js';
import { readRecipe } from '../../../src/recipe/read.js';
import { exampleText } from '../../recipe/example.js';

const wood = (name: string) => ({ name, colour: '#000000', grain: '#000000' });
const recipe = readRecipe(exampleText(), 'x.json');

function finding(severity: Pencilled['severity']): Pencilled {
  return { number: 1, code: 'thin-walls', severity, do: 'Mind it.', at: null, areas: '', lines: '' };
}

function drawing(changes: Partial<Drawn> = {}, woods: string[] = ['black walnut']): Drawn {
  return {
    kind: 'drawn',
    stage: 'exact',
    recipe,
    figure: {
      box: { minX: -65, minY: -40.02, maxX: 65, maxY: 40.02 },
      face: '',
      field: wood('white ash'),
      grain: { field: 0, plug: 0 },
      inlays: woods.map((w) => ({ wood: wood(w), pocket: '', plug: '' })),
    },
    findings: [],
    numbers: {},
    parts: { pocket: 12, plug: 1 },
    took: 1,
    ...changes,
  };
}

const coarse = (stage: Drawn['stage']) => drawing({ stage, parts: { pocket: 0, plug: 0 } });
const trouble: Trouble = { kind: 'trouble', recipe: null, faults: [] };

describe('the piece in a sentence', () => {
  it.each([
    [drawing(), 'mm', 'white ash, 130 mm by 80 mm, with black walnut let in: 12 pockets, 1 plug part.'],
    [drawing(), 'in', 'white ash, 5.12 in by 3.151 in, with black walnut let in: 12 pockets, 1 plug part.'],
    [
      drawing({}, ['holly', 'ebony', 'padauk', 'holly']),
      'mm',
      'white ash, 130 mm by 80 mm, with holly, ebony and padauk let in: 12 pockets, 1 plug part.',
    ],
    [
      drawing({}, ['holly', 'ebony']),
      'mm',
      'white ash, 130 mm by 80 mm, with holly and ebony let in: 12 pockets, 1 plug part.',
    ],
    [drawing({}, []), 'mm', 'white ash, 130 mm by 80 mm: 12 pockets, 1 plug part.'],
    [coarse('artwork'), 'mm', 'white ash, 130 mm by 80 mm, with black walnut let in.'],
  ] as const)('says its size, woods and parts', (drawn, units, text) => {
    expect(shortly(drawn, units)).toBe(text);
  });

  it('counts no parts where they were not counted', () => {
    expect(shortly(coarse('rounded'), 'mm')).toBe('white ash, 130 mm by 80 mm, with black walnut let in.');
  });

  it.each([
    [[], 'No findings.'],
    [['note'], '1 finding: 1 note.'],
    [['warn', 'note', 'warn'], '3 findings: 2 take care, 1 note.'],
    [['note', 'stop', 'warn'], '3 findings: 1 stop, 1 take care, 1 note.'],
  ] as const)('says what was found: %j', (severities, text) => {
    const got = summed(drawing({ findings: severities.map(finding) }), 'mm');
    expect(got).toBe(`test-piece: ${shortly(drawing(), 'mm')} ${text}`);
  });

  it('says that nothing was looked for yet', () => {
    for (const stage of ['artwork', 'rounded'] as const)
      expect(summed(coarse(stage), 'mm')).toMatch(/\. Not inspected yet\.$/);
  });
});

test.each([
  [null, null, false, ''],
  [null, null, true, 'drawing …'],
  [null, trouble, false, 'no drawing'],
  [null, trouble, true, 'drawing …'],
  [coarse('artwork'), null, true, 'coarse: as drawn, corners not rounded yet'],
  [coarse('rounded'), null, true, 'coarse: corners rounded, findings wait'],
  [coarse('rounded'), null, false, 'coarse: corners rounded, findings wait'],
  [drawing(), null, true, 'drawing …'],
  [drawing(), null, false, 'exact'],
  [drawing(), trouble, false, 'as it was before the fault'],
  [coarse('artwork'), trouble, false, 'as it was before the fault'],
] as const)('the stamp of case %#', (drawn, wrong, busy, text) => {
  expect(stamped(drawn, wrong, busy)).toBe(text);
});

test.each([
  [3.2, 'limb of drop 3', 'mm', '3.2 mm wide: limb of drop 3'],
  [25.4, 'wall of field', 'in', '1 in wide: wall of field'],
  [12.34, '', 'mm', '12.3 mm wide'],
] as const)('a width of %f is told', (width, of, units, text) => {
  expect(measuredText({ from: [0, 0], to: [1, 0], width, of }, units)).toBe(text);
});

test.each([
  [0, 'no parts'],
  [1, '1 part'],
  [2, '2 parts'],
])('%i are counted', (n, text) => {
  expect(counted(n, 'part')).toBe(text);
});

test('every view and every severity has a name of its own', () => {
  expect(Object.keys(TITLES).sort()).toEqual([...VIEWS].sort());
  expect(new Set(Object.values(TITLES)).size).toBe(VIEWS.length);
  expect(new Set(Object.values(SEVERITIES)).size).toBe(3);
});
