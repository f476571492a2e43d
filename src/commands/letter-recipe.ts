import { lettering } from '../generators/lettering/lettering.js';
import { nameFrom } from '../recipe/name.js';
import type { Parameter } from '../schema/parameter.js';
import type { Units } from '../schema/units.js';
import { depthFor, length, MARGIN, optionValue, type Room, SKIN } from './face.js';
import type { OptionOf } from './own-words.js';

/** What the user gave, as text; options that were left out are missing. */
export interface LetterOptions {
  readonly out: string;
  readonly units: string;
  readonly cutter: string;
  readonly depth?: string;
  readonly margin?: string;
  readonly width?: string;
  readonly name?: string;
  readonly replace?: boolean;
  readonly json?: boolean;
  /** Options of the letters themselves, by their parameter's name. */
  readonly [parameter: string]: string | boolean | undefined;
}

/** Parameters of the lettering that make sense where the outline follows the text. */
const LETTERS = ['height', 'font', 'tracking', 'align', 'leading', 'kerning', 'ligatures', 'joined'];

/** The lettering's parameters that are options of `letter`. */
export const letterParameters: readonly Parameter[] = lettering.parameters.filter((p) =>
  LETTERS.includes(p.name),
);

/** The paths of the recipe that an option sets, and the option. */
export const OPTION_OF: OptionOf = new Map([
  ['pattern.text', 'text'],
  ...letterParameters.map((p) => [`pattern.${p.name}`, `--${p.name}`] as const),
  ['cutter.diameter', '--cutter'],
  ['outline.margin', '--margin'],
  ['outline.width', '--width'],
  ['depth', '--depth'],
  ['units', '--units'],
  ['name', '--name'],
]);

/** The recipe as an object, ready to be written. Values are as the user gave them; reading it finds what is wrong. */
export function letterRecipe(text: string, options: LetterOptions, room: Room): object {
  const units: Units = options.units === 'in' ? 'in' : 'mm';
  const letters: [string, string | number | boolean][] = [];
  for (const p of letterParameters) {
    const given = options[p.name];
    if (given !== undefined && given !== p.default) letters.push([p.name, optionValue(given, p)]);
  }
  return {
    name: options.name ?? slug(text),
    units: options.units,
    outline: {
      shape: 'rectangle',
      width: options.width === undefined ? room.width : length(options.width),
      height: room.height,
      margin: options.margin === undefined ? MARGIN[units] : length(options.margin),
    },
    pattern: { generator: 'lettering', text, ...Object.fromEntries(letters) },
    cutter: { diameter: length(options.cutter), thin: 'widen', touch: 'part' },
    fit: { plug: 'carrier' },
    depth: options.depth === undefined ? depthFor(options.cutter, units) : length(options.depth),
    skin: SKIN[units],
  };
}

/** A name from the text: small letters, digits and hyphens. */
export function slug(text: string): string {
  return nameFrom(text, 'lettering', 'letters');
}
