import type { Pen } from '../../geometry/pen.js';
import { bad } from '../values.js';
import type { Face, Glyph } from './font.js';

/** A character where it stands on the line. */
export interface SetGlyph {
  readonly glyph: Glyph;
  readonly character: string;
  /** 1 for the first character of the text; spaces count. */
  readonly place: number;
  /** Of the glyph's origin from the line's start, font units. */
  readonly x: number;
}

/** Sets one line, character by character: advance, kerning, and `tracking` font units between any two. */
export function setLine(face: Face, text: string, tracking: number): SetGlyph[] {
  const out: SetGlyph[] = [];
  let x = 0;
  Array.from(text).forEach((character, i) => {
    const glyph = face.glyph(character);
    if (!glyph) {
      const code = character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
      throw bad('text', `character ${i + 1}, "${character}" (U+${code}), is not in the font; use another`);
    }
    const before = out[out.length - 1];
    if (before) x += before.glyph.advance + face.kerning(before.glyph, glyph) + tracking;
    out.push({ glyph, character, place: i + 1, x });
  });
  return out;
}

/** Leftmost and rightmost ink, font units; null when there is none. The curves' handles count, a hair too much. */
export function inkSpan(line: readonly SetGlyph[]): readonly [number, number] | null {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const { glyph, x } of line)
    for (const c of glyph.commands) {
      if (c.type === 'Z') continue;
      from = Math.min(from, x + c.x);
      to = Math.max(to, x + c.x);
    }
  return from < to ? [from, to] : null;
}

/** Draws every glyph with ink as a piece, its origin at ((x - left) * scale, bottom). */
export function drawLine(
  line: readonly SetGlyph[],
  left: number,
  bottom: number,
  scale: number,
  pen: Pen,
): void {
  for (const { glyph, character, place, x } of line) {
    if (!glyph.commands.some((c) => c.type !== 'M' && c.type !== 'Z')) continue;
    pen.piece(`letter ${place} '${character}'`);
    const px = (v: number): number => (v + x - left) * scale;
    const py = (v: number): number => v * scale + bottom;
    let open = false;
    for (const c of glyph.commands) {
      if (c.type === 'M') {
        if (open) pen.close();
        pen.move(px(c.x), py(c.y));
      } else if (c.type === 'L') pen.line(px(c.x), py(c.y));
      else if (c.type === 'Q') pen.quadratic(px(c.x1), py(c.y1), px(c.x), py(c.y));
      else if (c.type === 'C') pen.cubic(px(c.x1), py(c.y1), px(c.x2), py(c.y2), px(c.x), py(c.y));
      else pen.close();
      open = c.type !== 'Z';
    }
    if (open) pen.close();
  }
}
