import type { Parameter } from '../schema/parameter.js';
import { findWood, woods } from '../shop/woods.js';

/**
 * The recipe's own keys as data (an outline's and a pattern's come from their registries). The reader, the JSON
 * Schema and the help are made from these.
 */
export interface Field {
  readonly parameter: Parameter;
  /** What happens when the key is left out: a fault, the parameter's default, or what `otherwise` says. */
  readonly need: 'required' | 'default' | 'otherwise';
  /** The default in words where it depends on other values. */
  readonly otherwise?: string;
  /** Other words for a choice's options: the option that is meant, or null; and all of them, for the JSON Schema. */
  readonly also?: { readonly meant: (text: string) => string | null; readonly words: readonly string[] };
}

export interface Section {
  readonly name: string;
  readonly meaning: string;
  readonly fields: readonly Field[];
}

const length = (name: string, min: number, max: number, preset: number, meaning: string): Parameter => ({
  kind: 'length',
  name,
  min,
  max,
  default: preset,
  meaning,
});

const choice = (
  name: string,
  meaning: string,
  ...options: [value: string, meaning: string][]
): Parameter => ({
  kind: 'choice',
  name,
  meaning,
  default: options[0]![0],
  options: options.map(([value, m]) => ({ value, meaning: m })),
});

const percent = (name: string, preset: number, meaning: string): Parameter => ({
  kind: 'number',
  name,
  min: 0,
  max: 30,
  default: preset,
  meaning,
});

const grain = (name: string, meaning: string): Parameter => ({
  kind: 'angle',
  name,
  min: -360,
  max: 360,
  default: 0,
  meaning,
});

const wood = (name: string, preset: string, meaning: string): Field => ({
  parameter: {
    kind: 'choice',
    name,
    meaning,
    default: preset,
    options: woods.map((w) => ({ value: w.name, meaning: '' })),
  },
  need: 'default',
  also: { meant: (text) => findWood(text)?.name ?? null, words: woods.flatMap((w) => w.also) },
});

const required = (parameter: Parameter): Field => ({ parameter, need: 'required' });
const preset = (parameter: Parameter): Field => ({ parameter, need: 'default' });
const derived = (parameter: Parameter, otherwise: string): Field => ({
  parameter,
  need: 'otherwise',
  otherwise,
});

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
  {
    name: 'cutter',
    meaning: 'The round, straight-sided cutter that cuts the outlines.',
    fields: [
      required(length('diameter', 0.3, 25, 3.175, 'Diameter on the label.')),
      derived(
        length(
          'cuts',
          0.2,
          30,
          3.175,
          'Width of a slot it cut, measured on the machine; used instead of the diameter.',
        ),
        'the diameter',
      ),
      derived(
        length('flute', 0.5, 200, 12, 'Length of its cutting edges.'),
        '4 diameters, or the depth when that is more',
      ),
      derived(
        length(
          'ease',
          0,
          25,
          0.3,
          'Extra corner radius, so that the cutter turns through corners and does not stall.',
        ),
        'a tenth of the diameter',
      ),
      preset(
        choice(
          'thin',
          'What to do with parts of the pattern that are thinner than the cutter.',
          ['drop', 'Leave them out, and say so.'],
          ['widen', 'Make them as wide as the cutter, along their own middle line.'],
          ['refuse', 'Refuse the job, naming the place.'],
        ),
      ),
      preset(
        choice(
          'touch',
          'What to do where pieces of the pattern come nearer to each other than the cutter is wide.',
          ['part', 'Open the gap to the width of the cutter.'],
          ['join', 'Bridge the gap.'],
        ),
      ),
    ],
  },
  {
    name: 'roughing',
    meaning: 'A larger cutter that clears the pockets first.',
    fields: [required(length('diameter', 0.3, 25, 6.35, 'Diameter of the roughing cutter.'))],
  },
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
  {
    name: 'machine',
    meaning: 'What the machine can hold; the defaults are stated guesses for a hobby machine: measure yours.',
    fields: [
      preset(length('accuracy', 0, 1, 0.05, 'How far a cut wall may be off its drawing, either way.')),
      preset(length('repeatability', 0.001, 1, 0.02, 'How nearly the same cut comes out twice.')),
      preset({
        kind: 'number',
        name: 'sideForce',
        min: 0,
        max: 500,
        default: 10,
        meaning:
          'Side force on the cutter in its finishing pass, newtons, for the estimate of how walls lean: a guess for sharp small cutters.',
      }),
    ],
  },
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
