import { lettering } from '../generators/lettering/lettering.js';
import { nameFault } from '../recipe/name.js';
import type { Parameter } from '../schema/parameter.js';
import { MM_PER_INCH, parseLength, toMillimetres, type Units } from '../schema/units.js';

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
export const OPTION_OF: ReadonlyMap<string, string> = new Map([
  ['pattern.text', 'text'],
  ...letterParameters.map((p) => [`pattern.${p.name}`, `--${p.name}`] as const),
  ['cutter.diameter', '--cutter'],
  ['outline.margin', '--margin'],
  ['outline.width', '--width'],
  ['depth', '--depth'],
  ['units', '--units'],
  ['name', '--name'],
]);

/** Sides of the face that the text is first drawn on, to see how much room it takes, mm: as large as one may be. */
export const WIDE = 3000;

/** Margin when none is given. */
const MARGIN: Readonly<Record<Units, number>> = { mm: 10, in: 0.375 };

/** Sizes of the face go up to whole steps of this, depths down; the deepest that is chosen. */
const STEP: Readonly<Record<Units, number>> = { mm: 1, in: 1 / 16 };
const DEPTH_STEP: Readonly<Record<Units, number>> = { mm: 0.5, in: 1 / 16 };
const DEEPEST = 8;

/** Flute that must stand above the work; cutting edges are four diameters long unless the recipe says so. */
const CHIP_ROOM = 1;

/** A face for the letters, in the recipe's unit. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

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
    skin: units === 'in' ? 0.0625 : 1.5,
  };
}

/** The face that just holds something of these extents about its middle, mm, and a margin, in the recipe's unit. */
export function roomFor(x: number, y: number, margin: number, units: Units): Room {
  const side = (half: number): number => {
    const unit = units === 'in' ? MM_PER_INCH : 1;
    const steps = (2 * (half + margin)) / (STEP[units] * unit);
    return Math.ceil(steps - 1e-6) * STEP[units];
  };
  return { width: side(x), height: side(y) };
}

/** A name from the text: small letters, digits and hyphens. */
export function slug(text: string): string {
  const plain = text
    .normalize('NFKD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 40)
    .replace(/^-+|-+$/g, '');
  if (plain === '') return 'lettering';
  return nameFault(plain) === null ? plain : `${plain}-letters`;
}

function optionValue(given: string | boolean, p: Parameter): string | number | boolean {
  if (typeof given === 'boolean' || p.kind === 'text' || p.kind === 'choice' || p.kind === 'flag')
    return given;
  return length(given);
}

/** A bare number is in the recipe's units. */
function length(given: string): string | number {
  return /^-?(\d+(\.\d*)?|\.\d+)$/.test(given.trim()) ? Number(given) : given;
}

/** As deep as a cutter of usual length reaches with room for the chips; 1 mm when nothing better is known. */
function depthFor(cutter: string, units: Units): number {
  const bare = length(cutter);
  const diameter = typeof bare === 'number' ? toMillimetres(bare, units) : parseLength(bare);
  const unit = units === 'in' ? MM_PER_INCH : 1;
  const most = typeof diameter === 'number' ? Math.min(DEEPEST, 4 * diameter - CHIP_ROOM) : 1;
  const step = DEPTH_STEP[units];
  return Math.max(1, Math.floor(most / (step * unit) + 1e-6)) * step;
}
