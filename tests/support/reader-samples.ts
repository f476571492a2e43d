import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from '../../src/build.js';
import { loadAssets } from '../../src/disk/load.js';
import { type LogLine, lineText } from '../../src/fit/log/entry.js';
import { faces } from '../../src/generators/lettering/faces.js';
import { drawingsOf } from '../../src/output/index.js';
import type { Files } from '../../src/output/job.js';
import { proven } from '../../src/proven.js';
import { readRecipe } from '../../src/recipe/read.js';
import { cutterRadius, type Recipe } from '../../src/recipe/recipe.js';
import { corpusFiles, corpusText } from '../drawing/support.js';
import { exampleText } from '../recipe/example.js';
import { bytesOf } from './bundled-fonts.js';
import { PATHS } from './harsh.js';
import type { Damaged, Sample } from './mutate.js';
import { soundFonts } from './mutated-fonts.js';

const PATTERNS = new URL('../../patterns/', import.meta.url);
/** Longer files than this, bytes, add time and nothing else. */
const SHORT = 20_000;

const sample = (name: string, kind: Sample['kind'], text: string): Sample => ({
  name,
  kind,
  bytes: Buffer.from(text),
});

/** The recipes that ship, and two that say what those do not. */
export function recipes(): Sample[] {
  const shipped = readdirSync(PATTERNS)
    .filter((f) => f.endsWith('.json'))
    .sort();
  return [
    ...shipped.map((f) => sample(f, 'json', readFileSync(new URL(f, PATTERNS), 'utf8'))),
    sample('example.json', 'json', exampleText()),
    sample(
      'own.json',
      'json',
      exampleText({
        pattern: [
          { generator: 'lettering', text: 'Heron', height: 20, font: 'drawings/heron.svg' },
          { generator: 'drawing', file: './drawings/fish.svg', width: '2in' },
        ],
        'fit.plug': 'carrier',
        machine: { bridge: '90mm', lift: 80 },
        boards: { fieldWidth: 120, fieldLength: '20in' },
      }),
    ),
  ];
}

/** A recipe for each harsh text in the place of its name and of every file that it refers to. */
export function references(): Damaged[] {
  const drawing = { generator: 'drawing', file: 'drawings/fish.svg', width: 50 };
  const lettering = { generator: 'lettering', text: 'A', height: 20, font: 'arvo' };
  const wallpaper = { generator: 'wallpaper', motif: 'drawing', drawing: 'drawings/fish.svg' };
  const inPlace = (text: string): Record<string, unknown>[] => [
    { name: text },
    { pattern: { ...drawing, file: text } },
    { pattern: { ...lettering, font: text } },
    { pattern: { ...wallpaper, drawing: text } },
    { pattern: [drawing, { ...lettering, font: text }] },
  ];
  return PATHS.flatMap(inPlace).map((changes, seed) => ({
    seed,
    name: JSON.stringify(changes).slice(0, 120),
    bytes: Buffer.from(exampleText(changes)),
  }));
}

export interface Written {
  readonly files: Files;
  readonly recipe: Recipe;
  readonly mirrored: boolean;
}

/** What a `make` of a small shipped recipe writes. Its picture is left out. */
export function written(name: string): Written {
  const path = fileURLToPath(new URL(`${name}.json`, PATTERNS));
  const recipe = readRecipe(readFileSync(path, 'utf8'), path);
  const job = build(recipe, loadAssets(recipe, path));
  const { files } = proven(job, { png: () => new Uint8Array() }, () => undefined);
  return { files, recipe, mirrored: job.pair.mirrored };
}

/** The four drawings, and what is in the folder for a trial of them: see readers/proof.mjs. */
export function proofFiles({ files, recipe, mirrored }: Written): { samples: Sample[]; sound: string } {
  const drawings = drawingsOf(files, 0);
  const asked = { radius: cutterRadius(recipe.cutter), clearance: recipe.fit.clearance, carrier: mirrored };
  const samples = Object.entries(drawings).map(([key, text]) =>
    sample(key, key.endsWith('Svg') ? 'svg' : 'dxf', text),
  );
  return { samples, sound: JSON.stringify({ files: drawings, asked }) };
}

export function jobs({ files }: Written): Sample[] {
  return [sample('job.json', 'json', files.get('job.json') as string)];
}

/** The recipe that the log lies beside: its results are of that setup. */
export function logRecipe(): string {
  return exampleText();
}

/** A log with a coupon, dry and glued results, and notes in other scripts and with quotes. */
export function logs(): Sample[] {
  const result = (clearance: number, k: number): LogLine => ({
    version: 1,
    kind: 'result',
    clearance,
    step: k % 2 ? k + 1 : null,
    result: (['cracked', 'tight', 'good', 'good', 'loose', 'gappy'] as const)[k % 6],
    tried: k % 3 ? 'dry' : 'glued',
    cutter: { diameter: 3.175, cuts: 3.19 },
    woods: { field: 'white ash', plug: 'black walnut' },
    depth: 8,
    moisture: k % 2 ? 8.5 : null,
    date: k % 2 ? '2024-02-29' : null,
    note: [null, 'a "quoted" note', 'N\u00fcsse \u6728', '{"version":1}'][k % 4],
  });
  const coupon: LogLine = { version: 1, kind: 'coupon', ladder: [0.04, 0.08, 0.12, 0.16, 0.2] };
  const lines = [coupon, ...[0.02, 0.05, 0.08, 0.1, 0.14, 0.2].map(result)].map(lineText);
  return [
    sample('one.fitlog.jsonl', 'json', `${lines[3]}\n`),
    sample('several.fitlog.jsonl', 'json', `${lines.join('\n')}\n`),
    sample('windows.fitlog.jsonl', 'json', `${lines.slice(0, 3).join('\r\n')}\r\n\n${lines[4]}`),
  ];
}

/** Drawings of the corpus, those that ship, and those that a `make` writes. */
export function drawings({ files }: Written): Sample[] {
  const kind = (file: string): 'svg' | 'dxf' => (file.endsWith('.dxf') ? 'dxf' : 'svg');
  const corpus = [...corpusFiles('svg'), ...corpusFiles('dxf')].map((f) => [f, corpusText(f)] as const);
  const shipped = readdirSync(new URL('drawings/', PATTERNS)).map(
    (f) => [f, readFileSync(new URL(`drawings/${f}`, PATTERNS), 'utf8')] as const,
  );
  const made = [...files].filter((f): f is [string, string] => /^p(?:ocket|lug)\.(?:svg|dxf)$/.test(f[0]));
  return [...corpus, ...shipped, ...made]
    .filter(([, text]) => text.length < SHORT)
    .map(([file, text]) => sample(file, kind(file), text));
}

/** The bundled fonts, and one of them in every wrapping. */
export function fonts(): Sample[] {
  const bundled = faces.map((face) => ({ name: face.name, bytes: bytesOf(face) }));
  return [...bundled, ...soundFonts()].map((font) => ({ ...font, kind: 'binary' as const }));
}
