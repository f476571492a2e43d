import { random } from '../../src/generators/random.js';
import { corpusFiles, corpusText } from './support.js';

export interface Mutant {
  readonly seed: number;
  readonly file: string;
  readonly text: string;
}

/** Longer drawings than this, characters, add time and nothing else. */
const SHORT = 20_000;

/** Small drawings that use what the corpus seldom does. */
const OWN: readonly (readonly [string, string])[] = [
  [
    'own-shapes.svg',
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 90 60" width="90mm"><style>.a{fill:red}g>.b{fill:none;stroke:#000;stroke-width:3}</style><defs><path id="p" d="M0 0A5 9 30 1 0 20 5q5 5 9-9t4 4z"/><clipPath id="c"><circle cx="9" cy="9" r="9"/></clipPath></defs><g transform="translate(9 9)rotate(20)"><use href="#p" class="a"/><polyline class="b" points="0,0 30,9 9,30" stroke-linejoin="round"/></g><rect x="50" y="9" width="30" height="20" rx="4" clip-path="url(#c)"/><ellipse cx="60" cy="40" rx="20" ry="9" fill-rule="evenodd"/></svg>',
  ],
  [
    'own-lines.dxf',
    '0\nSECTION\n2\nHEADER\n9\n$INSUNITS\n70\n4\n0\nENDSEC\n0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nB\n70\n0\n10\n0\n20\n0\n0\nCIRCLE\n8\n0\n10\n0\n20\n0\n40\n5\n0\nENDBLK\n0\nENDSEC\n0\nSECTION\n2\nENTITIES\n0\nINSERT\n8\n0\n2\nB\n10\n20\n20\n20\n41\n2\n42\n1\n50\n30\n0\nLWPOLYLINE\n8\n0\n90\n3\n70\n1\n10\n0\n20\n0\n42\n0.5\n10\n60\n20\n0\n10\n60\n20\n50\n0\nELLIPSE\n8\n0\n10\n80\n20\n20\n11\n9\n21\n3\n40\n0.5\n41\n0\n42\n6.283185307\n0\nENDSEC\n0\nEOF\n',
  ],
];

let drawings: readonly (readonly [string, string])[] | undefined;

function originals(): readonly (readonly [string, string])[] {
  drawings ??= [...corpusFiles('svg'), ...corpusFiles('dxf')]
    .map((file) => [file, corpusText(file)] as const)
    .filter(([, text]) => text.length < SHORT)
    .concat(OWN);
  return drawings;
}

const NUMBERS = [
  'NaN',
  '1e308',
  '-1e308',
  '-0',
  '1e-320',
  '0',
  '-1',
  '1e9',
  '1e-9',
  'Infinity',
  '7e',
  '0x10',
  '9'.repeat(400),
];
const TOKENS = [
  '<',
  '>',
  '/>',
  '"',
  '</g>',
  '<g>',
  '<!--',
  'z',
  'M',
  'A1 1 0 01',
  '%',
  'mm',
  'url(#p)',
  'scale(0)',
  'fill="none"',
  '\n',
  '0\n',
  '0\nSEQEND\n',
  '0\nENDSEC\n',
  '10\n',
  '0\nLINE\n',
  '42\n1\n',
  '\u0000',
  '\uFFFD',
];
const NUMBER = /-?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/g;

/** A drawing with one to four things gone wrong in it: always the same for the same seed. */
export function mutant(seed: number): Mutant {
  const next = random(seed);
  const below = (n: number): number => Math.floor(next() * n);
  const [file, original] = originals()[below(originals().length)];
  let text = original;
  const times = 1 + below(4);
  for (let k = 0; k < times; k++) text = CHANGES[below(CHANGES.length)](text, below);
  return { seed, file, text };
}

type Change = (text: string, below: (n: number) => number) => string;

const spliced = (text: string, at: number, length: number, put: string): string =>
  text.slice(0, at) + put + text.slice(at + length);

const byte: Change = (text, below) => {
  const at = below(text.length);
  return spliced(text, at, 1, String.fromCharCode(text.charCodeAt(at) ^ (1 << below(8))));
};

const number: Change = (text, below) => {
  const all = [...text.matchAll(NUMBER)];
  if (all.length === 0) return text;
  const one = all[below(all.length)];
  return spliced(text, one.index, one[0].length, NUMBERS[below(NUMBERS.length)]);
};

/** The values of two attributes or of two lines change places. */
const swap: Change = (text, below) => {
  const all = [...text.matchAll(/"[^"]*"|^.+$/gm)];
  if (all.length < 2) return text;
  const [a, b] = [below(all.length), below(all.length)].sort((x, y) => x - y).map((i) => all[i]);
  if (a === b) return text;
  const between = text.slice(a.index + a[0].length, b.index);
  return text.slice(0, a.index) + b[0] + between + a[0] + text.slice(b.index + b[0].length);
};

const token: Change = (text, below) => spliced(text, below(text.length), 0, TOKENS[below(TOKENS.length)]);
const loss: Change = (text, below) => spliced(text, below(text.length), 1 + below(60), '');
const cut: Change = (text, below) => text.slice(0, below(text.length));

const twice: Change = (text, below) => {
  const at = below(text.length);
  return spliced(text, at, 0, text.slice(at, at + below(400)));
};

/** All of the drawing in itself once more, or many groups round it. */
const nested: Change = (text, below) => {
  const inner = text.replace(/^<\?xml[^>]*>/, '');
  if (below(2) === 0) return text.replace(/(<svg[^>]*>)/, `$1${inner}`);
  const deep = 1 + below(400);
  return text
    .replace(/(<svg[^>]*>)/, `$1${'<g>'.repeat(deep)}`)
    .replace(/(<\/svg>)/, `${'</g>'.repeat(deep)}$1`);
};

const CHANGES: readonly Change[] = [byte, number, number, swap, token, token, loss, cut, twice, nested];
