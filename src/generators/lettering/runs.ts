import makeBidi from 'bidi-js';

/** A stretch of a line of one direction, one script and one font file; UTF-16 units. */
export interface TextRun {
  readonly from: number;
  readonly to: number;
  readonly rtl: boolean;
  readonly script: string;
  readonly file: number;
}

/** Scripts by their ISO 15924 names, those that fonts are made for; the rest are shaped by what HarfBuzz guesses. */
const SCRIPTS = (
  'Latn Grek Cyrl Armn Hebr Arab Syrc Thaa Nkoo Deva Beng Guru Gujr Orya Taml Telu Knda Mlym Sinh Thai Laoo Tibt ' +
  'Mymr Geor Hang Ethi Cher Cans Ogam Runr Khmr Mong Hira Kana Bopo Hani Yiii Goth Copt Glag Tfng Bali Java Adlm'
).split(' ');

/** Nothing before this code point runs from right to left or steers direction. */
const FIRST_RTL = 0x590;

/**
 * A line's runs in visual order, left to right: levels and order by the Unicode bidirectional algorithm (UAX #9), the
 * line's own direction that of its first strong letter.
 *
 * @param fileOf the font file for the character at a place
 */
export function visualRuns(text: string, fileOf: (at: number) => number): TextRun[] {
  const levels = levelsOf(text);
  const scripts = scriptsOf(text);
  const runs: (TextRun & { level: number })[] = [];
  for (let at = 0; at < text.length; ) {
    const level = levels[at]!;
    const script = scripts[at]!;
    const file = fileOf(at);
    let to = at + 1;
    while (to < text.length && levels[to] === level && scripts[to] === script && fileOf(to) === file) to++;
    runs.push({ from: at, to, rtl: level % 2 === 1, script, file, level });
    at = to;
  }
  return reordered(runs);
}

let bidi: ReturnType<typeof makeBidi.default> | undefined;

function levelsOf(text: string): ArrayLike<number> {
  if (!Array.from(text).some((c) => c.codePointAt(0)! >= FIRST_RTL)) return new Uint8Array(text.length);
  // The package is CommonJS: its factory is the module itself, which its types call `default`.
  bidi ??= (makeBidi as unknown as typeof makeBidi.default)();
  return bidi.getEmbeddingLevels(text).levels;
}

/** Rule L2: from the highest level down to the lowest odd one, what lies at it or above is turned round. */
function reordered<T extends { readonly level: number }>(runs: readonly T[]): T[] {
  const out = [...runs];
  const most = Math.max(0, ...runs.map((r) => r.level));
  for (let level = most; level > 0; level--)
    for (let i = 0; i < out.length; i++) {
      let to = i;
      while (to < out.length && out[to]!.level >= level) to++;
      if (to > i) out.splice(i, to - i, ...out.slice(i, to).reverse());
      i = Math.max(i, to);
    }
  return out;
}

/** The script at each UTF-16 unit: signs of no script of their own take the one before them, or the first there is. */
function scriptsOf(text: string): string[] {
  const own: string[] = [];
  let last = '';
  for (const character of text) {
    const script = scriptOf(character);
    if (script !== '') last = script;
    for (let u = 0; u < character.length; u++) own.push(last);
  }
  const first = own.find((s) => s !== '') ?? '';
  return own.map((s) => (s === '' ? first : s));
}

const known = new Map<string, RegExp>();
let before = 'Latn';

function scriptOf(character: string): string {
  if (/[\p{Script=Common}\p{Script=Inherited}]/u.test(character)) return '';
  const is = (script: string): boolean => {
    const test = known.get(script) ?? new RegExp(`\\p{Script=${script}}`, 'u');
    known.set(script, test);
    return test.test(character);
  };
  if (is(before)) return before;
  const found = SCRIPTS.find(is);
  if (found !== undefined) before = found;
  return found ?? '';
}
