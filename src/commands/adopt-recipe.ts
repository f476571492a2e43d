import { mendingParameters } from '../generators/drawing/outlines/parameters.js';
import { nameFrom } from '../recipe/name.js';
import type { Parameter } from '../schema/parameter.js';
import type { Units } from '../schema/units.js';
import { depthFor, length, MARGIN, optionValue, type Room, SKIN } from './face.js';
import type { OptionOf } from './own-words.js';

/** What the user gave, as text; options that were left out are missing. */
export interface AdoptOptions {
  readonly out: string;
  readonly units: string;
  readonly cutter: string;
  readonly thin: string;
  readonly depth?: string;
  readonly margin?: string;
  readonly width?: string;
  readonly name?: string;
  readonly replace?: boolean;
  readonly json?: boolean;
  /** Options of the drawing itself, by their parameter's name. */
  readonly [parameter: string]: string | boolean | undefined;
}

/** The drawing's parameters that are options of `adopt`: how its file is read, not where it lies. */
export const adoptParameters: readonly Parameter[] = mendingParameters;

/** The paths of the recipe that an option sets, and the option. */
export const OPTION_OF: OptionOf = new Map([
  ['pattern.width', '--width'],
  ...adoptParameters.map((p) => [`pattern.${p.name}`, `--${p.name}`] as const),
  ['cutter.diameter', '--cutter'],
  ['cutter.thin', '--thin'],
  ['outline.margin', '--margin'],
  ['depth', '--depth'],
  ['units', '--units'],
  ['name', '--name'],
]);

/** The recipe as an object, ready to be written. Values are as the user gave them; reading it finds what is wrong. */
export function adoptRecipe(name: string, file: string, options: AdoptOptions, room: Room): object {
  const units: Units = options.units === 'in' ? 'in' : 'mm';
  const reading: [string, string | number | boolean][] = [];
  for (const p of adoptParameters) {
    const given = options[p.name];
    if (given !== undefined && given !== p.default) reading.push([p.name, optionValue(given, p)]);
  }
  return {
    name,
    units: options.units,
    outline: {
      shape: 'rectangle',
      ...room,
      margin: options.margin === undefined ? MARGIN[units] : length(options.margin),
    },
    pattern: {
      generator: 'drawing',
      file,
      ...(options.width === undefined ? {} : { width: length(options.width) }),
      ...Object.fromEntries(reading),
    },
    cutter: { diameter: length(options.cutter), thin: options.thin, touch: 'part' },
    fit: { plug: 'carrier' },
    depth: options.depth === undefined ? depthFor(options.cutter, units) : length(options.depth),
    skin: SKIN[units],
  };
}

/** A name for the piece from the drawing's file name without its ending. */
export function nameOf(stem: string): string {
  return nameFrom(stem, 'drawing', 'drawing');
}
