import { derived, grain, length, percent, preset, type Section, wood } from './field.js';

/** The wood itself: the boards that parts are laid out on, how damp it is, and which it is. */
export const woodSections: readonly Section[] = [
  {
    name: 'boards',
    meaning:
      'The boards that parts are laid out on; the grain runs along their length. A layout is drawn for each board that is given.',
    fields: [
      derived(
        length('plugWidth', 5, 3000, 100, 'Width of the board for a loose plug.', "the plug's board … wide"),
        'no layout',
      ),
      derived(
        length(
          'plugLength',
          5,
          6000,
          300,
          'Length of the board for a loose plug.',
          "the plug's board … long",
        ),
        'no layout',
      ),
      derived(
        length(
          'fieldWidth',
          5,
          3000,
          200,
          'Width of the board the pockets are cut in.',
          "the field's board … wide",
        ),
        'no layout',
      ),
      derived(
        length(
          'fieldLength',
          5,
          6000,
          600,
          'Length of the board the pockets are cut in.',
          "the field's board … long",
        ),
        'no layout',
      ),
      preset({
        kind: 'count',
        name: 'pieces',
        min: 1,
        max: 200,
        default: 1,
        meaning: 'How many pieces are laid out on each board.',
        say: '… pieces to a board',
        one: '… piece to a board',
      }),
    ],
  },
  {
    name: 'moisture',
    meaning: 'Moisture of the woods in percent of their dry weight.',
    fields: [
      preset(percent('field', 8, 'Of the field when it is glued.', 'the field at …%')),
      preset(percent('plug', 8, 'Of the plug when it is glued.', 'the plug at …%')),
      preset(
        percent(
          'driest',
          6,
          'The least the finished piece will have: 6 is a heated room in winter.',
          'never under …%',
        ),
      ),
      preset(
        percent(
          'dampest',
          10,
          'The most the finished piece will have: 12 is a damp summer.',
          'never over …%',
        ),
      ),
    ],
  },
  {
    name: 'woods',
    meaning: 'The two woods, for the picture and the shop sheet.',
    fields: [
      wood('field', 'sugar maple', 'Wood the pocket is cut in.', 'a field of …'),
      wood('plug', 'black walnut', 'Wood of the plug.', 'a plug of …'),
      preset(
        grain(
          'fieldGrain',
          'Direction of the field grain, counter-clockwise from left-to-right.',
          'field grain at …',
        ),
      ),
      preset(
        grain(
          'plugGrain',
          'Direction of the plug grain, counter-clockwise from left-to-right.',
          'plug grain at …',
        ),
      ),
    ],
  },
];
