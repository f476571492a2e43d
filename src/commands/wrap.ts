/** Columns of a terminal that nobody has to scroll. */
const WIDE = 100;

/** Running text in lines of at most 100 columns, each set in by `indent`. */
export function wrapped(text: string, indent: number): string {
  const margin = ' '.repeat(indent);
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && margin.length + line.length + 1 + word.length > WIDE) {
      lines.push(margin + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, margin + line].join('\n');
}
