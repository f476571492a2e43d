import { describe, expect, it } from 'vitest';
import { build } from '../../src/build.js';
import type { Finding } from '../../src/inspect/finding.js';
import { readRecipe } from '../../src/recipe/read.js';
import { assets } from '../support/artwork.js';

/** A tube from 100 to 80 mm across out of a square box of upright staves: its depths are circles' sagittas. */
const found = (more: object = {}, bowl: object = {}): readonly Finding[] => {
  const recipe = {
    name: 'tube',
    bowl: {
      sides: 4,
      height: 80,
      floor: 0,
      over: 2,
      under: 1,
      angleError: 0,
      outside: { shape: 'straight', bottom: 100, top: 100 },
      inside: { shape: 'straight', bottom: 80, top: 80 },
      ...bowl,
    },
    outline: { margin: 8 },
    pattern: { generator: 'panel', within: { shape: 'rectangle', width: 30, height: 40 } },
    cutter: { diameter: 3, flute: 40 },
    fit: { glueGap: 0.5 },
    depth: 16,
    skin: 1,
    ...more,
  };
  return build(readRecipe(JSON.stringify(recipe), 'tube'), assets).findings;
};
const one = (all: readonly Finding[], code: string): Finding | undefined => all.find((f) => f.code === code);

describe('a figure that does not show through', () => {
  it('is told with the depth that would do: what the inside lies deep at the figure’s edge, and the glue gap', () => {
    const shallow = one(found({ depth: 13 }), 'not-through')!;
    const deep = 52 - Math.sqrt(40 * 40 - 15 * 15);
    expect(shallow.severity).toBe('warn');
    expect(shallow.numbers.needed).toBeCloseTo(deep + 0.5, 3);
    expect(shallow.numbers.short).toBeCloseTo(deep - 12.5, 3);
    expect(shallow.do).toContain('inside');
    expect(one(found({ depth: 15.5 }), 'not-through')).toBeUndefined();
  });
});

describe('a figure beside its mirror image', () => {
  it('is told where letters would read backwards, and not where it is alike', () => {
    expect(one(found(), 'mirrored-inside')).toBeUndefined();
    const letters = found({ pattern: { generator: 'lettering', text: 'F', height: 25 } });
    expect(one(letters, 'mirrored-inside')!.numbers.differs).toBeGreaterThan(0.1);
  });

  it('moves up a sloping wall, and not an upright one', () => {
    expect(one(found(), 'moved-inside')?.numbers.rise ?? 0).toBeCloseTo(0, 6);
    const sloping = found(
      {},
      {
        slope: 60,
        sides: 8,
        outside: { shape: 'straight', bottom: 100, top: 192.376 },
        inside: undefined,
        wall: 10,
      },
    );
    // Ten millimetres level are 10 sin 60 square to the face, and rise by cos 60 of that; more at the sides.
    expect(one(sloping, 'moved-inside')!.numbers.rise).toBeGreaterThan(
      10 * Math.sin(Math.PI / 3) * 0.5 - 0.01,
    );
  });
});

describe('the joints', () => {
  it('gape by the sum of their errors over the thickness', () => {
    expect(one(found(), 'last-joint')).toBeUndefined();
    const { numbers } = one(found({}, { angleError: 0.5 }), 'last-joint')!;
    // Eight joint faces at half a degree; the staves are as thick as the wall needs, in whole millimetres.
    expect(numbers.gap).toBeCloseTo(Math.ceil(52 - 40 * Math.SQRT1_2 + 1) * Math.tan((4 * Math.PI) / 180), 6);
  });

  it('want blocks where the wall leaves the staves', () => {
    expect(one(found(), 'filler-blocks')).toBeUndefined();
    const { numbers } = one(found({}, { thickness: 20, fillers: true }), 'filler-blocks')!;
    expect(numbers.missing).toBeCloseTo(52 - 40 * Math.SQRT1_2 + 1 - 20, 3);
  });
});

describe('the machine', () => {
  const cutter = { diameter: 3, flute: 40, stickout: 45 };

  it('has to pass the shell under its bridge, with board, cutter and air', () => {
    const needs = 80 + 12 + 45 + 5;
    expect(
      one(found({ cutter, machine: { bridge: needs - 0.1 } }), 'vessel-under-bridge')!.numbers.high,
    ).toBe(needs);
    expect(one(found({ cutter, machine: { bridge: needs } }), 'vessel-under-bridge')).toBeUndefined();
  });

  it('has to lift the tip over the rim', () => {
    expect(one(found({ machine: { lift: 84.9 } }), 'vessel-short-lift')!.numbers.needed).toBe(85);
    expect(one(found({ machine: { lift: 85 } }), 'vessel-short-lift')).toBeUndefined();
  });

  it('puts its nut into a mouth only where there is room for it', () => {
    // The inside is 80 deep and the cutter stands out 45: the nut goes 35 into a mouth of 80, with 5 mm on each side.
    expect(one(found({ cutter, machine: { collet: 70.1 } }), 'collet-in-mouth')!.numbers).toMatchObject({
      room: 80,
      deep: 80,
    });
    expect(one(found({ cutter, machine: { collet: 70 } }), 'collet-in-mouth')).toBeUndefined();
    expect(
      one(found({ cutter: { ...cutter, stickout: 80 }, machine: { collet: 79 } }), 'collet-in-mouth'),
    ).toBeUndefined();
  });

  it('looks at the mouth only as deep as the nut goes in', () => {
    const cone = {
      outside: { shape: 'straight', bottom: 100, top: 120 },
      inside: { shape: 'straight', bottom: 40, top: 90 },
    };
    // 35 below the rim it is 40 + 50 * 45 / 80 = 68.125 wide, and 40 at the floor.
    const about = (collet: number) =>
      one(found({ cutter, machine: { collet }, depth: 30 }, cone), 'collet-in-mouth');
    expect(about(58.1)).toBeUndefined();
    expect(about(58.2)!.numbers.room).toBeCloseTo(68.125, 3);
  });

  it('carves the inside with a ball no rounder than the profile and the round of the wall', () => {
    // Sagitta 10 over 80: a radius of 85 in the profile, more than the 40 of the narrowest round.
    const bellied = {
      outside: { shape: 'straight', bottom: 120, top: 120 },
      inside: { shape: 'arc', bottom: 80, top: 80, belly: 10 },
    };
    const about = (ball: number): Finding | undefined =>
      one(found({}, { ...bellied, ball }), 'ball-too-large');
    expect(about(60)).toBeUndefined();
    const tight = {
      outside: { shape: 'straight', bottom: 120, top: 120 },
      inside: { shape: 'straight', bottom: 40, top: 40 },
    };
    expect(one(found({ depth: 30 }, { ...tight, ball: 41 }), 'ball-too-large')!.numbers.least).toBeCloseTo(
      20,
      6,
    );
    expect(one(found({ depth: 30 }, { ...tight, ball: 40 }), 'ball-too-large')).toBeUndefined();
  });
});
