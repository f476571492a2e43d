import { choice, count, derived, type Field, flag, length, preset, required, type Section } from './field.js';

/** Keys of `bowl` that are no single values: they are read apart. */
export const BOWL_KEYS = ['outside', 'inside', 'inlaid'] as const;

export const INLAID_MEANING =
  'Which staves carry the inlay: "all", "every other", or a list of their numbers such as [1, 4, 7].';
export const OUTSIDE_MEANING = "The finished wall's outside: diameters by height.";
export const INSIDE_MEANING =
  "The finished wall's inside, from the floor up. Left out: `wall` inside the outside.";
export const POINTS_MEANING =
  'Height and diameter of points that the curve runs through, from the bottom up.';

/** A vessel glued up from flat staves, or turned from one flat board. */
export const bowlSections: readonly Section[] = [
  {
    name: 'bowl',
    meaning:
      'A vessel glued up from flat sides that carry the inlay, then turned or carved round; left out: the piece stays flat.',
    fields: [
      required(
        count('sides', 1, 24, 12, 'How many sides it has: 3 to 24 staves, or 1 flat board.', '… sides'),
      ),
      preset({
        kind: 'angle',
        name: 'slope',
        meaning: 'How steep the staves stand, from the horizontal: 90 is an upright box.',
        say: 'sloping at …',
        default: 90,
        min: 0,
        max: 90,
      }),
      required(length('height', 3, 1000, 100, 'How high the finished vessel is.', '… high')),
      derived(
        length('thickness', 1, 300, 25, 'Thickness of the staves.', 'staves … thick'),
        'the least that holds the wall, in whole millimetres',
      ),
      preset(
        length('floor', 0, 300, 8, 'Height at which the inside begins: what lies below is the floor.', {
          say: 'its inside beginning … up',
          often: [0, 30],
        }),
      ),
      preset(length('wall', 1, 200, 8, 'Thickness of the wall where no inside is given.', 'a wall of …')),
      preset(
        choice(
          'face',
          'The face of the stave that the pocket is cut into.',
          'cut into the … face',
          ['outside', 'Outside; the inlay shows there first.'],
          ['inside', 'Inside, seen from the axis.'],
        ),
      ),
      preset(
        length('over', 0, 50, 1.5, 'Wood left outside of the finished wall, at least.', '… spared outside'),
      ),
      preset(
        length('under', 0, 50, 1, 'Wood left inside of the finished wall, at least.', '… spared inside'),
      ),
      preset(length('trim', 0, 100, 6, 'Waste at each end of a stave.', '… trimmed off each end')),
      preset(
        length('sanding', 0, 3, 0.3, 'Taken off each face of the wall by sanding.', {
          say: '… sanded off',
          often: [0, 1],
        }),
      ),
      preset(
        flag('continuous', 'The pattern runs on from stave to stave.', 'the pattern … the joints', [
          'running on over',
          'ending before',
        ]),
      ),
      preset(
        flag(
          'fillers',
          'Blocks are glued in where the wall would leave the staves.',
          'blocks … where it leaves them',
          ['glued in', 'not glued in'],
        ),
      ),
      preset({
        kind: 'angle',
        name: 'angleError',
        meaning: 'By how much a joint face may be off its angle.',
        say: 'joints true to …',
        default: 0.1,
        min: 0,
        max: 5,
        often: [0, 0.5],
      }),
      derived(
        length(
          'ball',
          0.5,
          60,
          6,
          'Diameter of the ball cutter that carves the inside.',
          'a ball cutter of …',
        ),
        'none is looked at',
      ),
    ] satisfies Field[],
  },
];
