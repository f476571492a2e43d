import type { Generator } from '../../generators/generator.js';

/** What a maker calls each family of patterns, and what is in it. */
const FAMILIES: Readonly<Record<Generator['family'], readonly [title: string, about: string]>> = {
  tilings: ['Tiles, blocks and weaves', 'Shapes that cover the whole face.'],
  symmetry: ['Repeated motifs', 'One motif set again and again, over a face or along a band.'],
  radial: ['Rosettes, stars and rounds', 'Figures about a middle.'],
  bands: ['Borders and bands', 'They run along the edge, or straight across.'],
  knots: ['Knots', 'Bands that pass over and under.'],
  fields: ['Grounds and fillings', 'Dots, cells, lines and growth for a plain space.'],
  lettering: ['Lettering', 'Names, numbers and lines of text.'],
  drawing: ['Your own drawing', 'Drop the file on the card later; an acorn stands in for it here.'],
};

/** A family's things, under its title. */
export interface Family<T> {
  readonly name: string;
  readonly title: string;
  readonly about: string;
  readonly members: readonly T[];
}

/** Things by family: families and members in the order they come in. A family that is new here keeps its own name. */
export function byFamily<T extends { readonly family: string }>(things: readonly T[]): Family<T>[] {
  return [...new Set(things.map((t) => t.family))].map((name) => {
    const [title, about] = Object.hasOwn(FAMILIES, name)
      ? FAMILIES[name as Generator['family']]
      : [sentence(name), ''];
    return { name, title, about, members: things.filter((t) => t.family === name) };
  });
}

/** A name such as tea-box-rosette as words: Tea box rosette. */
export function sentence(name: string): string {
  const words = name.replaceAll(/[-_\s]+/g, ' ').trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}
