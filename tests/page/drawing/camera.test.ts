import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Camera,
  fitted,
  matrix,
  pushed,
  type Room,
  toPiece,
  toScreen,
  zoomed,
} from '../../../src/page/drawing/camera.js';
import type { Box } from '../../../src/page/worker/protocol.js';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rooms = fc.record({ width: number(320, 2600), height: number(300, 1600) });
const boxes = fc
  .tuple(number(-500, 500), number(-500, 500), number(5, 1000), number(5, 1000))
  .map(([minX, minY, w, h]): Box => ({ minX, minY, maxX: minX + w, maxY: minY + h }));
const cameras = fc.record({ x: number(-300, 300), y: number(-300, 300), scale: number(0.05, 400) });

const corners = ({ minX, minY, maxX, maxY }: Box) =>
  [
    [minX, minY],
    [maxX, minY],
    [minX, maxY],
    [maxX, maxY],
  ] as const;

describe('a point', () => {
  it('comes back from the screen where it was', () => {
    fc.assert(
      fc.property(cameras, rooms, number(-400, 400), number(-400, 400), (camera, room, u, v) => {
        const [x, y] = toPiece(camera, room, toScreen(camera, room, [u, v]));
        expect(x).toBeCloseTo(u, 6);
        expect(y).toBeCloseTo(v, 6);
      }),
    );
  });

  it('lies where SVG draws it with the matrix', () => {
    fc.assert(
      fc.property(cameras, rooms, number(-400, 400), number(-400, 400), (camera, room, u, v) => {
        // SVG 1.1, 7.4: matrix(a b c d e f) takes x, y to ax + cy + e, bx + dy + f.
        const said = /^matrix\(([^)]+)\)$/.exec(matrix(camera, room))![1];
        const [a, b, c, d, e, f] = said.split(' ').map(Number);
        const [x, y] = toScreen(camera, room, [u, v]);
        expect(a * u + c * v + e).toBeCloseTo(x, 5);
        expect(b * u + d * v + f).toBeCloseTo(y, 5);
      }),
    );
  });

  it('in the middle of the room is what the camera looks at', () => {
    const room = { width: 800, height: 600 };
    expect(toScreen({ x: 3, y: -4, scale: 7 }, room, [3, -4])).toEqual([400, 300]);
    expect(toScreen({ x: 3, y: -4, scale: 7 }, room, [4, -2])).toEqual([407, 314]);
  });
});

describe('the whole piece', () => {
  it('lies in the room with a rim round it, as large as it can', () => {
    fc.assert(
      fc.property(boxes, rooms, (box, room) => {
        const camera = fitted(box, room);
        const at = corners(box).map((p) => toScreen(camera, room, p));
        const [xs, ys] = [at.map((p) => p[0]), at.map((p) => p[1])];
        const rim = Math.min(1, room.width / 264, room.height / 360);
        const free = [
          Math.min(...xs) - 58 * rim,
          room.width - 30 * rim - Math.max(...xs),
          Math.min(...ys) - 46 * rim,
          room.height - 74 * rim - Math.max(...ys),
        ];
        expect(Math.min(...free)).toBeGreaterThan(-1e-6);
        // Two sides that face each other have no more than their rim.
        expect(Math.min(free[0] + free[1], free[2] + free[3])).toBeLessThan(1e-6);
        // What is over is shared out.
        expect(free[0]).toBeCloseTo(free[1], 6);
        expect(free[2]).toBeCloseTo(free[3], 6);
      }),
    );
  });

  it.each([
    [0, 0],
    [1, 1],
    [40, 2000],
    [2000, 12],
  ])('has a finite camera also in a room of %i by %i', (width, height) => {
    for (const box of [
      { minX: -50, minY: -50, maxX: 50, maxY: 50 },
      { minX: 0, minY: 0, maxX: 0, maxY: 0 },
    ]) {
      const camera = fitted(box, { width, height });
      for (const n of [camera.x, camera.y, camera.scale]) expect(Number.isFinite(n)).toBe(true);
      expect(camera.scale).toBeGreaterThan(0);
    }
  });
});

const room: Room = { width: 900, height: 700 };
const plate: Box = { minX: -80, minY: -50, maxX: 80, maxY: 50 };

describe('coming nearer', () => {
  it('keeps what lies under the pointer there', () => {
    const within = fc.tuple(number(-79, 79), number(-49, 49));
    fc.assert(
      fc.property(within, number(1, 8), (point, factor) => {
        const camera = fitted(plate, room);
        const at = toScreen(camera, room, point);
        const near = zoomed(camera, factor, at, plate, room);
        expect(near.scale / camera.scale).toBeCloseTo(factor, 9);
        const [u, v] = toPiece(near, room, at);
        expect(u).toBeCloseTo(point[0], 6);
        expect(v).toBeCloseTo(point[1], 6);
      }),
    );
  });

  it('and going back the same way ends where it began', () => {
    const camera = fitted(plate, room);
    const at = [520, 400] as const;
    const back = zoomed(zoomed(camera, 2.5, at, plate, room), 1 / 2.5, at, plate, room);
    expect(back.x).toBeCloseTo(camera.x, 9);
    expect(back.y).toBeCloseTo(camera.y, 9);
    expect(back.scale).toBeCloseTo(camera.scale, 9);
  });

  it('ends at 400 pixels a millimetre, and going away at half the size of the whole', () => {
    const whole = fitted(plate, room);
    let camera: Camera = whole;
    for (let k = 0; k < 40; k++) camera = zoomed(camera, 1.8, [450, 350], plate, room);
    expect(camera.scale).toBe(400);
    for (let k = 0; k < 40; k++) camera = zoomed(camera, 1 / 1.8, [450, 350], plate, room);
    expect(camera.scale).toBeCloseTo(whole.scale / 2, 9);
  });

  it('never goes away further than half of the whole where that is nearer than the nearest', () => {
    const speck: Box = { minX: -0.2, minY: -0.2, maxX: 0.2, maxY: 0.2 };
    const whole = fitted(speck, room);
    expect(whole.scale).toBeGreaterThan(800);
    expect(zoomed(whole, 10, [450, 350], speck, room).scale).toBeCloseTo(whole.scale / 2, 6);
  });
});

describe('a push', () => {
  it('moves the paper by so many pixels', () => {
    const camera = { ...fitted(plate, room), x: 1, y: 2 };
    const [x0, y0] = toScreen(camera, room, [10, 10]);
    const [x1, y1] = toScreen(pushed(camera, 33, -21, plate, room), room, [10, 10]);
    expect(x1 - x0).toBeCloseTo(33, 9);
    expect(y1 - y0).toBeCloseTo(-21, 9);
  });

  it('never takes the piece further than a quarter of the room from the middle', () => {
    const far = fc.integer({ min: -9, max: 9 }).map((n) => n * 1e5);
    fc.assert(
      fc.property(boxes, rooms, number(0.5, 30), far, far, (box, r, factor, dx, dy) => {
        const near = zoomed(fitted(box, r), factor, [0, 0], box, r);
        const away = pushed(near, dx, dy, box, r);
        const at = corners(box).map((p) => toScreen(away, r, p));
        const [xs, ys] = [at.map((p) => p[0]), at.map((p) => p[1])];
        const off = Math.max(
          Math.min(...xs) - 0.75 * r.width,
          0.25 * r.width - Math.max(...xs),
          Math.min(...ys) - 0.75 * r.height,
          0.25 * r.height - Math.max(...ys),
        );
        expect(off).toBeLessThan(1e-6 * near.scale);
        expect(away.scale).toBe(near.scale);
      }),
    );
  });
});
