import { derived, length, number, preset, type Section } from './field.js';

/** The machine. */
export const machineSections: readonly Section[] = [
  {
    name: 'machine',
    meaning: 'What the machine can hold; the defaults are stated guesses for a hobby machine: measure yours.',
    fields: [
      preset(
        length(
          'accuracy',
          0,
          1,
          0.05,
          'How far a cut wall may be off its drawing, either way.',
          'walls true to …',
        ),
      ),
      preset(
        length(
          'repeatability',
          0.001,
          1,
          0.02,
          'How nearly the same cut comes out twice.',
          'cuts alike to …',
        ),
      ),
      preset(
        number(
          'sideForce',
          0,
          500,
          10,
          'Side force on the cutter in its light finishing pass, newtons, for the estimates of how it bends: a guess for sharp small cutters.',
          'a side force of … N',
        ),
      ),
      preset(
        number(
          'acceleration',
          1,
          50_000,
          250,
          'How fast it gains speed, mm a second a second: limits the feed in corners.',
          'gaining speed at … mm/s²',
        ),
      ),
      preset(
        length(
          'feed',
          10,
          60_000,
          3000,
          'The fastest it cuts, length a minute.',
          'cutting … a minute at most',
        ),
      ),
      preset(
        number(
          'slowest',
          100,
          60_000,
          10_000,
          'The fewest turns a minute of its spindle.',
          'turning no slower than … rpm',
        ),
      ),
      preset(
        number(
          'fastest',
          100,
          100_000,
          30_000,
          'The most turns a minute of its spindle.',
          'turning no faster than … rpm',
        ),
      ),
      preset(length('collet', 3, 120, 19, 'Outside diameter of the collet nut.', 'a collet nut … across')),
      derived(
        length(
          'bridge',
          5,
          2000,
          80,
          'Clear height between its table and the lowest part of its bridge.',
          '… clear under the bridge',
        ),
        'not looked at',
      ),
      derived(
        length('lift', 5, 2000, 75, 'How far the spindle goes up and down.', 'the spindle rising …'),
        'not looked at',
      ),
      derived(
        length('shoe', 5, 400, 80, 'Width of the dust shoe round the cutter.', 'a dust shoe … wide'),
        'no dust shoe',
      ),
      preset(
        length(
          'shoeAbove',
          0,
          250,
          10,
          "How far the dust shoe's stiff underside is above the cutter's tip.",
          "the shoe … above the cutter's tip",
        ),
      ),
    ],
  },
];
