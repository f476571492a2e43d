import { describe, expect, it } from 'vitest';
import { alike, inRoom } from '../../../src/page/drawing/camera.js';
import type { Box } from '../../../src/page/worker/protocol.js';

describe('boxes', () => {
  const sized = (w: number, h: number, x = 0): Box => ({ minX: x, minY: 0, maxX: x + w, maxY: h });

  it.each([
    [100, 100, true],
    [76, 100, true],
    [74, 100, false],
    [100, 133, true],
    [100, 134, false],
    [133, 76, true],
  ])('of 100 by 100 and %i by %i are alike: %s', (w, h, wanted) => {
    expect(alike(sized(100, 100), sized(w, h, 500))).toBe(wanted);
    expect(alike(sized(w, h), sized(100, 100))).toBe(wanted);
  });

  it('hold a point, or have it too near their edge', () => {
    const camera = { x: 0, y: 0, scale: 10 };
    const small = { width: 200, height: 100 };
    expect(inRoom(camera, small, [0, 0], 24)).toBe(true);
    expect(inRoom(camera, small, [7.6, 0], 24)).toBe(true);
    expect(inRoom(camera, small, [7.7, 0], 24)).toBe(false);
    expect(inRoom(camera, small, [-7.7, 0], 24)).toBe(false);
    expect(inRoom(camera, small, [0, 2.6], 24)).toBe(true);
    expect(inRoom(camera, small, [0, 2.7], 24)).toBe(false);
    expect(inRoom(camera, small, [0, -2.7], 24)).toBe(false);
  });
});
