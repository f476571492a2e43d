import { describe, expect, it } from 'vitest';
import { along, halfWidth, type Limb, mirrored, outlinesOf } from '../../../src/generators/fields/limb.js';
import { Room } from '../../../src/generators/fields/room.js';
import { offset } from '../../../src/geometry/offset.js';
import { area, bounds, contains, contourArea, polygon, type Region } from '../../../src/geometry/region.js';
import { mirrorX } from '../../../src/geometry/transform.js';
import { Refusal } from '../../../src/schema/fault.js';
import type { Values } from '../../../src/schema/parameter.js';
import { artworkWith, expectSound, outlineWith } from '../../support/artwork.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });
const stave = outlineWith('stave', { bottom: 70, top: 100, height: 150, margin: 6 });
const limb: Limb = {
  x: 1, y: 2, angle: 0.7, bend: 0.9, length: 30, kind: 'stem', width: 6, tip: 4, parent: null,
}; // biome-ignore format: a limb

describe('limbs', () => {
  it('run along an arc of their length', () => {
    let length = 0;
    for (let k = 0; k < 2000; k++) {
      const [ax, ay] = along(limb, k / 2000);
      const [bx, by] = along(limb, (k + 1) / 2000);
      length += Math.hypot(bx - ax, by - ay);
    }
    expect(length).toBeCloseTo(30, 4);
    // A turn of 0.9 over 30 mm: chord 2 r sin(0.45) with r = 30 / 0.9.
    const [x, y] = along(limb, 1);
    expect(Math.hypot(x - 1, y - 2)).toBeCloseTo((60 / 0.9) * Math.sin(0.45), 9);
  });

  /** Two circular segments on one chord c with sagitta w / 2 (a lens): area by r^2 (a - sin a) / 2 each. */
  it('straight leaves are lenses of the width asked', () => {
    const [lens] = outlinesOf({ ...limb, kind: 'leaf', bend: 0, width: 9 });
    const r = (15 * 15 + 4.5 * 4.5) / 9;
    const a = 2 * Math.asin(15 / r);
    expect(contourArea(lens!)).toBeCloseTo(r * r * (a - Math.sin(a)), 6);
    expect(halfWidth({ ...limb, kind: 'leaf', width: 9 }, 0.5)).toBeCloseTo(4.5, 9);
  });

  it('mirror about an upright line', () => {
    const image = mirrored(limb, 5, null);
    const [x, y] = along(limb, 0.6);
    const [u, v] = along(image, 0.6);
    expect([u, v]).toEqual([expect.closeTo(10 - x, 9), expect.closeTo(y, 9)]);
  });
});

describe('room', () => {
  const field: Region = { contours: [polygon([[-50, -50], [50, -50], [50, 50], [-50, 50]])] }; // biome-ignore format: a square
  const straight = (x: number, y: number): Limb => ({
    ...limb, x, y, angle: Math.PI / 2, bend: 0, width: 4, tip: 4,
  }); // biome-ignore format: a limb

  it('is taken by a limb and the gap round it', () => {
    const room = new Room(field, 5);
    room.place(straight(0, 0));
    expect(room.has(straight(8.99, 0), 0)).toBe(false);
    expect(room.has(straight(9.01, 0), 0)).toBe(true);
    expect(room.has({ ...straight(2, 2), parent: null, length: 10 }, 100)).toBe(true);
  });

  it('ends at the edge of the field', () => {
    const room = new Room(field, 5);
    expect(room.has(straight(47.9, 0), 0)).toBe(true);
    expect(room.has(straight(48.1, 0), 0)).toBe(false);
    expect(room.has(straight(0, 30), 0)).toBe(false);
  });
});

describe('a plant', () => {
  const forms: Values[] = [
    {},
    { form: 'tree' },
    { depth: 2, nodes: 2 },
    { shoots: 'alternate' },
    { leaf: 0, depth: 2 },
    { wild: 0.7 },
  ];

  it.each(forms)('%o is one piece inside the margin, nowhere thinner than its least width', (given) => {
    for (const outline of [lid, stave]) {
      const { pieces } = artworkWith('plant', given, outline);
      expect(pieces).toHaveLength(1);
      const { region } = pieces[0]!;
      expectSound(region);
      for (const c of region.contours)
        for (const e of c) expect(contains(grown(outline.inner), e.x0, e.y0)).toBe(true);
      // Cut down by 0.44 of the least width and grown again it is the same: no limb is thinner, no tip sharper.
      const opened = offset(offset(region, -0.44 * 4.2), 0.44 * 4.2);
      expect(area(region) - area(opened)).toBeLessThan(0.001 * area(region));
    }
  });

  it('has two sides alike without chance, and unlike with it', () => {
    const difference = (wild: number): number => {
      const { region } = artworkWith('plant', { wild, depth: 2, nodes: 2 }, stave).pieces[0]!;
      return unlike(region, mirrorX(region));
    };
    expect(difference(0)).toBe(0);
    expect(difference(0.6)).toBeGreaterThan(20);
  });

  it('grows from the foot of the outline and fills its height', () => {
    const b = bounds(artworkWith('plant', {}, stave).pieces[0]!.region.contours);
    expect(b.minY).toBeLessThan(-69 + 4);
    expect(b.maxY).toBeGreaterThan(69 - 6);
  });

  it('draws alike for a seed and otherwise for another, once chance plays', () => {
    const drawn = (seed: number, wild: number): string =>
      JSON.stringify(artworkWith('plant', { seed, wild }, lid));
    expect(drawn(3, 0.5)).toBe(drawn(3, 0.5));
    expect(drawn(3, 0.5)).not.toBe(drawn(4, 0.5));
    expect(drawn(3, 0)).toBe(drawn(4, 0));
  });

  it('refuses thickets and stems without room', () => {
    expect(() => artworkWith('plant', { depth: 6, nodes: 9 }, lid)).toThrow(
      /pattern\.depth: 6 makes .* use 2/,
    );
    expect(() => artworkWith('plant', { least: 60 }, lid)).toThrow(Refusal);
  });
});

function grown(region: Region): Region {
  return offset(region, 0.001);
}

/** Places of a grid that one region has and the other has not. Points near an edge may go either way. */
function unlike(a: Region, b: Region): number {
  const near = offset(a, 0.01);
  const far = offset(a, -0.01);
  let count = 0;
  for (let x = -50; x < 50; x += 1.3)
    for (let y = -70; y < 70; y += 1.3) {
      const inB = contains(b, x, y);
      if (inB ? !contains(near, x, y) : contains(far, x, y)) count++;
    }
  return count;
}
