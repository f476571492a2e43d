import { describe, expect, it } from 'vitest';
import { MAX_BYTES, parseJson } from '../../src/recipe/json.js';
import { BadInput } from '../../src/schema/fault.js';

function refusal(text: string): string {
  try {
    parseJson(text, 'x.json');
  } catch (e) {
    expect(e).toBeInstanceOf(BadInput);
    return (e as Error).message;
  }
  throw new Error('was not refused');
}

describe('JSON text', () => {
  it.each([
    ['', 'x.json: is empty'],
    [' \n ', 'x.json: is empty'],
    ['{', 'x.json:1:2: not JSON: the text ends too early: the { on line 1 is never closed'],
    ['{\n "a": [1,\n 2', 'x.json:3:3: not JSON: the text ends too early: the [ on line 2 is never closed'],
    ['{"a":1,}', 'x.json:1:8: not JSON: } is not expected here; remove the comma before it'],
    ['{"a" 1}', 'x.json:1:6: not JSON: 1 is not expected here'],
    [
      '{\n  "a": 1\n  "b": 2\n}',
      'x.json:3:3: not JSON: "b" is not expected here; a comma is missing before it',
    ],
    ['{\n  // hi\n}', 'x.json:2:3: not JSON: / is not expected here; JSON has no comments'],
    ["{'a': 1}", "x.json:1:2: not JSON: ' is not expected here; texts stand in double quotes"],
    ['{"a": NaN}', 'x.json:1:7: not JSON: NaN is not expected here; give a number'],
    ['{"a": 01}', 'x.json:1:7: not JSON: 01 is not expected here'],
    ['{"a": "x\ny"}', 'x.json:1:9: a text runs over the end of its line'],
    ['{} {}', 'x.json:1:4: not JSON'],
    ['\0\0{}', 'x.json: is not a JSON text: it holds binary data'],
  ])('%j: %s', (text, message) => {
    expect(refusal(text)).toContain(message);
    // A fault that V8's own parser does not see would be ours.
    expect(() => JSON.parse(text)).toThrow();
  });

  it('refuses a key given twice, also deep down, with both lines', () => {
    expect(refusal('{\n"a": {\n"b": 1,\n"b": 2}}')).toBe(
      'x.json:4: a.b: is given twice (first at x.json:3): keep one of them',
    );
  });

  it('refuses deep nesting without running out of stack, and takes what is just shallow enough', () => {
    expect(refusal('['.repeat(100_000))).toMatch(/^x\.json:1:33: is nested more than 32 deep/);
    expect(refusal('{"a":'.repeat(100_000))).toMatch(/nested more than 32 deep/);
    expect(() => parseJson(`${'['.repeat(32)}${']'.repeat(32)}`, 'x.json')).not.toThrow();
    expect(() => parseJson(JSON.stringify({ a: '['.repeat(100) }), 'x.json')).not.toThrow();
  });

  it('refuses a text over 1 MB', () => {
    expect(refusal(' '.repeat(MAX_BYTES + 1))).toMatch(/is over 1 MB/);
  });

  it('reads past a byte order mark, and takes keys that JavaScript objects treat specially as plain keys', () => {
    const tree = parseJson('\uFEFF{"__proto__": 1, "constructor": 2}', 'x.json');
    expect(tree.kind === 'object' && [...tree.members.keys()]).toEqual(['__proto__', 'constructor']);
  });
});
