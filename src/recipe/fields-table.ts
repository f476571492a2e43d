import { choice, count, derived, flag, length, number, preset, type Section } from './field.js';

/** How the wood lies on the machine, the walls the pattern is to have, and the workshop's times. */
export const tableSections: readonly Section[] = [
  {
    name: 'table',
    meaning: 'How the wood lies on the machine.',
    fields: [
      preset(
        length('board', 0, 100, 12, 'Thickness of the sacrificial board under the work; 0: none.', {
          say: '… board under the work',
          zero: 'no',
        }),
      ),
      preset(
        length(
          'over',
          0,
          10,
          0.5,
          'How far a cut that goes through runs into that board.',
          'through cuts … into it',
        ),
      ),
      preset(
        choice(
          'hold',
          'What holds the work down.',
          'held by …',
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
          'tape holding … kPa',
        ),
      ),
      preset(
        length('clamps', 0, 200, 0, 'How far clamps or screws stand above the face; 0: none do.', {
          say: 'clamps standing … above the face',
          zero: 'nowhere',
          often: [0, 40],
        }),
      ),
      preset(
        length(
          'clampsAway',
          0,
          500,
          10,
          "How far they stay away from the drawing's outline.",
          'clamps … away from the outline',
        ),
      ),
      derived(
        length('neighbours', 0, 300, 0, 'How far uncut wood beside the piece stands above its face.', {
          say: 'wood beside it … above the face',
          often: [0, 30],
        }),
        'no such wood',
      ),
      derived(
        length(
          'pitch',
          1,
          3000,
          150,
          'From the middle of one piece to the middle of the next on one stock.',
          'pieces … from middle to middle',
        ),
        'one piece alone',
      ),
      preset(
        length(
          'onionSkin',
          0,
          3,
          0,
          'Wood left under loose parts and sanded off; 0.3 mm to 0.5 mm is usual.',
          '… left under loose parts',
        ),
      ),
      preset(
        flag(
          'topTape',
          'Tape on the face against chipping, cut through with the wood.',
          'the face … against chipping',
          ['taped', 'not taped'],
        ),
      ),
    ],
  },
  {
    name: 'walls',
    meaning: 'Walls of field and limbs of plug that the pattern is to have; left out, they stay as drawn.',
    fields: [
      derived(
        length(
          'least',
          0.1,
          50,
          4,
          'Walls between pockets are made at least this thick.',
          'walls at least … thick',
        ),
        'as drawn',
      ),
      derived(
        length(
          'limbs',
          0.1,
          50,
          4,
          'Limbs of the plug are made at least this thick.',
          'limbs at least … thick',
        ),
        'as drawn',
      ),
    ],
  },
  {
    name: 'times',
    meaning: "Times of your own glue and finish, from their makers' sheets.",
    fields: [
      preset(
        number(
          'glueOpen',
          0.5,
          600,
          5,
          'Minutes from spreading the glue to the last push.',
          'glue open for … minutes',
        ),
      ),
      preset(
        number('glueSet', 0.1, 1000, 24, 'Hours before the glued piece is worked on.', 'set after … hours'),
      ),
      preset(
        count('coats', 0, 30, 3, 'Coats of finish.', {
          say: '… coats of finish',
          zero: 'no',
          one: '… coat of finish',
        }),
      ),
      preset(number('coatDry', 0.1, 1000, 12, 'Hours for a coat to dry.', 'each dry after … hours')),
    ],
  },
];
