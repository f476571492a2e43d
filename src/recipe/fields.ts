import {
  choice,
  derived,
  type Field,
  grain,
  length,
  percent,
  preset,
  required,
  type Section,
  wood,
} from './field.js';
import { cutterSections } from './fields-cutter.js';
import { machineSections } from './fields-machine.js';

/** Longest name: it becomes a folder name. */
export const MAX_NAME = 64;

export const topFields: readonly Field[] = [
  required({
    kind: 'text',
    name: 'name',
    maxLength: MAX_NAME,
    default: 'piece',
    meaning: 'Name of the piece and of the folder its files go to: letters, digits and hyphens.',
  }),
  preset(
    choice(
      'units',
      'Unit of bare numbers in this recipe and of the drawings made from it.',
      ['mm', 'Millimetres.'],
      ['in', 'Inches.'],
    ),
  ),
  required(length('depth', 0.1, 150, 8, 'How deep the pocket is cut.')),
  preset(
    length(
      'skin',
      0,
      100,
      1.5,
      'Wood left under the pocket floor; planed away later to show the figure there.',
    ),
  ),
];

export const sections: readonly Section[] = [
  {
    name: 'stock',
    meaning: 'Thickness of the two woods.',
    fields: [
      derived(length('field', 0.5, 300, 10, 'Thickness of the wood the pocket is cut in.'), 'depth + skin'),
      derived(length('plug', 0.5, 300, 10, 'Thickness of the wood the plug is cut from.'), 'depth + 2 mm'),
    ],
  },
  ...cutterSections,
  {
    name: 'fit',
    meaning: 'How pocket and plug fit each other.',
    fields: [
      preset(length('clearance', 0, 2, 0.08, 'Gap on each side between pocket and plug.')),
      preset(
        choice(
          'from',
          'Which part gives way for the gap.',
          ['plug', 'The plug is made smaller.'],
          ['pocket', 'The pocket is made larger.'],
          ['both', 'Half from each.'],
        ),
      ),
      preset(
        choice(
          'plug',
          'How the plug is held.',
          ['loose', 'Cut free; its drawing lies as the pocket does.'],
          ['carrier', 'On a backing that is sawn off after gluing; its drawing is mirrored.'],
        ),
      ),
      derived(
        choice(
          'face',
          'Which way the plug goes in.',
          ['up', 'As it was cut; for a loose plug only.'],
          ['down', 'Turned over; its drawing is mirrored.'],
        ),
        'up when loose; a plug on a carrier always goes in face down',
      ),
      preset(length('glueGap', 0, 5, 0.5, "Room for glue between the plug's foot and the pocket's floor.")),
      preset(length('foot', 0, 3, 0.4, "How much the edge of the plug's foot is eased, so that it starts.")),
      derived(
        length('proud', 0, 50, 1, 'How far a loose plug stands above the face until it is planed.'),
        'stock.plug - depth + glueGap',
      ),
      preset(
        length(
          'sawRoom',
          0,
          30,
          4,
          'Height between the face and the carrier, for the saw; 3 to 6 mm is usual.',
        ),
      ),
    ],
  },
  ...machineSections,
  {
    name: 'press',
    meaning: 'The press the plug is pushed in with; left out, nothing is said about its full load.',
    fields: [
      derived(
        { kind: 'number', name: 'tons', min: 0.01, max: 1000, default: 6, meaning: 'Its rated load, tons.' },
        'no press',
      ),
      preset(
        choice(
          'kind',
          'Which ton its plate means.',
          ['us', 'Of 2,000 pounds.'],
          ['metric', 'Of 1,000 kilograms.'],
        ),
      ),
    ],
  },
  {
    name: 'boards',
    meaning:
      'The boards that parts are laid out on; the grain runs along their length. A layout is drawn for each board that is given.',
    fields: [
      derived(length('plugWidth', 5, 3000, 100, 'Width of the board for a loose plug.'), 'no layout'),
      derived(length('plugLength', 5, 6000, 300, 'Length of the board for a loose plug.'), 'no layout'),
      derived(length('fieldWidth', 5, 3000, 200, 'Width of the board the pockets are cut in.'), 'no layout'),
      derived(
        length('fieldLength', 5, 6000, 600, 'Length of the board the pockets are cut in.'),
        'no layout',
      ),
      preset({
        kind: 'count',
        name: 'pieces',
        min: 1,
        max: 200,
        default: 1,
        meaning: 'How many pieces are laid out on each board.',
      }),
    ],
  },
  {
    name: 'moisture',
    meaning: 'Moisture of the woods in percent of their dry weight.',
    fields: [
      preset(percent('field', 8, 'Of the field when it is glued.')),
      preset(percent('plug', 8, 'Of the plug when it is glued.')),
      preset(percent('driest', 6, 'The least the finished piece will have: 6 is a heated room in winter.')),
      preset(percent('dampest', 10, 'The most the finished piece will have: 12 is a damp summer.')),
    ],
  },
  {
    name: 'woods',
    meaning: 'The two woods, for the picture and the shop sheet.',
    fields: [
      wood('field', 'sugar maple', 'Wood the pocket is cut in.'),
      wood('plug', 'black walnut', 'Wood of the plug.'),
      preset(grain('fieldGrain', 'Direction of the field grain, counter-clockwise from left-to-right.')),
      preset(grain('plugGrain', 'Direction of the plug grain, counter-clockwise from left-to-right.')),
    ],
  },
];
