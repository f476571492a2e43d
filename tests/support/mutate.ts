import { NUMBERS, TEXTS, UNITS, WORDS } from './harsh.js';
import { changedTree } from './mutate-tree.js';
import { seeded } from './random.js';

/** What a file is made of, which tells its parts apart. */
export type Kind = 'json' | 'svg' | 'dxf' | 'binary';

export interface Sample {
  readonly name: string;
  readonly kind: Kind;
  readonly bytes: Uint8Array;
}

/** A sample made wrong on purpose. The same samples and seed give the same bytes. */
export interface Damaged {
  readonly seed: number;
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** No reader lets a file of more than this through that a mutation could blow up, bytes. */
const MOST = 3_000_000;

/** A sample with one to four things gone wrong in it: bytes, tokens or whole parts. */
export function damaged(samples: readonly Sample[], seed: number): Damaged {
  const random = seeded(seed * 7919 + 101);
  const below = (n: number): number => Math.floor(random() * n);
  const { name, kind, bytes } = samples[below(samples.length)];
  const other = samples[below(samples.length)].bytes;
  // One character a byte, so that damage may leave half a letter behind.
  let text = Buffer.from(bytes).toString('latin1');
  const all = [
    BYTES,
    TOKENS,
    PARTS,
    [...BYTES, ...TOKENS, ...PARTS],
    ...(kind === 'json' ? [[tree], [tree], [tree]] : [PARTS]),
  ];
  const changes = kind === 'binary' ? BYTES : all[below(all.length)];
  for (let times = 1 + below(3); times > 0; times--) {
    const change = changes[below(changes.length)];
    text = change({ text, kind, below, other: Buffer.from(other).toString('latin1') }).slice(0, MOST);
  }
  return { seed, name, bytes: Buffer.from(text, 'latin1') };
}

interface Given {
  readonly text: string;
  readonly kind: Kind;
  readonly below: (n: number) => number;
  /** Another sample, or the same. */
  readonly other: string;
}
type Change = (given: Given) => string;

const put = (text: string, at: number, length: number, by: string): string =>
  text.slice(0, at) + by + text.slice(at + length);

const flip: Change = ({ text, below }) => {
  const at = below(text.length);
  return text === ''
    ? ''
    : put(text, at, 1, String.fromCharCode((text.charCodeAt(at) ^ (1 << below(8))) & 255));
};
const lose: Change = ({ text, below }) => put(text, below(text.length), 1 + below(60), '');
const insert: Change = ({ text, below }) =>
  put(
    text,
    below(text.length),
    0,
    String.fromCharCode(...Array.from({ length: 1 + below(8) }, () => below(256))),
  );
const repeat: Change = ({ text, below }) => {
  const at = below(text.length);
  return put(text, at, 0, text.slice(at, at + 1 + below(400)));
};
const cut: Change = ({ text, below }) => text.slice(0, below(text.length + 1));
const splice: Change = ({ text, below, other }) =>
  text.slice(0, below(text.length + 1)) + other.slice(below(other.length));

const BYTES: readonly Change[] = [flip, lose, insert, repeat, cut, splice];

/** Puts a token in the place of one that the pattern finds, or anywhere when it finds none. */
const swapped =
  (pattern: RegExp, tokens: readonly string[], around = ''): Change =>
  ({ text, below }) => {
    const found = pickMatch(text, pattern, below);
    const token = around + tokens[below(tokens.length)] + around;
    return found ? put(text, found.index, found[0].length, token) : put(text, below(text.length), 0, token);
  };

const TOKENS: readonly Change[] = [
  swapped(/-?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g, NUMBERS),
  swapped(/-?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g, NUMBERS),
  swapped(/"[^"\n]*"/g, TEXTS, '"'),
  swapped(/(?<=:\s*)"[^"\n]*"/g, TEXTS, '"'),
  swapped(/"[^"\n]*"|[-\w.]+/g, WORDS),
  swapped(/\b(?:mm|in|deg|px|cm)\b/g, UNITS),
  ({ text, below }) =>
    put(text, below(text.length + 1), 0, [...TEXTS, ...WORDS][below(TEXTS.length + WORDS.length)]),
];

/** A change to one line of a log, or to a text that is one value. */
const tree: Change = ({ text, below }) => {
  const lines = isJson(text) ? [text] : text.split('\n');
  const at = below(lines.length);
  if (!isJson(lines[at])) return text;
  const line = changedTree(Buffer.from(lines[at], 'latin1').toString('utf8'), below);
  return lines.with(at, Buffer.from(line, 'utf8').toString('latin1')).join('\n');
};

function isJson(text: string): boolean {
  try {
    return typeof JSON.parse(text) === 'object';
  } catch {
    return false;
  }
}

/** What is taken away, doubled or moved as a whole. The values are bounded, so that no pattern scans far. */
const SHAPES: Readonly<Record<Kind, readonly RegExp[]>> = {
  json: [
    /"[^"\n]{0,60}"\s*:\s*(?:"[^"\n]{0,400}"|[-\w.+]+|\{[^{}]{0,4000}\}|\[[^[\]]{0,4000}\])\s*,?/g,
    /\{[^{}]{0,4000}\}/g,
    /[^\n]+\n?/g,
  ],
  svg: [/<[^<>]{0,4000}>/g, /[\w:-]{1,40}="[^"]{0,4000}"/g, /[MLHVAZCQSTmlhvazcqst][^"A-Za-z<>]{0,200}/g],
  dxf: [/[^\n]*\n[^\n]*\n/g, /(?<=\n)\s*0\n\w+\n(?:(?!\s*0\n)[^\n]*\n){0,200}/g, /[^\n]+\n/g],
  binary: [],
};

