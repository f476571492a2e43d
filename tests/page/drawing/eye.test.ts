import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { fitted, toScreen } from '../../../src/page/drawing/camera.js';
import * as eye from '../../../src/page/drawing/eye.js';
import { answers } from '../../../src/page/drawing/views.js';
import { picked, view } from '../../../src/page/state/bench.js';
import { drawn, shownIn } from '../../../src/page/state/card.js';
import { pencilledAt, piece, viewCalled } from './bench.js';

vi.mock('../../../src/page/state/hands.js', () => import('./bench.js'));

const room = { width: 900, height: 700 };
let stops: (() => void)[] = [];

beforeEach(() => {
  view.value = 'piece';
  picked.value = null;
  answers.value = new Map();
  drawn.value = null;
  eye.room.value = room;
  stops = [eye.watchPiece(), eye.watchPicked()];
  drawn.value = piece();
});
afterEach(() => {
  for (const stop of stops) stop();
});

const ofWhole = () => fitted(piece().figure.box, room);

describe('where the drawing is looked at from', () => {
  it('is the whole piece, however large room and piece become', () => {
    expect(eye.whole.value).toBe(true);
    expect(eye.camera.value).toEqual(ofWhole());
    eye.room.value = { width: 400, height: 500 };
    expect(eye.camera.value).toEqual(fitted(piece().figure.box, { width: 400, height: 500 }));
    drawn.value = piece(200, 90);
    expect(eye.camera.value).toEqual(fitted(piece(200, 90).figure.box, { width: 400, height: 500 }));
  });

  it('stays when it was chosen and the piece is about as large, and goes back to the whole when it is another', () => {
    eye.zoom(3, [200, 200]);
    const near = eye.camera.value;
    expect(eye.whole.value).toBe(false);
    expect(near.scale).toBeCloseTo(3 * ofWhole().scale, 9);
    drawn.value = piece(170, 100);
    expect(eye.camera.value).toEqual(near);
    drawn.value = piece(300, 100);
    expect(eye.whole.value).toBe(true);
    eye.zoom(2);
    drawn.value = null;
    expect(eye.whole.value).toBe(true);
  });

  it('zooms about the middle when no place is given', () => {
    const before = eye.under([450, 350]);
    eye.zoom(2.5);
    expect(eye.under([450, 350])[0]).toBeCloseTo(before[0], 9);
    expect(eye.under([450, 350])[1]).toBeCloseTo(before[1], 9);
  });

  it('is one for all views of the face, and its own for section and coupon', () => {
    eye.zoom(3);
    const near = eye.camera.value;
    for (const name of ['gap', 'reach', 'walls', 'pocket', 'plug'] as const) {
      view.value = name;
      expect(eye.camera.value).toEqual(near);
    }
    view.value = 'section';
    expect(eye.whole.value).toBe(true);
    // No section was drawn yet: nothing is looked at, and nothing moves.
    expect(eye.box.value).toBeNull();
    eye.zoom(2);
    eye.push(10, 10);
    expect(eye.whole.value).toBe(true);
    answers.value = new Map([
      ['section', { view: viewCalled('section', 202), of: drawn.value!, units: shownIn.value }],
    ]);
    expect(eye.camera.value).toEqual(fitted(viewCalled('section', 202).box, room));
    eye.zoom(2);
    expect(eye.scale.value).toBeCloseTo(2 * fitted(viewCalled('section', 202).box, room).scale, 9);
    view.value = 'piece';
    expect(eye.camera.value).toEqual(near);
    eye.showWhole();
    expect(eye.camera.value).toEqual(ofWhole());
  });

  it('is pushed with the paper', () => {
    eye.zoom(4);
    const [u, v] = eye.under([100, 100]);
    eye.push(30, -12);
    expect(eye.under([130, 88])[0]).toBeCloseTo(u, 9);
    expect(eye.under([130, 88])[1]).toBeCloseTo(v, 9);
  });
});

describe('a finding that is picked', () => {
  beforeEach(() => {
    drawn.value = piece(160, 100, { findings: [pencilledAt(1, [70, 40]), pencilledAt(2, [0, 0])] });
  });

  it('that is in the room moves nothing', () => {
    picked.value = 1;
    expect(eye.whole.value).toBe(true);
  });

  it('that is out of sight is brought to the middle, no nearer and no farther', () => {
    eye.zoom(8, [450, 350]);
    const { scale } = eye.camera.value;
    picked.value = 1;
    expect(toScreen(eye.camera.value, room, [70, 40])).toEqual([450, 350]);
    expect(eye.scale.value).toBe(scale);
    picked.value = 2;
    expect(toScreen(eye.camera.value, room, [0, 0])).toEqual([450, 350]);
  });

  it('moves nothing while something else than the face is looked at', () => {
    answers.value = new Map([
      ['coupon', { view: viewCalled('coupon'), of: drawn.value!, units: shownIn.value }],
    ]);
    for (const name of ['piece', 'coupon'] as const) {
      view.value = name;
      eye.zoom(8, [450, 350]);
    }
    const near = eye.camera.value;
    picked.value = 1;
    expect(eye.camera.value).toEqual(near);
    view.value = 'piece';
    expect(eye.camera.value).toEqual(near);
  });
});
