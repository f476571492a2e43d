import { describe, expect, it } from 'vitest';
import { expectMadeOrRefused, REFUSED, SLOW } from './corpus-check.js';
import { corpusFiles } from './support.js';

const files = corpusFiles('svg');

describe('SVG files made by other software', () => {
  it('are forty or more, and every refusal expected is of one of them', () => {
    expect(files.length).toBeGreaterThanOrEqual(40);
    expect(Object.keys(REFUSED).filter((f) => !files.includes(f))).toEqual([]);
    expect(Object.keys(REFUSED).length).toBeLessThan(files.length / 4);
  });

  it.each(files.filter((f) => f !== SLOW))(
    '%s is made safe and proven, or refused for the reason that is known',
    expectMadeOrRefused,
  );
});
