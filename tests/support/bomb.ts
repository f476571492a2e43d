import { type Sfnt, view, writeSfnt } from './sfnt.js';

/** A font built to make its reader run for ever, recurse without end, or fill the memory. */
export interface Bomb {
  readonly name: string;
  /** Gets a fresh copy of a sound font by the kind it is. */
  make(font: (kind: 'ttf' | 'otf') => Sfnt): Uint8Array;
}

/** A sound font with its tables changed. */
export function sfnt(
  name: string,
  kind: 'ttf' | 'otf',
  change: (tables: Map<string, Uint8Array>) => void,
): Bomb {
  return {
    name,
    make(font) {
      const f = font(kind);
      change(f.tables);
      return writeSfnt(f);
    },
  };
}

/** How many glyphs the font says it has. */
export const countOf = (tables: Map<string, Uint8Array>): number => view(tables.get('maxp')!).getUint16(4);
