import { describe, expect, it } from 'vitest';
import { answerer, drawn, measure } from './asking.js';

const CLEARANCE = 0.1;

/** All of the clearance is the pocket's, so that a pocket is that much larger all round than the artwork. */
function recipe(pattern: object, outline: object): string {
  return JSON.stringify({
    name: 'measured',
    outline,
    pattern,
    cutter: { diameter: 3, flute: 16 },
    fit: { clearance: CLEARANCE, from: 'pocket', plug: 'loose' },
    depth: 10,
    woods: { field: 'sugar maple', plug: 'black walnut' },
  });
}

const plate = { shape: 'rectangle', width: 120, height: 60, margin: 5 };

/** One row of discs of 16 mm along the middle. */
const row = recipe({ generator: 'dots', lattice: 'square', size: 16, gap: 40, centre: 'figure' }, plate);

/** Discs of 16 mm in rows and columns 24 mm apart, one of them in the middle. */
const dots = recipe(
  { generator: 'dots', lattice: 'square', size: 16, gap: 8, centre: 'figure' },
  { ...plate, height: 80 },
);

/** What is measured at points of one exact drawing, y down. */
async function measured(text: string, ...at: readonly (readonly [number, number])[]) {
  const a = answerer();
  await drawn(a, text);
  const got = [];
  for (const [x, y] of at) got.push(await measure(a, x, y));
  return got;
}

describe('how wide wood is', () => {
  it('between two discs is what is left of the pitch, wherever it is asked on the line of their middles', async () => {
    const wall = 24 - 16 - 2 * CLEARANCE;
    for (const got of await measured(dots, [12, 0], [10, 0], [-13.5, 0], [24, 12], [0, -12])) {
      expect(got!.width).toBeCloseTo(wall, 9);
      expect(got!.of).toBe('wall of field');
    }
  });

  it('runs from wall to wall, y down', async () => {
    const [got] = await measured(dots, [24, 11]);
    // The nearest wall is that of the disc below, whose middle lies at y 24 on the screen.
    expect(got!.from[0]).toBeCloseTo(24, 9);
    expect(got!.from[1]).toBeCloseTo(8 + CLEARANCE, 9);
    expect(got!.to[1]).toBeCloseTo(24 - 8 - CLEARANCE, 9);
    const [up] = await measured(dots, [24, -11]);
    expect([up!.from[1], up!.to[1]].map((y) => Math.round(y * 1e6) / 1e6)).toEqual([-8.1, -15.9]);
  });

  it('of a disc is its diameter, in the name of its piece and its wood', async () => {
    for (const got of await measured(dots, [3, 1], [24, 2], [-24.5, -0.5])) {
      expect(got!.width).toBeCloseTo(16 + 2 * CLEARANCE, 9);
      expect(got!.of).toMatch(/^dot -?\d,-?\d, black walnut$/);
    }
  });

  it('between a disc and the edge of the face is what is left of it', async () => {
    // One row alone, along the middle of a face 60 mm high.
    const [got] = await measured(row, [0, 20]);
    expect(got!.width).toBeCloseTo(30 - 8 - CLEARANCE, 9);
    expect(got!.to.map((v) => Math.round(v * 1e6) / 1e6)).toEqual([0, 8.1]);
  });

  it('of an edge on its own is the width of the piece', async () => {
    const [got] = await measured(row, [-30, -25]);
    expect(got!.width).toBeCloseTo(60, 9);
  });

  it('of a straight strip is the strip, of what is beside it what the margin and the strip leave', async () => {
    // A frame 6 mm wide, 5 mm in from the edge: on the screen its lower side runs from 19 to 25.
    const text = recipe({ generator: 'panel', width: 6 }, plate);
    const [strip, rim, middle] = await measured(text, [7, 21], [7, 27.5], [3, 17]);
    expect(strip!.width).toBeCloseTo(6 + 2 * CLEARANCE, 9);
    expect(strip!.of).toBe('panel, black walnut');
    expect(strip!.from[1]).toBeCloseTo(19 - CLEARANCE, 9);
    expect(rim!.width).toBeCloseTo(5 - CLEARANCE, 9);
    expect(rim!.of).toBe('wall of field');
    expect(middle!.width).toBeCloseTo(2 * (19 - CLEARANCE), 9);
  });

  it('is not told off the face, on a wall, or before anything is drawn exactly', async () => {
    expect(await measured(dots, [60.5, 0], [0, -40.5], [1e6, 1e6])).toEqual([null, null, null]);
    expect(await measured(dots, [8 + CLEARANCE, 0])).toEqual([null]);
    // The opening of a ring lies between walls, and is no wood.
    const ring = recipe(
      { generator: 'panel', width: 6 },
      { shape: 'ring', diameter: 160, bore: 80, margin: 5 },
    );
    const [opening, wood] = await measured(ring, [3, 2], [0, 60]);
    expect(opening).toBeNull();
    expect(wood).not.toBeNull();
    expect(await measure(answerer(), 0, 0)).toBeNull();
    const a = answerer();
    await drawn(a, dots, false);
    expect(await measure(a, 0, 0)).toBeNull();
  });
});
