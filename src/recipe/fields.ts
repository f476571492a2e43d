import { choice, derived, type Field, length, preset, required, type Section } from './field.js';
import { bowlSections } from './fields-bowl.js';
import { cutterSections } from './fields-cutter.js';
import { machineSections } from './fields-machine.js';
import { tableSections } from './fields-table.js';
import { woodSections } from './fields-wood.js';

/** Longest name: it becomes a folder name. */
export const MAX_NAME = 64;

export const topFields: readonly Field[] = [
  required({
    kind: 'text',
    name: 'name',
    maxLength: MAX_NAME,
    default: 'piece',
    meaning: 'Name of the piece and of the folder its files go to: letters, digits and hyphens.',
    say: 'named …',
  }),
  preset(
    choice(
      'units',
      'Unit of bare numbers in this recipe and of the drawings made from it.',
      'in units of …',
      ['mm', 'Millimetres.'],
      ['in', 'Inches.'],
    ),
  ),
  required(length('depth', 0.1, 150, 8, 'How deep the pocket is cut.', 'the pocket … deep')),
  preset(
    length(
      'skin',
      0,
      100,
      1.5,
      'Wood left under the pocket floor; planed away later to show the figure there.',
      { say: '… left under its floor', often: [0, 6] },
    ),
  ),
];

export const sections: readonly Section[] = [
  {
    name: 'stock',
    meaning: 'Thickness of the two woods.',
    fields: [
      derived(
        length('field', 0.5, 300, 10, 'Thickness of the wood the pocket is cut in.', 'the field … thick'),
        'depth + skin',
      ),
      derived(
        length('plug', 0.5, 300, 10, 'Thickness of the wood the plug is cut from.', 'the plug … thick'),
        'depth + 2 mm',
      ),
    ],
  },
  ...cutterSections,
  {
    name: 'fit',
    meaning: 'How pocket and plug fit each other.',
    fields: [
      preset(
        length(
          'clearance',
          0,
          2,
          0.08,
          'Gap on each side between pocket and plug.',
          'a gap of … on each side',
        ),
      ),
      preset(
        choice(
          'from',
          'Which part gives way for the gap.',
          'taken from …',
          ['plug', 'The plug is made smaller.'],
          ['pocket', 'The pocket is made larger.'],
          ['both', 'Half from each.'],
        ),
      ),
      preset(
        choice(
          'plug',
          'How the plug is held.',
          'a … plug',
          ['loose', 'Cut free; its drawing lies as the pocket does.'],
          ['carrier', 'On a backing that is sawn off after gluing; its drawing is mirrored.'],
        ),
      ),
      derived(
        choice(
          'face',
          'Which way the plug goes in.',
          'going in face …',
          ['up', 'As it was cut; for a loose plug only.'],
          ['down', 'Turned over; its drawing is mirrored.'],
        ),
        'up when loose; a plug on a carrier always goes in face down',
      ),
      preset(
        length(
          'glueGap',
          0,
          5,
          0.5,
          "Room for glue between the plug's foot and the pocket's floor.",
          '… for glue under its foot',
        ),
      ),
      preset(
        length(
          'foot',
          0,
          3,
          0.4,
          "How much the edge of the plug's foot is eased, so that it starts.",
          'the edge of its foot eased by …',
        ),
      ),
      derived(
        length('proud', 0, 50, 1, 'How far a loose plug stands above the face until it is planed.', {
          say: 'standing … proud of the face',
          often: [0, 3],
        }),
        'stock.plug - depth + glueGap',
      ),
      preset(
        length(
          'sawRoom',
          0,
          30,
          4,
          'Height between the face and the carrier, for the saw; 3 to 6 mm is usual.',
          '… for the saw above the face',
        ),
      ),
    ],
  },
  ...machineSections,
  ...tableSections,
  {
    name: 'press',
    meaning: 'The press the plug is pushed in with; left out, nothing is said about its full load.',
    fields: [
      derived(
        {
          kind: 'number',
          name: 'tons',
          min: 0.01,
          max: 1000,
          default: 6,
          meaning: 'Its rated load, tons.',
          say: 'a press of … tons',
        },
        'no press',
      ),
      preset(
        choice(
          'kind',
          'Which ton its plate means.',
          'counted in … tons',
          ['us', 'Of 2,000 pounds.'],
          ['metric', 'Of 1,000 kilograms.'],
        ),
      ),
    ],
  },
  ...woodSections,
  ...bowlSections,
];
