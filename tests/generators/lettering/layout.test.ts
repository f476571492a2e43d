import { describe, expect, it } from 'vitest';
import { circleBase } from '../../../src/generators/lettering/bases.js';
import { along } from '../../../src/generators/lettering/gap.js';
import { bounds, distanceToBoundary, flatten, type Region } from '../../../src/geometry/region.js';
import { CUT, distanceBetween, outlineWith, pokesOut } from '../../support/artwork.js';
import { HEBREW, lettered, NASKH, said } from './support.js';

const board = outlineWith('rectangle', { width: 300, height: 180, corner: 20, margin: 10 });
const disc = outlineWith('circle', { diameter: 220, margin: 8 });
const ring = outlineWith('ring', { diameter: 260, bore: 150, margin: 6 });
const SMALL = { r: 0.6, widen: false };

const whole = (pieces: readonly { region: Region }[]): Region => ({
  contours: pieces.flatMap((p) => p.region.contours),
});
const middle = (region: Region): [number, number] => {
  const b = bounds(region.contours);
  return [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];
};

/** The least distance between any two pieces, measured point by point. */
function least(pieces: readonly { region: Region }[]): number {
  let best = Number.POSITIVE_INFINITY;
  pieces.forEach((p, i) => {
    for (const q of pieces.slice(i + 1)) {
      const [a, b] = [bounds(p.region.contours), bounds(q.region.contours)];
      if (a.minX - b.maxX > 4 || b.minX - a.maxX > 4 || a.minY - b.maxY > 4 || b.minY - a.maxY > 4) continue;
      best = Math.min(best, distanceBetween(p.region, q.region));
    }
  });
  return best;
}

describe('base lines', () => {
  it.each(['outside', 'inside'] as const)(
    '%s a circle: every letter stands on the radius, upright to it',
    (side) => {
      const base = circleBase({ centre: [3, -4], radius: 50, middle: Math.PI / 2, side }, 1);
      for (const s of [-60, -7.5, 0, 20, 61]) {
        const { x, y, turn } = base.pose(0, s);
        const [dx, dy] = [x - 3, y + 4];
        expect(Math.hypot(dx, dy)).toBeCloseTo(50, 9);
        // The letter's up is (-sin turn, cos turn): away from the centre outside, towards it inside.
        const up = (-Math.sin(turn) * dx + Math.cos(turn) * dy) / 50;
        expect(up).toBeCloseTo(side === 'outside' ? 1 : -1, 9);
      }
      // Read clockwise outside: further along is further to the right at the top.
      expect(base.pose(0, 5).x).toBeCloseTo(3 + 50 * Math.sin(0.1) * (side === 'outside' ? 1 : -1), 9);
    },
  );

  it('bend as they are seen from a letter: s along the curve, the right way', () => {
    const p = along(1 / 50, 10);
    expect([p.x, p.y, p.turn]).toEqual([
      expect.closeTo(50 * Math.sin(0.2), 12),
      expect.closeTo(50 * (1 - Math.cos(0.2)), 12),
      0.2,
    ]);
  });
});

describe('along an arc', () => {
  it('letters o lie on one circle, reading clockwise over the top', () => {
    const { pieces } = lettered({ text: 'ooooo', height: 14, along: 'arc', radius: 70 }, disc, SMALL);
    const radii = pieces.map((p) => Math.hypot(...middle(p.region)));
    expect(Math.max(...radii) - Math.min(...radii)).toBeLessThan(0.05);
    const xs = pieces.map((p) => middle(p.region)[0]);
    expect(xs).toEqual([...xs].sort((a, b) => a - b));
    expect(xs[2]).toBeCloseTo(0, 2);
    expect(middle(pieces[2].region)[1]).toBeGreaterThan(70);
  });

  it('from inside, read along the bottom', () => {
    const { pieces } = lettered(
      { text: 'ooo', height: 14, along: 'arc', side: 'inside', radius: 70 },
      disc,
      SMALL,
    );
    const at = pieces.map((p) => middle(p.region));
    expect(at[0]![0]).toBeLessThan(at[2]![0]);
    expect(at[1]![1]).toBeLessThan(-60);
    expect(at[1]![1]).toBeGreaterThan(-70);
  });

  it('radius 0 brings the letters to the edge, and more lines lie within', () => {
    const { pieces } = lettered({ text: 'Rowan\nTree', height: 16, along: 'arc' }, disc, SMALL);
    const far = Math.max(
      ...whole(pieces)
        .contours.flatMap((c) => flatten(c, 0.001))
        .map((p) => Math.hypot(...p)),
    );
    expect(far).toBeLessThanOrEqual(102);
    expect(far).toBeGreaterThan(101.99);
    expect(Math.hypot(...middle(pieces[7]!.region))).toBeLessThan(
      Math.hypot(...middle(pieces[2]!.region)) - 20,
    );
  });
});

