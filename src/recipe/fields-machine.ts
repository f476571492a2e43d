import { choice, count, derived, flag, length, number, preset, type Section } from './field.js';

/** The machine, how the wood lies on it, and the workshop's times. */
export const machineSections: readonly Section[] = [
  {
    name: 'machine',
    meaning: 'What the machine can hold; the defaults are stated guesses for a hobby machine: measure yours.',
    fields: [
      preset(length('accuracy', 0, 1, 0.05, 'How far a cut wall may be off its drawing, either way.')),
      preset(length('repeatability', 0.001, 1, 0.02, 'How nearly the same cut comes out twice.')),
      preset(
        number(
          'sideForce',
          0,
          500,
          10,
          'Side force on the cutter in its light finishing pass, newtons, for the estimates of how it bends: a guess for sharp small cutters.',
        ),
      ),
      preset(
        number(
          'acceleration',
          1,
          50_000,
          250,
          'How fast it gains speed, mm a second a second: limits the feed in corners.',
        ),
      ),
      preset(length('feed', 10, 60_000, 3000, 'The fastest it cuts, length a minute.')),
      preset(number('slowest', 100, 60_000, 10_000, 'The fewest turns a minute of its spindle.')),
      preset(number('fastest', 100, 100_000, 30_000, 'The most turns a minute of its spindle.')),
      preset(length('collet', 3, 120, 19, 'Outside diameter of the collet nut.')),
      derived(
        length('bridge', 5, 2000, 80, 'Clear height between its table and the lowest part of its bridge.'),
        'not looked at',
      ),
      derived(length('lift', 5, 2000, 75, 'How far the spindle goes up and down.'), 'not looked at'),
      derived(length('shoe', 5, 400, 80, 'Width of the dust shoe round the cutter.'), 'no dust shoe'),
      preset(
        length('shoeAbove', 0, 250, 10, "How far the dust shoe's stiff underside is above the cutter's tip."),
      ),
    ],
  },
  {
    name: 'table',
    meaning: 'How the wood lies on the machine.',
    fields: [
      preset(length('board', 0, 100, 12, 'Thickness of the sacrificial board under the work; 0: none.')),
      preset(length('over', 0, 10, 0.5, 'How far a cut that goes through runs into that board.')),
      preset(
        choice(
          'hold',
          'What holds the work down.',
          ['tape', 'Double-sided tape.'],
          ['clamps', 'Clamps or screws at the edges.'],
          ['vacuum', 'A vacuum table.'],
        ),
      ),
      preset(
        number(
          'tape',
          1,
          1000,
          50,
          'Shear that the tape holds against, kPa: a guess for fresh tape on clean wood; its maker says more.',
        ),
      ),
      preset(length('clamps', 0, 200, 0, 'How far clamps or screws stand above the face; 0: none do.')),
      preset(length('clampsAway', 0, 500, 10, "How far they stay away from the drawing's outline.")),
      derived(
        length('neighbours', 0, 300, 0, 'How far uncut wood beside the piece stands above its face.'),
        'no such wood',
      ),
      derived(
        length('pitch', 1, 3000, 150, 'From the middle of one piece to the middle of the next on one stock.'),
        'one piece alone',
      ),
      preset(
        length(
          'onionSkin',
          0,
          3,
          0,
          'Wood left under loose parts and sanded off; 0.3 mm to 0.5 mm is usual.',
        ),
      ),
      preset(flag('topTape', 'Tape on the face against chipping, cut through with the wood.')),
    ],
  },
  {
    name: 'walls',
    meaning: 'Walls of field and limbs of plug that the pattern is to have; left out, they stay as drawn.',
    fields: [
      derived(length('least', 0.1, 50, 4, 'Walls between pockets are made at least this thick.'), 'as drawn'),
      derived(length('limbs', 0.1, 50, 4, 'Limbs of the plug are made at least this thick.'), 'as drawn'),
    ],
  },
  {
    name: 'times',
    meaning: "Times of your own glue and finish, from their makers' sheets.",
    fields: [
      preset(number('glueOpen', 0.5, 600, 5, 'Minutes from spreading the glue to the last push.')),
      preset(number('glueSet', 0.1, 1000, 24, 'Hours before the glued piece is worked on.')),
      preset(count('coats', 0, 30, 3, 'Coats of finish.')),
      preset(number('coatDry', 0.1, 1000, 12, 'Hours for a coat to dry.')),
    ],
  },
];
