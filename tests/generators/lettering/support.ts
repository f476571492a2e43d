import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { findGenerator } from '../../../src/generators/index.js';
import { faces } from '../../../src/generators/lettering/faces.js';
import { faceFiles } from '../../../src/generators/lettering/font-name.js';
import { recorder } from '../../../src/generators/recorder.js';
import type { Artwork } from '../../../src/geometry/artwork.js';
import type { Outline } from '../../../src/outline/outline.js';
import { BadInput, Refusal } from '../../../src/schema/fault.js';
import type { Values } from '../../../src/schema/parameter.js';
import { assets, CUT } from '../../support/artwork.js';
import { defaults } from '../../support/every.js';

const require = createRequire(import.meta.url);

/** What these tests use of fontkit, a font reader of its own with a shaper of its own; it ships no types. */
export interface OtherGlyph {
  readonly id: number;
  readonly advanceWidth: number;
  readonly path: { toSVG(): string };
}
export interface OtherFont {
  readonly capHeight: number;
  readonly unitsPerEm: number;
  layout(
    text: string,
    features?: object,
  ): {
    glyphs: OtherGlyph[];
    positions: { xAdvance: number; xOffset: number; yOffset: number }[];
  };
}

const fontkit = require('fontkit') as { create(bytes: Buffer): OtherFont };

/** Fonts of other scripts, used in tests only, as a recipe would name files of its own. */
const own = {
  'fonts/naskh.ttf': '@expo-google-fonts/noto-naskh-arabic/700Bold/NotoNaskhArabic_700Bold.ttf',
  'fonts/hebrew.ttf': '@expo-google-fonts/noto-sans-hebrew/700Bold/NotoSansHebrew_700Bold.ttf',
} as const;

export const NASKH = 'fonts/naskh.ttf';
export const HEBREW = 'fonts/hebrew.ttf';

export function bytesOf(name: string): Buffer {
  const bundled = faces.find((f) => f.name === name);
  return readFileSync(require.resolve(bundled ? faceFiles(bundled)[0] : own[name as keyof typeof own]));
}

export function otherFont(name: string): OtherFont {
  return fontkit.create(bytesOf(name));
}

const names = [...faces.map((f) => f.name), ...Object.keys(own)];

/** Every bundled font and those of the tests, with the shaper. */
export const withFonts = {
  ...assets,
  fonts: new Map(names.map((n) => [n, new Uint8Array(bytesOf(n)).buffer as ArrayBuffer])),
};

/** What the lettering generator draws with its defaults under these values. */
export function lettered(values: Values, outline: Outline, cut = CUT, given = withFonts): Artwork {
  const generator = findGenerator('lettering')!;
  for (const name of Object.keys(values))
    if (!generator.parameters.some((p) => p.name === name)) throw new Error(`no parameter ${name}`);
  const pen = recorder();
  generator.draw({ ...defaults(generator), ...values }, outline, pen, given, cut);
  return pen.artwork();
}

/** The one line of a fault or refusal. */
export function said(work: () => unknown): string {
  try {
    work();
  } catch (e) {
    if (e instanceof BadInput || e instanceof Refusal) return e.message;
    throw e;
  }
  throw new Error('nothing was refused');
}
