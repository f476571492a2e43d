/** A text from the file, short enough for a message. */
export function shortened(text: string): string {
  const characters = [...text.trim()];
  return characters.length > 40 ? `${characters.slice(0, 39).join('')}…` : characters.join('');
}
