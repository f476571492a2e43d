import { spoken } from '../../schema/spoken.js';
import { shownIn } from '../state/card.js';
import type { Item } from './items.js';
import { standing } from './on-card.js';
import { valueText } from './values.js';

/** What stands in a sentence for a value. */
export interface Said {
  readonly before: string;
  readonly text: string;
  readonly after: string;
  /** The recipe says nothing of it: it is as usual. */
  readonly usual: boolean;
}

/** A value's clause as it stands now. Subscribes the caller to what it reads. */
export function saidOf(item: Item): Said {
  const p = item.parameter;
  const { written, held: now } = standing(item);
  const usual = written === undefined;
  const { before, after } = spoken(p, now ?? p.default);
  if (now === null)
    return { before, text: usual ? item.otherwise || 'none' : JSON.stringify(written), after, usual };
  // A cutter is called by its size as it is sold, whatever is shown else.
  const shown =
    typeof written === 'string' && /^(cutter|roughing)\.diameter$/.test(item.key)
      ? inchOr(written)
      : shownIn.value;
  return { before, text: firstLine(valueText(p, now, shown, written)), after, usual };
}

function inchOr(written: string): 'mm' | 'in' {
  return written.trimEnd().endsWith('in') ? 'in' : 'mm';
}

const LONGEST = 34;

function firstLine(text: string): string {
  const line = text.replaceAll('\n', ' / ');
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line;
}
