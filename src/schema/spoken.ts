import type { Parameter } from './parameter.js';

/** A clause taken apart round its value. */
export interface Spoken {
  readonly before: string;
  /** The word for the value; null: it is a number, shown as such, and by the card with its unit. */
  readonly word: string | null;
  readonly after: string;
}

/** How a card says a value, as a recipe writes it; lengths mm, angles degrees. The value alone where it has no clause. */
export function spoken(p: Parameter, value: number | string | boolean): Spoken {
  const say = (value === 1 ? p.one : undefined) ?? p.say ?? '…';
  const [before = '', after = ''] = say.split('…');
  return { before, word: wordFor(p, value), after };
}

function wordFor(p: Parameter, value: number | string | boolean): string | null {
  if (p.zero !== undefined && (value === 0 || value === '')) return p.zero;
  if (typeof value === 'boolean')
    return (p.kind === 'flag' ? p.words : undefined)?.[value ? 0 : 1] ?? String(value);
  if (p.kind === 'choice') return String(value).replaceAll('-', ' ');
  return typeof value === 'number' ? null : value;
}
