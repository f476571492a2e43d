import { bad } from '../values.js';
import type { Font } from './open-font.js';
import { visualRuns } from './runs.js';
import { codePoint, type TextLine } from './text.js';

/** A glyph of a cluster, font units from the cluster's origin. */
export interface Part {
  readonly file: number;
  readonly glyph: number;
  readonly dx: number;
  readonly dy: number;
}

/** Letters that one shape stands for: most often one; several in a ligature or with marks. */
export interface Cluster {
  readonly parts: readonly Part[];
  /** Clusters of one key look alike. */
  readonly key: string;
  /** UTF-16 units of its line's text. */
  readonly from: number;
  readonly to: number;
  /** Origin from the line's start, left to right, and advance, font units; kerning is in both, tracking in neither. */
  readonly x: number;
  readonly advance: number;
}

/** A line's clusters in visual order, left to right. */
export interface SetLine {
  readonly line: TextLine;
  readonly clusters: readonly Cluster[];
}

/** What features of a font to leave off. */
export interface Features {
  readonly kerning: boolean;
  readonly ligatures: boolean;
}

/** Sets a line: shaping, direction, kerning. Throws BadInput for a character that the font lacks. */
export function setLine(font: Font, line: TextLine, { kerning, ligatures }: Features): SetLine {
  const { text } = line;
  // Required ligatures (rlig) and the joins of scripts and script faces (calt) are no matter of choice.
  const off = [...(kerning ? [] : ['kern']), ...(ligatures ? [] : ['liga', 'clig'])];
  const homes = filesOf(font, text);
  const clusters: Cluster[] = [];
  let x = 0;
  for (const run of visualRuns(text, (at) => homes[at]!)) {
    const glyphs = font.shape(run.file, { text, ...run }, off);
    const starts = [...new Set(glyphs.map((g) => g.cluster))].sort((a, b) => a - b);
    const ends = new Map(starts.map((from, k) => [from, starts[k + 1] ?? run.to]));
    for (let i = 0; i < glyphs.length; ) {
      const from = glyphs[i]!.cluster;
      const to = ends.get(from)!;
      let advance = 0;
      const parts: Part[] = [];
      for (; i < glyphs.length && glyphs[i]!.cluster === from; i++) {
        const g = glyphs[i]!;
        if (g.id === 0) throw missing(line, from, text.slice(from, to));
        parts.push({ file: run.file, glyph: g.id, dx: advance + g.dx, dy: g.dy });
        advance += g.advance;
      }
      const key = parts.map((p) => `${p.file}.${p.glyph}@${p.dx},${p.dy}`).join(' ');
      clusters.push({ parts, key, from, to, x, advance });
      x += advance;
    }
  }
  return { line, clusters };
}

/** The font file for each UTF-16 unit; marks and joiners stay with the letter before them. */
function filesOf(font: Font, text: string): number[] {
  const out: number[] = [];
  let last = 0;
  for (const character of text) {
    if (out.length === 0 || !/[\p{M}\p{Cf}]/u.test(character)) last = font.fileOf(character);
    for (let u = 0; u < character.length; u++) out.push(last);
  }
  return out;
}

function missing(line: TextLine, from: number, characters: string): Error {
  const character = Array.from(characters)[0]!;
  const place = line.places[from]! - line.places[0]! + 1;
  return bad(
    'text',
    `${JSON.stringify(character)} (${codePoint(character)}), character ${place} of line ${line.number}, is not in the font; use another character or another font`,
  );
}
