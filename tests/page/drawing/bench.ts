import { vi } from 'vitest';
import type { Answer, Ask, Drawn, Pencilled, View, ViewName } from '../../../src/page/worker/protocol.js';
import { readRecipe } from '../../../src/recipe/read.js';
import { exampleText } from '../../recipe/example.js';

/*
 * Stands for the workers, which need a browser: `state/hands.js` is replaced by this. Every ask waits until a test
 * answers it.
 */

interface Waiting {
  readonly body: Ask;
  answer(got: Answer<Ask['ask']>): void;
  fail(e: Error): void;
}

export const waiting: Waiting[] = [];

export const exactHand = {
  ask: (body: Ask) =>
    new Promise((answer, fail) => {
      waiting.push({ body, answer, fail });
    }),
};

/** Lets everything that waits for nothing else go on. */
export async function settled(): Promise<void> {
  for (let k = 0; k < 20; k++) await Promise.resolve();
  if (vi.isFakeTimers()) await vi.advanceTimersByTimeAsync(1000);
}

const look = { name: 'white ash', colour: '#dcc49c', grain: '#b99a6a' };
const recipe = readRecipe(exampleText(), 'x.json');

export function piece(width = 160, height = 100, changes: Partial<Drawn> = {}): Drawn {
  return {
    kind: 'drawn',
    stage: 'exact',
    recipe,
    figure: {
      box: { minX: -width / 2, minY: -height / 2, maxX: width / 2, maxY: height / 2 },
      face: '',
      field: look,
      grain: { field: 0, plug: 0 },
      inlays: [],
    },
    findings: [],
    numbers: {},
    parts: { pocket: 1, plug: 1 },
    took: 1,
    ...changes,
  };
}

export function pencilledAt(number: number, at: readonly [number, number]): Pencilled {
  return { number, code: 'thin-walls', severity: 'warn', do: 'Mind it.', at, areas: '', lines: '' };
}

export function viewCalled(view: ViewName, width = 160, says = ''): View {
  const box = { minX: -width / 2, minY: -50, maxX: width / 2, maxY: 50 };
  return { view, box, picture: '', shapes: [], labels: [], key: [], says };
}
