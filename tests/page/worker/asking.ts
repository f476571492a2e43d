import { readFileSync } from 'node:fs';
import { Answerer } from '../../../src/page/worker/answer.js';
import type { Drawn, Measured, Origin, Trouble, View, ViewName } from '../../../src/page/worker/protocol.js';
import type { Units } from '../../../src/schema/units.js';
import { fromDisk, nowhere } from '../../support/card-sources.js';

const patterns = new URL('../../../patterns/', import.meta.url);

/** The text of a recipe that ships. */
export function shippedText(name: string): string {
  return readFileSync(new URL(`${name}.json`, patterns), 'utf8');
}

/** Where a card that began from a shipped recipe has its drawings from. */
export function from(name: string): Origin {
  return { ...nowhere, shipped: `${name}.json` };
}

/** An answerer with the files that ship; time stands still unless a clock is given. */
export function answerer(now: () => number = () => 0): Answerer {
  return new Answerer(fromDisk, now);
}

export async function drawn(a: Answerer, text: string, exact = true, origin = nowhere): Promise<Drawn> {
  const got = await a.answer({ ask: 'draw', text, origin, exact });
  if (!got || !('kind' in got) || got.kind !== 'drawn')
    throw new Error(`not drawn: ${JSON.stringify(got).slice(0, 300)}`);
  return got;
}

export async function trouble(a: Answerer, text: string, exact = true, origin = nowhere): Promise<Trouble> {
  const got = await a.answer({ ask: 'draw', text, origin, exact });
  if (!got || !('kind' in got) || got.kind !== 'trouble')
    throw new Error(`no trouble: ${JSON.stringify(got).slice(0, 300)}`);
  return got;
}

export async function view(a: Answerer, name: ViewName, units: Units = 'mm'): Promise<View> {
  const got = await a.answer({ ask: 'view', view: name, units });
  if (!got || !('view' in got)) throw new Error(`no view: ${JSON.stringify(got).slice(0, 300)}`);
  return got;
}

export function measure(a: Answerer, x: number, y: number): Promise<Measured | null> {
  return a.answer({ ask: 'measure', at: [x, y] }) as Promise<Measured | null>;
}
