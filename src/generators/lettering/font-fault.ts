/** A font file cannot be used; the message ends a sentence that starts with the file's name. */
export class UnusableFont extends Error {}

/** A font file may hold this much, and no more when it is unpacked, bytes. */
export const MOST_FONT_BYTES = 20_000_000;

/** The fault of a file that is a font but not whole. */
export function broken(what: string): UnusableFont {
  return new UnusableFont(`is a broken font: ${what}; get the file again or use another font`);
}
