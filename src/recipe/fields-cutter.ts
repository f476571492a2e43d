import {
  choice,
  count,
  derived,
  type Field,
  flag,
  length,
  number,
  preset,
  required,
  type Section,
} from './field.js';

/** What the finishing and the roughing cutter have alike. */
const common = (whose: string): readonly Field[] => [
  preset(count('flutes', 1, 6, 2, 'How many cutting edges it has.', { say: '… flutes', one: '… flute' })),
  preset(
    choice(
      'spiral',
      'Which way its flutes push the chips.',
      '… spiral',
      ['up', 'Up and out of the cut; frays the upper face.'],
      ['down', 'Down; keeps the upper face clean and packs chips into deep slots.'],
      ['compression', 'Up at the tip, down above it.'],
      ['straight', 'Neither.'],
    ),
  ),
  preset(
    choice(
      'material',
      'What it is made of.',
      'of …',
      ['carbide', 'Cemented carbide.'],
      ['steel', 'High-speed steel.'],
    ),
  ),
  derived(length('shank', 0.5, 30, 3.175, 'Diameter of its shank.', 'its shank … across'), 'its diameter'),
  derived(
    length(
      'stickout',
      0.5,
      250,
      22,
      'How far its tip stands out of the collet.',
      'standing … out of the collet',
    ),
    'its flute length, or the depth of its cut when that is more',
  ),
  derived(
    number('rpm', 1000, 60_000, 18_000, `Turns a minute ${whose}.`, 'turning … times a minute'),
    '18,000, or what the spindle can do',
  ),
  derived(
    length('feed', 10, 30_000, 1500, 'How fast it moves, length a minute.', 'moving … a minute'),
    'the middle of the range that suits cutter, wood and depth, or what the machine can do',
  ),
];

/** The two cutters. */
export const cutterSections: readonly Section[] = [
  {
    name: 'cutter',
    meaning: 'The round, straight-sided cutter that cuts the outlines.',
    fields: [
      required(length('diameter', 0.3, 25, 3.175, 'Diameter on the label.', 'a cutter of … finishes')),
      derived(
        length(
          'cuts',
          0.2,
          30,
          3.175,
          'Width of a slot it cut, measured on the machine; used instead of the diameter.',
          'cutting a slot of …',
        ),
        'the diameter',
      ),
      derived(
        length('flute', 0.5, 200, 12, 'Length of its cutting edges.', 'its edges … long'),
        '4 diameters, or the depth when that is more',
      ),
      derived(
        length(
          'ease',
          0,
          25,
          0.3,
          'Extra corner radius, so that the cutter turns through corners and does not stall.',
          'corners eased by …',
        ),
        'a tenth of the diameter',
      ),
      preset(
        choice(
          'thin',
          'What to do with parts of the pattern that are thinner than the cutter.',
          'set to … what is thinner than it',
          ['drop', 'Leave them out, and say so.'],
          ['widen', 'Make them as wide as the cutter, along their own middle line.'],
          ['refuse', 'Refuse the job, naming the place.'],
        ),
      ),
      preset(
        choice(
          'touch',
          'What to do where pieces of the pattern come nearer to each other than the cutter is wide.',
          'set to … pieces too near to each other',
          ['part', 'Open the gap to the width of the cutter.'],
          ['join', 'Bridge the gap.'],
        ),
      ),
      ...common('while it finishes'),
    ],
  },
  {
    name: 'roughing',
    meaning: 'A larger cutter that clears the waste first.',
    fields: [
      required(length('diameter', 0.3, 25, 6.35, 'Diameter of the roughing cutter.', 'roughing with …')),
      derived(
        length('flute', 0.5, 200, 20, 'Length of its cutting edges.', 'its edges … long'),
        '3 diameters, or the depth of its cut when that is more',
      ),
      ...common('while it roughs'),
      preset(
        flag(
          'open',
          'Open the tight places of the pattern just enough for this cutter, and twice the allowance, to pass.',
          'tight places … for it',
          ['opened', 'not opened'],
        ),
      ),
    ],
  },
  {
    name: 'passes',
    meaning: 'How the cutting is divided.',
    fields: [
      preset(
        length(
          'allowance',
          0,
          3,
          0.3,
          'Left on the walls for the finishing pass; 0.25 mm to 0.4 mm is usual.',
          '… left on the walls for finishing',
        ),
      ),
      derived(
        length(
          'roughingStep',
          0.1,
          150,
          6,
          'How deep a pass of the cutter that roughs goes.',
          'roughing passes … deep',
        ),
        'one diameter of that cutter',
      ),
      derived(
        length(
          'finishingStep',
          0.1,
          150,
          9,
          'How deep a pass of the finishing cutter along the walls goes.',
          'finishing passes … deep',
        ),
        'the whole depth at once',
      ),
      preset(
        flag(
          'clearing',
          'Before the walls are finished, the finishing cutter clears in steps what the roughing cutter cannot get into.',
          'the finishing cutter … what roughing leaves',
          ['clears', 'does not clear'],
        ),
      ),
      preset(
        number(
          'stepover',
          5,
          100,
          45,
          'How far neighbouring paths of roughing lie apart, percent of the cutter.',
          'roughing paths …% of the cutter apart',
        ),
      ),
    ],
  },
];
