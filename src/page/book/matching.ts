/** The words of a text in small letters, accents taken off. */
export function wordsIn(text: string): string[] {
  return text
    .normalize('NFKD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/** Whether every word asked for begins some word of a text: "star wal" finds "walnut, eight-pointed stars". */
export function matches(asked: string, words: readonly string[]): boolean {
  return wordsIn(asked).every((start) => words.some((word) => word.startsWith(start)));
}
