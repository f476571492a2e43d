import type { Pen } from '../geometry/pen.js';
import type { Outline } from '../outline/outline.js';
import type { Parameter, Values } from '../schema/parameter.js';

/** What a generator may need from outside, loaded before `build`: fonts by name, drawings by path. */
export interface Assets {
  /** The text of each drawing file, by the path that the recipe gives. */
  readonly drawings: ReadonlyMap<string, string>;
  readonly fonts: ReadonlyMap<string, ArrayBuffer>;
}

/** Code that draws a pattern from parameters. Pure: the same values, outline and assets always draw the same. */
export interface Generator {
  readonly name: string;
  readonly title: string;
  readonly family: 'tilings' | 'symmetry' | 'radial' | 'bands' | 'knots' | 'fields' | 'lettering' | 'drawing';
  /** One line for the list. */
  readonly summary: string;
  readonly parameters: readonly Parameter[];
  draw(values: Values, outline: Outline, pen: Pen, assets: Assets): void;
}
