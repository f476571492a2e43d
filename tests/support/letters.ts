import { readFileSync } from 'node:fs';
import opentype from 'opentype.js';
import { recorder } from '../../src/generators/recorder.js';
import type { Piece } from '../../src/geometry/artwork.js';
import { fontBytes } from './artwork.js';

/** The glyphs of the bundled face one by one, each at the origin, a flat capital `height` mm high. */
export function letters(text: string, height: number): Piece[] {
  return lettersOf(new Uint8Array(fontBytes).buffer as ArrayBuffer, text, height);
}

/** The same of any font file. */
export function lettersOfFile(path: string, text: string, height: number): Piece[] {
  return lettersOf(new Uint8Array(readFileSync(path)).buffer as ArrayBuffer, text, height);
}

function lettersOf(bytes: ArrayBuffer, text: string, height: number): Piece[] {
  const font = opentype.parse(bytes);
  const k = height / (font.tables.os2?.sCapHeight || font.charToGlyph('H').getBoundingBox().y2);
  return Array.from(text).flatMap((character) => {
    const pen = recorder();
    pen.piece(character);
    let open = false;
    for (const c of font.charToGlyph(character).path.commands) {
      if (c.type === 'M') {
        if (open) pen.close();
        pen.move(c.x * k, c.y * k);
      } else if (c.type === 'L') pen.line(c.x * k, c.y * k);
      else if (c.type === 'Q') pen.quadratic(c.x1 * k, c.y1 * k, c.x * k, c.y * k);
      else if (c.type === 'C') pen.cubic(c.x1 * k, c.y1 * k, c.x2 * k, c.y2 * k, c.x * k, c.y * k);
      else if (open) pen.close();
      open = c.type !== 'Z';
    }
    if (open) pen.close();
    return [...pen.artwork().pieces];
  });
}
