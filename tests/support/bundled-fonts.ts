import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Face, faces } from '../../src/generators/lettering/faces.js';
import { recorder } from '../../src/generators/recorder.js';
import type { Artwork } from '../../src/geometry/artwork.js';

const require = createRequire(import.meta.url);

/** What the tests use of fontkit, which ships no types. */
export interface OtherFont {
  readonly familyName: string;
  readonly unitsPerEm: number;
  readonly numGlyphs: number;
  readonly capHeight: number;
  hasGlyphForCodePoint(code: number): boolean;
  glyphForCodePoint(code: number): OtherGlyph;
}
export interface OtherGlyph {
  readonly advanceWidth: number;
  readonly bbox: {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  };
  readonly path: {
    readonly commands: readonly { readonly command: string; readonly args: readonly number[] }[];
    toSVG(): string;
  };
}

export const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&@%'];

/** The face's file, from its package. */
export function bytesOf(face: Face): Buffer {
  return readFileSync(require.resolve(face.file));
}

/** The face as fontkit reads it, which the product does not use. */
export function otherFont(face: Face): OtherFont {
  return (require('fontkit') as { create(bytes: Buffer): OtherFont }).create(bytesOf(face));
}

/** Font units of a flat capital's height. */
export function capOf(face: Face, font: OtherFont): number {
  return face.capHeight ?? font.capHeight;
}

/** One character at the given cap height, mm, as fontkit outlines it: a piece as a generator would draw it. */
export function letterArtwork(face: Face, font: OtherFont, letter: string, cap: number): Artwork {
  const scale = cap / capOf(face, font);
  const pen = recorder();
  pen.piece(`letter '${letter}'`);
  let open = false;
  for (const { command, args } of font.glyphForCodePoint(letter.codePointAt(0)!).path.commands) {
    const [a, b, c, d, e, f] = args.map((v) => v * scale) as [number, number, number, number, number, number];
    if (open && (command === 'moveTo' || command === 'closePath')) pen.close();
    if (command === 'moveTo') pen.move(a, b);
    else if (command === 'lineTo') pen.line(a, b);
    else if (command === 'quadraticCurveTo') pen.quadratic(a, b, c, d);
    else if (command === 'bezierCurveTo') pen.cubic(a, b, c, d, e, f);
    open = command !== 'closePath';
  }
  if (open) pen.close();
  return pen.artwork();
}

export const bundled = faces.map((face) => [face.name, face] as const);
