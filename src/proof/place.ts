/** What is wrong is said in no more letters: a file may hold a name of any length. */
const MOST = 240;

/** A file that cannot be read as a drawing: what is wrong and where, in one line. */
export class Unreadable extends Error {
  constructor(text: string, offset: number, what: string) {
    super(
      `${what.length > MOST ? `${what.slice(0, MOST)}...` : what} (line ${lineOf(text, offset)}, column ${offset - text.lastIndexOf('\n', offset - 1)})`,
    );
    this.name = 'Unreadable';
  }
}

function lineOf(text: string, offset: number): number {
  let line = 1;
  for (let i = text.indexOf('\n'); i >= 0 && i < offset; i = text.indexOf('\n', i + 1)) line++;
  return line;
}

/** A short piece of the file to show in a message. */
export function shown(text: string): string {
  const clean = text.replace(/\s+/g, ' ').trim();
  return JSON.stringify(clean.length > 24 ? `${clean.slice(0, 24)}...` : clean);
}
