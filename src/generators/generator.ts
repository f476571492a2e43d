import type { Pen } from '../geometry/pen.js';
import type { Outline } from '../outline/outline.js';
import type { Parameter, Values } from '../schema/parameter.js';
import type { Shaper } from './lettering/shaper.js';

/** What a generator may need from outside, loaded before `build`: fonts by name or path, drawings by path. */
export interface Assets {
  /** The text of each drawing file, by the path that the recipe gives. */
  readonly drawings: ReadonlyMap<string, string>;
  /** A font's file, or the files that each hold a part of its characters, by the name or path that the recipe gives. */
  readonly fonts: ReadonlyMap<string, ArrayBuffer | readonly ArrayBuffer[]>;
  /** The engine that shapes text, started; only lettering needs it. */
  readonly shaper?: Shaper;
}

/** What a generator may know of the cutter: only what lays out parts that must stay apart, as letters do, needs it. */
export interface Cut {
  /** Corner radius, mm: what is narrower than twice this cannot be cut. */
  readonly r: number;
  /** Whether the cutter pass will widen what is narrower. */
  readonly widen: boolean;
}

/** Code that draws a pattern from parameters. Pure: the same values, outline, assets and cutter always draw the same. */
export interface Generator {
  readonly name: string;
  readonly title: string;
  readonly family: 'tilings' | 'symmetry' | 'radial' | 'bands' | 'knots' | 'fields' | 'lettering' | 'drawing';
  /** One line for the list. */
  readonly summary: string;
  readonly parameters: readonly Parameter[];
  draw(values: Values, outline: Outline, pen: Pen, assets: Assets, cut: Cut): void;
}
