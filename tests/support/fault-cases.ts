import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { exampleText } from '../recipe/example.js';

const patterns = fileURLToPath(new URL('../../patterns/', import.meta.url));
const RECORD = ['fit', 'record', 'lid.json', '--tried', 'dry'];
/** What a killed writer leaves. */
const HALF = '{"version":1,"kind":"res';

/** A command that writes, and those that have to have run before it, so that an older result stands. */
export interface Case {
  readonly args: readonly string[];
  readonly before: readonly (readonly string[])[];
  /** Files that stand besides the recipes. */
  readonly files?: Readonly<Record<string, string>>;
  /** It takes seconds: only some of what can fail is tried. */
  readonly slow?: boolean;
}

const picture = (file: string): Record<string, string> => ({ [file]: 'an older picture' });

export const cases: Readonly<Record<string, Case>> = {
  make: {
    args: ['make', 'lid.json'],
    before: [['make', 'earlier.json']],
  },
  'make with layouts': {
    args: ['make', 'lid.json', '--set', 'boards={"plugWidth":100,"plugLength":220}'],
    before: [['make', 'earlier.json']],
  },
  'fit record': {
    args: [...RECORD, '--clearance', '0.1', '--result', 'tight'],
    before: [[...RECORD, '--clearance', '0.2', '--result', 'loose']],
  },
  'fit record behind half a line': {
    args: [...RECORD, '--clearance', '0.1', '--result', 'tight'],
    before: [],
    files: { 'lid.fitlog.jsonl': HALF },
  },
  'fit next': { args: ['fit', 'next', 'lid.json'], before: [], files: { 'lid.fitlog.jsonl': `${HALF}\n` } },
  'save from the page': {
    args: ['save', 'lid.json', exampleText({ 'pattern.points': 8 })],
    before: [],
  },
  letter: {
    args: ['letter', '4', '--name', 'plate'],
    before: [['letter', '4', '--name', 'other']],
  },
  'letter --replace': {
    args: ['letter', '7', '--name', 'plate', '--replace'],
    before: [['letter', '4', '--name', 'plate']],
  },
  'adopt --replace': {
    args: ['adopt', 'acorn.svg', '--name', 'own', '--replace'],
    before: [['adopt', 'fish.svg', '--name', 'own']],
  },
  coupon: {
    args: ['coupon', 'lid.json', '--ladder', '0.06,0.1'],
    before: [['coupon', 'lid.json', '--ladder', '0.04,0.12']],
  },
  'list --pictures': {
    args: ['list', 'rosette', '--pictures', '.'],
    before: [],
    files: picture('rosette.png'),
  },
  'inspect --picture': {
    args: ['inspect', 'lid.json', '--picture', 'lid.svg'],
    before: [],
    files: picture('lid.svg'),
  },
  'prove --picture': {
    args: ['prove', 'out/test-piece/pocket.svg', '--picture', 'reach.svg'],
    before: [['make', 'lid.json']],
    files: picture('reach.svg'),
  },
  bowl: {
    args: ['bowl', 'bowl.json', '--no-coupon'],
    before: [['bowl', 'bowl.json', '--no-coupon', '--set', 'pattern.strap=5']],
    slow: true,
  },
};

/** Puts two recipes of one name, `lid.json` and `earlier.json`, one of a bowl, and two drawings into a folder. */
export function workshop(dir = mkdtempSync(join(tmpdir(), 'faults-'))): string {
  writeFileSync(join(dir, 'lid.json'), exampleText({ 'pattern.points': 6 }));
  writeFileSync(join(dir, 'earlier.json'), exampleText({ 'pattern.points': 5 }));
  copyFileSync(join(patterns, 'fruit-bowl-wave.json'), join(dir, 'bowl.json'));
  for (const name of ['acorn.svg', 'fish.svg'])
    copyFileSync(join(patterns, 'drawings', name), join(dir, name));
  return dir;
}

export const noteOf = (k: number): string => `trial ${k}`;

/** Records a trial that can be told from the others. */
export const record = (k: number): string[] => [
  ...RECORD,
  ...['--clearance', '0.1', '--result', 'tight', '--note', noteOf(k)],
];

/** The notes of all sound lines of the log. */
export function notesIn(dir: string): string[] {
  const lines = readFileSync(join(dir, 'lid.fitlog.jsonl'), 'utf8').split('\n');
  return lines.flatMap((line) => {
    try {
      return [JSON.parse(line).note];
    } catch {
      return []; // Half a line.
    }
  });
}
