import { describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import { alongBoard, type LayItem, type Layout, layOut, leastBoard } from '../../src/fit/layout.js';
import { type PackBox, pack } from '../../src/fit/pack.js';
import { polygon } from '../../src/geometry/region.js';
import type { Job } from '../../src/output/job.js';
import { readRecipe } from '../../src/recipe/read.js';
import { BadInput, Refusal } from '../../src/schema/fault.js';
import { exampleText } from '../recipe/example.js';
import { seeded } from '../support/random.js';
import { boundaryDistance, differenceArea, polygonArea, type Ring } from '../support/reference.js';
import { ringsOf } from '../support/rings.js';

const job = (changes: Record<string, unknown> = {}, spoiled?: number[]): Job =>
  build(
    readRecipe(exampleText(changes), 'x.json'),
    { fonts: new Map(), drawings: new Map() },
    spoiled ? { spoiled } : {},
  );
const BOARD = { boards: { plugWidth: 100, plugLength: 220 } };

describe('pack', () => {
  const random = seeded(11);
  const boxes = (n: number): PackBox[] =>
    Array.from({ length: n }, () => ({ along: 5 + 60 * random(), across: 5 + 50 * random() }));

  it('lays boxes without overlap inside the strip', () => {
    for (let trial = 0; trial < 60; trial++) {
      const list = boxes(1 + Math.floor(40 * random()));
      const { places, used, count } = pack(list, 120);
      expect(count).toBe(list.length);
      places.forEach((p, i) => {
        const [a, b] = [p!, list[i]!];
        expect(a.x).toBeGreaterThanOrEqual(0);
        expect(a.y).toBeGreaterThanOrEqual(0);
        expect(a.y + b.across).toBeLessThanOrEqual(120 + 1e-6);
        expect(a.x + b.along).toBeLessThanOrEqual(used + 1e-9);
        places.slice(i + 1).forEach((q, k) => {
          const o = list[i + 1 + k]!;
          const apart =
            q!.x >= a.x + b.along - 1e-6 ||
            a.x >= q!.x + o.along - 1e-6 ||
            q!.y >= a.y + b.across - 1e-6 ||
            a.y >= q!.y + o.across - 1e-6;
          expect(apart).toBe(true);
        });
      });
    }
  });

  it('stays within a third of the area bound on 40 boxes (no packing is shorter than area over width)', () => {
    for (let trial = 0; trial < 20; trial++) {
      const list = boxes(40);
      const bound = list.reduce((sum, b) => sum + b.along * b.across, 0) / 120;
      expect(pack(list, 120).used).toBeLessThan(bound * 1.34);
    }
  });

  it('finds the perfect packing of equal boxes, and places as many as a short strip holds', () => {
    const equal = Array.from({ length: 12 }, () => ({ along: 20, across: 30 }));
    expect(pack(equal, 120).used).toBeCloseTo(60, 9);
    expect(pack(equal, 120, 41)).toMatchObject({ count: 8, used: 40 });
    expect(pack(equal, 29).count).toBe(0);
  });
});

describe('a layout of plug parts', () => {
  const made = job(BOARD);
  const layout = made.layouts.plug!;

  it('holds every part once, its grain along the board', () => {
    expect(layout.laid.map((l) => l.item.number)).toEqual(made.islands.map((i) => i.number));
    // The example's plug grain is at 90 degrees: a vector along it must come to lie along x.
    const { c, s } = layout.laid[0]!.turn;
    expect([0 * c - 1 * s, 0 * s + 1 * c].map(Math.abs)).toEqual([1, 0]);
    layout.laid.forEach((l, k) => {
      const back = l.contours.map((contour) => contour.map((e) => e));
      const [have, want] = [ringsOf(back, 0.001), ringsOf(made.islands[k]!.plug, 0.001)];
      // Turned back by a quarter by hand, and compared by Clipper2.
      const unturned = have.map(
        (ring): Ring =>
          ring.map(([x, y]) => [(x - l.dx) * c + (y - l.dy) * s, -(x - l.dx) * s + (y - l.dy) * c]),
      );
      expect(differenceArea(unturned, want)).toBeLessThan(1e-3);
    });
  });

  it('keeps neighbours and edges the cutter and 2 mm apart', () => {
    expect(layout.spacing).toBeCloseTo(3.19 + 2, 9);
    const rings = layout.laid.map((l) => ringsOf(l.contours, 0.001));
    rings.forEach((a, i) => {
      for (const ring of a)
        for (const [x, y] of ring) {
          expect(110 - Math.abs(x)).toBeGreaterThan(layout.spacing - 1e-3);
          expect(50 - Math.abs(y)).toBeGreaterThan(layout.spacing - 1e-3);
        }
      rings.slice(i + 1).forEach((b) => {
        const near = Math.min(
          ...a.flat().map(([x, y]) => Math.min(...b.flat().map(([u, v]) => Math.hypot(u - x, v - y)))),
        );
        expect(near).toBeGreaterThan(layout.spacing - 1e-3);
      });
    });
  });

  it('says what is left and what is used', () => {
    const area = layout.laid.reduce((sum, l) => sum + polygonArea(ringsOf(l.contours, 0.0001)), 0);
    expect(layout.yield).toBeCloseTo((100 * area) / (220 * 100), 3);
    const end = Math.max(
      ...layout.laid.flatMap((l) =>
        ringsOf(l.contours, 0.001)
          .flat()
          .map(([x]) => x),
      ),
    );
    expect(layout.offcut!.width).toBe(100);
    expect(220 - layout.offcut!.length).toBeCloseTo(end + 110 + layout.spacing, 3);
  });

  it('repeats the parts for several pieces', () => {
    const two = job({ boards: { plugWidth: 100, plugLength: 500, pieces: 2 } }).layouts.plug!;
    expect(two.laid.map((l) => l.item.number).sort((a, b) => a - b)).toEqual(
      made.islands.flatMap((i) => [i.number, i.number]),
    );
  });

  it('is refused on a board that is too small, with how many fit and what would do', () => {
    const attempt = (width: number, length: number) =>
      job({ boards: { plugWidth: width, plugLength: length } });
    const message = (width: number, length: number): string => {
      try {
        attempt(width, length);
        return '';
      } catch (e) {
        expect(e).toBeInstanceOf(Refusal);
        return (e as Error).message;
      }
    };
    const short = message(100, 130);
    expect(short).toMatch(
      /holds \d+ of the 14 parts, laid 5\.19 mm apart; use one [\d.]+ mm long and 100 mm wide/,
    );
    const [, length] = /use one ([\d.]+) mm long and ([\d.]+) mm wide/.exec(short)!;
    expect(attempt(100, Number(length)).layouts.plug!.laid.length).toBe(14);
    expect(() => attempt(100, Number(length) - 0.01)).toThrow(Refusal);
    const narrow = message(60, 400);
    const [, long, wide] = /use one ([\d.]+) mm long and ([\d.]+) mm wide/.exec(narrow)!;
    expect(narrow).toMatch(/part 7 needs a width of 94\.22 mm/);
    expect(attempt(Number(wide), Number(long)).layouts.plug!.laid.length).toBe(14);
  });

  it('is given for spoiled parts alone, on as small a board as they need', () => {
    const spoiled = job({}, [3, 12]).layouts.plug!;
    expect(spoiled.asked).toBe(false);
    expect(spoiled.laid.map((l) => l.item.number)).toEqual([3, 12]);
    expect(spoiled.board.length * spoiled.board.width).toBeLessThan(1500);
    for (const side of [spoiled.board.length, spoiled.board.width]) expect(side).toBe(Math.round(side));
    expect(() => job({}, [3, 15])).toThrow(BadInput);
    expect(() => job({}, [3, 15])).toThrow('--parts: there is no part 15: the plug has parts 1 to 14');
    expect(() => job({ 'fit.plug': 'carrier', 'stock.plug': 16 }, [1])).toThrow(
      /--parts: is for a loose plug/,
    );
  });
});

describe('a layout of pockets', () => {
  it('repeats pieces at the pitch of box, cutter and 5 mm', () => {
    const made = job({ boards: { fieldWidth: 230, fieldLength: 340, pieces: 4 } });
    const layout = made.layouts.pocket!;
    expect(made.layouts.plug).toBeNull();
    const pitch = 96 + 3.19 + 5;
    const xs = [...new Set(layout.laid.map((l) => Math.round(l.dx * 1e6) / 1e6))].sort((a, b) => a - b);
    expect(xs.length).toBe(2);
    expect(xs[1]! - xs[0]!).toBeCloseTo(pitch, 6);
    layout.laid.forEach((l) => {
      const back = ringsOf(l.contours, 0.001).map((ring): Ring => ring.map(([x, y]) => [x - l.dx, y - l.dy]));
      expect(boundaryDistance(back, ringsOf(made.pair.pocket.contours, 0.001), 0.5).distance).toBeLessThan(
        1e-6,
      );
    });
  });

  it('is refused on a board that holds fewer, saying how many', () => {
    expect(() => job({ boards: { fieldWidth: 120, fieldLength: 340, pieces: 4 } })).toThrow(
      /holds 3 of the 4 pieces, laid 8\.19 mm apart; use one 424\.95 mm long and 120 mm wide/,
    );
  });
});

describe('boards in a recipe', () => {
  it.each([
    [
      { plugWidth: 100 },
      /boards\.plugLength: is missing: a board needs both; give it too, or leave plugWidth out/,
    ],
    [{ fieldLength: 100 }, /boards\.fieldWidth: is missing/],
    [{ pieces: 3 }, /boards\.pieces: is 3, and there is no board/],
    [{ plugWidth: 1, plugLength: 100 }, /boards\.plugWidth: 1 mm is out of range: 5 mm to 3000 mm/],
    [{ pieces: 0 }, /boards\.pieces: 0 is out of range: 1 to 200/],
  ])('refuses %j', (boards, message) => {
    expect(() => readRecipe(exampleText({ boards }), 'x.json')).toThrow(message);
  });

  it('refuses a plug board for a carrier', () => {
    const changes = { ...BOARD, 'fit.plug': 'carrier', 'stock.plug': 16 };
    expect(() => readRecipe(exampleText(changes), 'x.json')).toThrow(
      /boards\.plugWidth: is for the parts of a loose plug/,
    );
  });
});

describe('grain', () => {
  it.each([
    [0, 0],
    [30, -30],
    [120, 60],
    [-45, 45],
    [180, 0],
    [360, 0],
  ])('at %d degrees is brought along by %d', (grain, turn) => {
    const { c, s } = alongBoard((grain * Math.PI) / 180);
    expect(c).toBeCloseTo(Math.cos((turn * Math.PI) / 180), 12);
    expect(s).toBeCloseTo(Math.sin((turn * Math.PI) / 180), 12);
  });

  it('turns the least board with it', () => {
    const bar = polygon([
      [0, 0],
      [40, 0],
      [40, 10],
      [0, 10],
    ]);
    const item: LayItem = { name: 'part 1', number: 1, index: 0, contours: [bar], around: [bar] };
    const turn = alongBoard(Math.PI / 2);
    const board = leastBoard([item], 5, turn, 1);
    expect(board).toEqual({ length: 20, width: 50 });
    expect((layOut([item], board, 5, turn) as Layout).used).toBeCloseTo(20, 9);
  });
});
