import { afterEach, beforeEach, expect, vi } from 'vitest';
import { fitted } from '../../../src/page/drawing/camera.js';
import * as eye from '../../../src/page/drawing/eye.js';
import { gesturesOn } from '../../../src/page/drawing/gestures.js';
import { view } from '../../../src/page/state/bench.js';
import { asked, drawing, drawn } from '../../../src/page/state/card.js';
import { piece, settled, waiting } from './bench.js';

/* Paper under hands, without a browser. Who uses it replaces `state/hands.js` by `bench.js`. */

/** Where the paper's corner lies in the window. */
const [LEFT, TOP] = [40, 60];

/** An element that hears events and has a place, which is all that is asked of it. */
class Paper extends EventTarget {
  readonly held = new Set<number>();
  readonly marks: boolean;
  constructor(marks: boolean) {
    super();
    this.marks = marks;
  }
  getBoundingClientRect(): { left: number; top: number } {
    return { left: LEFT, top: TOP };
  }
  hasPointerCapture(id: number): boolean {
    return this.held.has(id);
  }
  setPointerCapture(id: number): void {
    this.held.add(id);
  }
  closest(what: string): unknown {
    return this.marks && what === '.mark' ? this : null;
  }
}

type At = readonly [number, number];

export let paper: Paper;
export let stop: () => void = () => {};

/** Paper anew; all of it a mark when asked. */
export function begin(marks = false): void {
  stop();
  paper = new Paper(marks);
  stop = gesturesOn(paper as unknown as SVGSVGElement);
}

/** Something done at a point of the paper. */
export function send(type: string, [x, y]: At, more: object = {}): Event {
  const e = new Event(type, { cancelable: true });
  const usual = { pointerId: 1, pointerType: 'mouse', button: 0, buttons: 0 };
  for (const [key, value] of Object.entries({ clientX: LEFT + x, clientY: TOP + y, ...usual, ...more }))
    Object.defineProperty(e, key, { value });
  paper.dispatchEvent(e);
  return e;
}

export function tap(at: At, more: object = {}): void {
  send('pointerdown', at, more);
  send('pointerup', at, more);
}

/** Where widths were asked for, mm. */
export function measures(): At[] {
  return waiting.map(({ body }) => (body.ask === 'measure' ? body.at : [Number.NaN, 0]));
}

/** A point of the paper lies over the point of the piece that another lay over. */
export function expectUnder(at: At, was: At): void {
  const now = eye.under(at);
  expect(now[0]).toBeCloseTo(was[0], 6);
  expect(now[1]).toBeCloseTo(was[1], 6);
}

/** How many times as large as the whole the piece is seen. */
export function timesWhole(): number {
  return eye.scale.value / fitted(piece().figure.box, eye.room.value).scale;
}

/** A piece of 160 by 100 mm, drawn exactly, lies whole in a room of 900 by 700 before every test. */
export function layPaper(): void {
  beforeEach(() => {
    vi.useFakeTimers();
    vi.stubGlobal('Element', Paper);
    view.value = 'piece';
    asked.value = { text: 'x', exact: true };
    drawing.value = false;
    drawn.value = piece();
    eye.room.value = { width: 900, height: 700 };
    eye.showWhole();
    begin();
  });
  afterEach(async () => {
    stop();
    // What is still asked is answered, and what was waiting behind it.
    for (let k = 0; k < 2; k++) {
      for (const w of waiting.splice(0)) w.answer(null);
      await settled();
    }
    vi.unstubAllGlobals();
    vi.useRealTimers();
  });
}
