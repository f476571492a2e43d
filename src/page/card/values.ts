import type { LengthParameter, Parameter } from '../../schema/parameter.js';
import { spoken } from '../../schema/spoken.js';
import { MM_PER_INCH, numberText, parseLength, toMillimetres, type Units } from '../../schema/units.js';
import type { Written } from '../state/edit.js';

/** A value as a card holds it: lengths mm, angles degrees. */
export type Held = number | string | boolean;

/** What a recipe's text says for a parameter; undefined where it is nothing of that kind. */
export function heldOf(p: Parameter, written: Written | undefined, units: Units): Held | undefined {
  if (p.kind === 'length') return lengthOf(p, written, units);
  if (p.kind === 'flag') return typeof written === 'boolean' ? written : undefined;
  if (p.kind === 'choice')
    return typeof written === 'string' || typeof written === 'number' ? String(written) : undefined;
  if (p.kind === 'text') return typeof written === 'string' ? written : undefined;
  return typeof written === 'number' ? written : undefined;
}

function lengthOf(p: LengthParameter, written: Written | undefined, units: Units): Held | undefined {
  if (typeof written === 'number') return toMillimetres(written, units);
  if (typeof written !== 'string') return undefined;
  if (p.words?.includes(written)) return written;
  const mm = parseLength(written);
  return typeof mm === 'number' ? mm : undefined;
}

/** Is it a value that the reader takes? */
export function fits(p: Parameter, written: Written | undefined, units: Units): boolean {
  const held = heldOf(p, written, units);
  if (held === undefined) return false;
  if (p.kind === 'choice') return p.options.some((o) => o.value === held);
  if (p.kind === 'text') return String(held).trim() !== '' && [...String(held)].length <= p.maxLength;
  if (typeof held !== 'number' || !('min' in p)) return true;
  return held >= p.min && held <= p.max && (p.kind !== 'count' || Number.isInteger(held));
}

/** A fraction as a maker calls a cutter by it. */
const FRACTION = /^\s*(-?(?:\d+\s+)?\d+\/\d+)\s*in\s*$/;

/** The words a sentence shows for a value, with its unit. `written` keeps an inch's fraction a fraction. */
export function valueText(p: Parameter, held: Held, shownIn: Units, written?: Written): string {
  const { word } = spoken(p, held);
  return word ?? measureText(p, held as number, shownIn, written);
}

/** The same as a size, also for a 0 that has a word. */
export function measureText(p: Parameter, held: number, shownIn: Units, written?: Written): string {
  const unit = unitOf(p, shownIn);
  return `${bareText(p, held, shownIn, written)}${unit === '' || unit === '°' ? unit : ` ${unit}`}`;
}

/** What a field to type in shows: the number alone, in the unit that is shown. */
export function bareText(p: Parameter, held: Held, shownIn: Units, written?: Written): string {
  if (typeof held !== 'number') return String(held);
  if (p.kind !== 'length') return numberText(held, 4);
  if (shownIn === 'mm') return numberText(held, 3);
  const fraction = typeof written === 'string' ? FRACTION.exec(written)?.[1] : undefined;
  return fraction ?? numberText(held / MM_PER_INCH, 4);
}

export function unitOf(p: Parameter, shownIn: Units): string {
  if (p.kind === 'length') return shownIn;
  return p.kind === 'angle' ? '°' : '';
}

const DECIMAL = /^[-+]?(?:\d+[.,]?\d*|[.,]\d+)$/;

/**
 * What a maker typed, as the recipe is to say it: in its own unit a bare number, else a text with its unit. What cannot
 * be understood is handed on as it is: the recipe's reader says what is wrong with it.
 */
export function typed(p: Parameter, text: string, shownIn: Units, units: Units): Written {
  if (p.kind === 'text') return text;
  const t = text.trim();
  if (p.kind === 'choice' || p.kind === 'flag') return t;
  if (p.zero !== undefined && t.toLowerCase() === p.zero.toLowerCase()) return 0;
  if (p.kind === 'length') return typedLength(p, t, shownIn, units);
  const bare = t.replace(/[°%]$/, '').trim();
  return DECIMAL.test(bare) ? Number(bare.replace(',', '.')) : t;
}

function typedLength(p: LengthParameter, text: string, shownIn: Units, units: Units): Written {
  if (p.words?.includes(text)) return text;
  const unit = /(mm|in|["″])\s*$/.exec(text)?.[1];
  const bare = text.slice(0, text.length - (unit ? text.length - text.lastIndexOf(unit) : 0)).trim();
  const meant: Units = unit === undefined ? shownIn : unit === 'mm' ? 'mm' : 'in';
  if (DECIMAL.test(bare)) {
    const value = Number(bare.replace(',', '.'));
    return meant === units ? value : `${bare.replace(',', '.').replace(/^\+/, '')}${meant}`;
  }
  const whole = `${bare}${meant}`;
  return typeof parseLength(whole) === 'number' ? whole : text;
}

/** A size in the unit shown, as the recipe is to say it. */
export function writtenSize(p: Parameter, size: number, shownIn: Units, units: Units): Written {
  if (p.kind !== 'length' || shownIn === units) return Number(numberText(size, 4));
  return `${numberText(size, 4)}${shownIn}`;
}
