import { describe, expect, it, test } from 'vitest';
import { arc, straight } from '../../src/bowl/profile.js';
import { blankOf, faceAt, ringAt, shellVolume, turnedVolume, woodUsed } from '../../src/bowl/shell.js';
import type { Stave } from '../../src/bowl/stave.js';

const stave = (sides: number, slope: number, apothem: number, thickness: number): Stave => ({
  sides,
  slope: (slope * Math.PI) / 180,
  apothem,
  thickness,
});

describe('the shell', () => {
  it('of an upright square box is a square tube', () => {
    const box = stave(4, 90, 50, 20);
    expect(ringAt(box, 10)).toBeCloseTo(100 * 100 - 60 * 60, 6);
    expect(shellVolume(box, 80)).toBeCloseTo((100 * 100 - 60 * 60) * 80, 3);
  });

  // Frustum of a pyramid: h (A + B + sqrt(A B)) / 3 (Euclid XII; Heron, Metrica II).
  test.each([
    [6, 60, 60, 18, 70],
    [12, 75, 70, 25, 110],
    [24, 35, 90, 30, 40],
  ])('of %s sides at %s degrees is one frustum less another', (sides, slope, apothem, thickness, height) => {
    const s = stave(sides, slope, apothem, thickness);
    const frustum = (a: number): number => {
      const k = sides * Math.tan(Math.PI / sides);
      const b = a + height / Math.tan((slope * Math.PI) / 180);
      return (height * k * (a * a + b * b + a * b)) / 3;
    };
    const inner = apothem - thickness / Math.sin((slope * Math.PI) / 180);
    expect(shellVolume(s, height)).toBeCloseTo(frustum(apothem) - frustum(inner), 2);
  });

  it('ends in a point where the staves meet within: no wood is counted twice', () => {
    const s = stave(6, 45, 10, 30);
    const k = 6 * Math.tan(Math.PI / 6);
    // The inner pyramid has its tip at a + z - t sqrt 2 = 0.
    const tip = 30 * Math.SQRT2 - 10;
    expect(shellVolume(s, 60)).toBeCloseTo((k * (70 ** 3 - 10 ** 3)) / 3 - (k * (60 - tip) ** 3) / 3, 2);
  });
});

describe('turned volumes', () => {
  it('are a cone’s and a ball’s', () => {
    expect(turnedVolume(straight(0, 60, 0, 30))).toBeCloseTo((Math.PI * 30 * 30 * 60) / 3, 4);
    // A zone of a ball of radius 85: pi h (3 a^2 + 3 b^2 + h^2) / 6 for the segment beyond radii a and b.
    const zone = arc(0, 80, 75, 75, 10);
    const exact = (Math.PI * 80 * (3 * 75 ** 2 + 3 * 75 ** 2 + 80 ** 2)) / 6;
    // That is the zone of a ball about the axis; ours has its centre on it where the belly is 85 - 75.
    expect(zone.radius(40)).toBeCloseTo(85, 9);
    expect(turnedVolume(zone)).toBeCloseTo(exact, 0);
  });
});

describe('a stave', () => {
  it('is as wide as the polygon’s side, outside and inside, and as long as its slope', () => {
    const s = stave(6, 60, 60, 18);
    const out = faceAt(s, 0, 70, 0);
    const within = faceAt(s, 0, 70, 18);
    const side = (a: number): number => 2 * a * Math.tan(Math.PI / 6);
    expect(out.bottom).toBeCloseTo(side(60), 9);
    expect(out.top).toBeCloseTo(side(60 + 70 / Math.sqrt(3)), 9);
    expect(out.length).toBeCloseTo(70 / Math.sin(Math.PI / 3), 9);
    expect(within.bottom).toBeCloseTo(side(60 - 18 / Math.sin(Math.PI / 3)), 9);
  });

  it('comes from a board that holds it, level ends and all', () => {
    const s = stave(6, 60, 60, 18);
    const { length, width, thickness } = blankOf(s, 70, 5);
    expect(length).toBeCloseTo(70 / Math.sin(Math.PI / 3) + 18 / Math.tan(Math.PI / 3) + 10, 9);
    expect(width).toBeGreaterThan(faceAt(s, 0, 70, 0).top);
    expect(thickness).toBe(18);
  });

  it('saves wood against a block, and says how much each way takes', () => {
    const s = stave(12, 72, 62, 25);
    const used = woodUsed(s, 100, 5, straight(0, 100, 60, 90), straight(8, 100, 50, 82));
    expect(used.block).toBeCloseTo(180 * 180 * 100, 6);
    expect(used.staves).toBeGreaterThan(shellVolume(s, 100));
    expect(used.staves).toBeLessThan(used.block);
    expect(used.rings).toBeLessThan(used.block);
    expect(used.finished).toBeLessThan(used.staves);
    expect(used.finished).toBeCloseTo(
      (Math.PI * 100 * (60 ** 2 + 60 * 90 + 90 ** 2)) / 3 -
        (Math.PI * 92 * (50 ** 2 + 50 * 82 + 82 ** 2)) / 3,
      0,
    );
  });
});