/**
 * The match at or before a random place, counted from the start of its line so that quotes are met in pairs; else the next. Every
 * other time any line is as likely as a long one.
 */
function pickMatch(text: string, pattern: RegExp, below: (n: number) => number): RegExpExecArray | undefined {
  const lines = text.split('\n', 5000);
  const before = lines.slice(0, below(lines.length)).reduce((sum, line) => sum + line.length + 1, 0);
  const at = below(2) ? below(Math.max(1, text.length)) : before;
  const from = new RegExp(pattern);
  from.lastIndex = text.lastIndexOf('\n', at) + 1;
  let last: RegExpExecArray | null = null;
  for (let found = from.exec(text); found; found = from.exec(text)) {
    if (found.index > at) return last ?? found;
    last = found;
  }
  return last ?? undefined;
}

const part =
  (change: (unit: string, given: Given) => string): Change =>
  (given) => {
    const patterns = SHAPES[given.kind];
    const found = pickMatch(given.text, patterns[given.below(patterns.length)], given.below);
    return found ? put(given.text, found.index, found[0].length, change(found[0], given)) : given.text;
  };

const times = (unit: string, n: number): string =>
  unit.repeat(Math.max(1, Math.min(n, 200_000 / unit.length)));
const moved: Change = (given) => {
  let unit = '';
  const without = part((found) => {
    unit = found;
    return '';
  })(given);
  return put(without, given.below(without.length + 1), 0, unit);
};
/** A part many deep in its own kind of bracket. */
const nested = part((unit, { kind, below }) => {
  const deep = [3, 40, 400, 20_000][below(4)];
  if (kind === 'svg') return `${'<g>'.repeat(deep)}${unit}${'</g>'.repeat(deep)}`;
  if (kind === 'dxf') return `${'0\nBLOCK\n'.repeat(deep)}${unit}`;
  const [open, close] = below(2) ? ['[', ']'] : ['{"a":', '}'];
  const value = /:\s*([\s\S]*?)\s*,?$/.exec(unit)?.[1] ?? unit;
  return unit.replace(value, () => open.repeat(deep) + value + close.repeat(deep));
});

const PARTS: readonly Change[] = [
  part(() => ''),
  part((unit, { kind }) => (kind === 'json' && !/[,\n]$/.test(unit) ? `${unit},${unit}` : unit + unit)),
  part((unit, { below }) => times(unit, 10 ** below(5))),
  moved,
  nested,
  // The part with one of another sample in its place.
  part(
    (unit, { other, kind, below }) =>
      pickMatch(other, SHAPES[kind][below(SHAPES[kind].length)], below)?.[0] ?? unit,
  ),
];