describe('along the edge', () => {
  it('of a ring: the text repeated evenly round', () => {
    const { pieces } = lettered({ text: 'oak', height: 18, along: 'band', repeats: 3 }, ring, SMALL);
    expect(pieces.map((p) => p.name).slice(0, 4)).toEqual([
      "letter 1 'o' in 'oak' (text 1)",
      "letter 2 'a' in 'oak' (text 1)",
      "letter 3 'k' in 'oak' (text 1)",
      "letter 1 'o' in 'oak' (text 2)",
    ]);
    const [x, y] = middle(pieces[0]!.region);
    const [u, v] = middle(pieces[3]!.region);
    // The o is round enough that its box turns with it.
    const turn = Math.atan2(x * v - y * u, x * u + y * v);
    expect(turn).toBeCloseTo((-2 * Math.PI) / 3, 2);
    expect(pokesOut(whole(pieces), ring.inner)).toBe(0);
  });

  it('of a rectangle: a line to a side, clear of the corners, tops out', () => {
    const { pieces } = lettered(
      { text: 'top oo\nright oo\nbottom oo\nleft oo', height: 12, along: 'band' },
      board,
      SMALL,
    );
    expect(pokesOut(whole(pieces), board.inner)).toBe(0);
    const [, , first] = pieces;
    expect(middle(first!.region)[1]).toBeGreaterThan(60);
    const right = pieces.filter((p) => p.name.includes("'right'")).map((p) => middle(p.region));
    expect(right.every(([x]) => x > 120)).toBe(true);
    // Read clockwise: downwards on the right.
    expect(right[0]![1]).toBeGreaterThan(right.at(-1)![1]);
    expect(least(pieces)).toBeGreaterThan(2 * SMALL.r - 1e-3);
  });

  it('of a rectangle: a line too long for its side goes on after a space', () => {
    const text = 'Walnut ash maple cherry and elm';
    const { pieces } = lettered({ text, height: 18, along: 'band' }, board, SMALL);
    const on = pieces.map(({ region }) => {
      const [x, y] = middle(region);
      return y > 62 ? 'top' : y < -62 ? 'bottom' : x > 110 ? 'right' : 'elsewhere';
    });
    expect([...new Set(on)]).toEqual(['top', 'right', 'bottom']);
    pieces.forEach((p, i) => {
      if (i === 0 || on[i] === on[i - 1]) return;
      expect(text[Number(/\d+/.exec(p.name)![0]) - 2]).toBe(' ');
    });
  });

  it('of a stave: upright, on the circle that meets both joints squarely', () => {
    const stave = outlineWith('stave', { bottom: 150, top: 200, height: 120, margin: 6 });
    const { pieces } = lettered({ text: 'oooooo', height: 18, along: 'band' }, stave, SMALL);
    // The joints' lines meet where the half width is 0: 87.5 at the middle, growing by 25 / 120 a mm.
    const apex = -87.5 / (25 / 120);
    const radii = pieces.map((p) => {
      const [x, y] = middle(p.region);
      return Math.hypot(x, y - apex);
    });
    expect(Math.max(...radii) - Math.min(...radii)).toBeLessThan(0.05);
  });
});

describe('height "fit"', () => {
  it.each([
    ['varela-round', 'Orchard\nHouse', {}],
    [NASKH, 'خبز وزيت', {}],
    [HEBREW, 'שלום', {}],
    ['varela-round', 'Orchard House', { along: 'arc', radius: 400 }],
  ])('%s: touches the inner outline within 0.2 mm and stays inside', (font, text, more) => {
    const { pieces } = lettered({ text, font, height: 'fit', ...more }, board, SMALL);
    expect(pokesOut(whole(pieces), board.inner)).toBe(0);
    const points = whole(pieces).contours.flatMap((c) => flatten(c, 0.01));
    const off = Math.min(...points.map(([x, y]) => distanceToBoundary(board.inner, x, y)));
    expect(off).toBeLessThan(0.2);
  });
});

describe('spacing', () => {
  it.each([
    ['AVATAR Ty. "To"', 14, {}],
    ['WAVE\nFjord gypsy\nTall', 14, { leading: 1.1 }],
    ['Maple', 12, { along: 'arc', radius: 30, side: 'inside' }],
    ['Tally', 14, { tracking: -6 }],
    ['fillet', 16, { joined: 'apart', font: 'pacifico', tracking: 0 }],
  ])('%j keeps the cutter its room between all pieces', (text, height, more) => {
    const art = lettered({ text, height, tracking: 0, ...more }, board);
    expect(least(art.pieces)).toBeGreaterThanOrEqual(2 * CUT.r);
    expect(art.remarks?.map((r) => r.code)).toContain('tracking-opened');
  });

  it('opens no more than is needed: the nearest pair is just clear', () => {
    const art = lettered({ text: 'AV', height: 9, tracking: 0 }, board);
    expect(least(art.pieces)).toBeLessThan(2 * CUT.r + 0.02);
    const far = lettered({ text: 'AV', height: 9, tracking: 20 }, board);
    expect(far.remarks).toEqual([]);
  });

  it('opens lines and says to what leading', () => {
    const art = lettered({ text: 'gyp\nHHH', height: 20, leading: 1, tracking: 3 }, board);
    const remark = art.remarks?.find((r) => r.code === 'leading-opened');
    expect(remark?.numbers.leading).toBeGreaterThan(1.2);
    expect(least(art.pieces)).toBeGreaterThanOrEqual(2 * CUT.r);
    const again = lettered(
      { text: 'gyp\nHHH', height: 20, leading: remark!.numbers.leading, tracking: 3 },
      board,
    );
    expect(again.remarks?.some((r) => r.code === 'leading-opened')).toBe(false);
  });

  it('refuses what no longer fits and names a height that does', () => {
    const text = said(() => lettered({ text: 'Rowan House Bakery', height: 60 }, board));
    const most = Number(/use ([\d.]+) mm with the same tracking, or "fit"$/.exec(text)?.[1]);
    expect(lettered({ text: 'Rowan House Bakery', height: most }, board).pieces).toHaveLength(16);
    expect(said(() => lettered({ text: 'Rowan House Bakery', height: most + 0.2 }, board))).toMatch(
      /too large/,
    );
  });
});
