import { drawingOf } from './drawing/named.js';
import type { Layer } from './layer.js';
import { fontOf } from './lettering/font-name.js';

/** A file or bundled font that a layer names, and the path of the recipe's key that names it. */
export interface Wanted {
  readonly name: string;
  readonly where: string;
}

/** The fonts and drawings that a pattern needs before it can be drawn, each once, in the order named. */
export function wantedBy(pattern: Layer | readonly Layer[]): {
  fonts: readonly Wanted[];
  drawings: readonly Wanted[];
} {
  const fonts = new Map<string, Wanted>();
  const drawings = new Map<string, Wanted>();
  const list = Array.isArray(pattern);
  [pattern].flat().forEach((layer, k) => {
    const where = (key: string): string => `pattern.${list ? `${k}.` : ''}${key}`;
    const font = fontOf(layer);
    if (font !== null && !fonts.has(font)) fonts.set(font, { name: font, where: where('font') });
    const drawing = drawingOf(layer);
    if (drawing && !drawings.has(drawing.file))
      drawings.set(drawing.file, { name: drawing.file, where: where(drawing.key) });
  });
  return { fonts: [...fonts.values()], drawings: [...drawings.values()] };
}
