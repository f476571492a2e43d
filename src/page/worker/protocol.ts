import type { Recipe } from '../../recipe/recipe.js';
import type { Parameter } from '../../schema/parameter.js';
import type { Units } from '../../schema/units.js';

/*
 * What the page and its workers say to each other: plain data. Lengths mm. Path data is SVG's, mm, x right and y DOWN,
 * the middle of the piece at 0, 0 (a point of a job at x, y lies at x, -y).
 */

/** Where a card's fonts and drawings come from. */
export interface Origin {
  readonly token: string;
  /** The recipe's file, from the served folder; null while it has none. */
  readonly file: string | null;
  /** The recipe that ships which the card began from; null: none. */
  readonly shipped: string | null;
}

export type Ask =
  | { readonly ask: 'book' }
  /** Coarse: the quickest true picture of the text. Exact: the whole job. */
  | { readonly ask: 'draw'; readonly text: string; readonly origin: Origin; readonly exact: boolean }
  /** A view of the job that was drawn exactly last, its words in these units. */
  | { readonly ask: 'view'; readonly view: ViewName; readonly units: Units }
  /** How wide wood is at a point (x, y down) of that job. */
  | { readonly ask: 'measure'; readonly at: readonly [number, number] }
  | { readonly ask: 'thumbnail'; readonly text: string; readonly origin: Origin };

export type Answer<A extends Ask['ask']> = {
  book: Book;
  draw: Drawn | Trouble;
  view: View | Trouble;
  measure: Measured | null;
  thumbnail: Thumbnail | Trouble;
}[A];

export interface Request {
  readonly id: number;
  readonly body: Ask;
}

/** `fault`: an error of ours, one line. */
export interface Reply {
  readonly id: number;
  readonly body?: Answer<Ask['ask']>;
  readonly fault?: string;
}

/** A generator or an outline's shape as the card needs it. */
export interface Entry {
  readonly name: string;
  readonly title: string;
  readonly summary: string;
  readonly family: string;
  readonly parameters: readonly Parameter[];
  /** A recipe that shows it; '' for an outline's shape. */
  readonly sample: string;
}

/** All that a card may say, from the same descriptions the reader uses. */
export interface Book {
  readonly generators: readonly Entry[];
  readonly outlines: readonly Entry[];
  /** Shapes of a vessel's profiles. */
  readonly profiles: readonly Entry[];
  /** A layer's own keys, beside its generator's parameters. */
  readonly layer: readonly Parameter[];
  /** The keys of a layer's `within` beside its shape. */
  readonly within: readonly Parameter[];
  readonly top: readonly Field[];
  readonly sections: readonly {
    readonly name: string;
    readonly meaning: string;
    readonly fields: readonly Field[];
  }[];
  readonly woods: readonly WoodLook[];
  /** Cutters as shops stock them, each as a recipe writes it. */
  readonly cutters: readonly string[];
  readonly fonts: readonly { readonly name: string; readonly title: string; readonly style: string }[];
}

export interface Field {
  readonly parameter: Parameter;
  /** When left out: a fault, the default, or what this says. */
  readonly need: 'required' | 'default' | 'otherwise';
  readonly otherwise?: string;
}

export interface WoodLook {
  readonly name: string;
  readonly colour: string;
  readonly grain: string;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** What lies on the face of the piece. */
export interface Figure {
  /** Of the face, y down. */
  readonly box: Box;
  readonly face: string;
  readonly field: WoodLook;
  /** Grain directions, radians, clockwise on the screen. */
  readonly grain: { readonly field: number; readonly plug: number };
  /** One a plug wood; `plug` as it lies in the pocket, '' where only the artwork was drawn. */
  readonly inlays: readonly { readonly wood: WoodLook; readonly pocket: string; readonly plug: string }[];
}

export interface Drawn {
  readonly kind: 'drawn';
  /** artwork: as the generator draws it; rounded: corners rounded to the cutter, not inspected; exact: the whole job. */
  readonly stage: 'artwork' | 'rounded' | 'exact';
  readonly recipe: Recipe;
  readonly figure: Figure;
  /** Worst first; none unless exact. */
  readonly findings: readonly Pencilled[];
  readonly numbers: Readonly<Record<string, number>>;
  readonly parts: { readonly pocket: number; readonly plug: number };
  /** Milliseconds in the worker. */
  readonly took: number;
}

/** A finding as it is pencilled on the piece. */
export interface Pencilled {
  readonly number: number;
  readonly code: string;
  readonly severity: 'stop' | 'warn' | 'note';
  readonly do: string;
  /** What its number points at, and where its disc may stand so that none hides another; null: the whole job. */
  readonly at: readonly [number, number] | null;
  readonly areas: string;
  readonly lines: string;
}

/** Why there is no drawing: faults of the text, or a refusal with its place. */
export interface Trouble {
  readonly kind: 'trouble';
  /** The recipe as read, when reading went well. */
  readonly recipe: Recipe | null;
  readonly faults: readonly {
    /** Path of the key, such as pattern.gap; '' for the whole. */
    readonly where: string;
    readonly message: string;
    /** On the piece, y down. */
    readonly at: readonly [number, number] | null;
  }[];
}

export const VIEWS = ['piece', 'pocket', 'plug', 'gap', 'reach', 'walls', 'section', 'coupon'] as const;
export type ViewName = (typeof VIEWS)[number];

export interface View {
  readonly view: ViewName;
  readonly box: Box;
  /** A whole picture instead of shapes, as SVG text; '' for none. */
  readonly picture: string;
  /** Bottom first; `look` is a class of style/looks.css. */
  readonly shapes: readonly Shape[];
  readonly labels: readonly Label[];
  /** What its looks mean, by look. */
  readonly key: readonly { readonly look: string; readonly fill?: string; readonly text: string }[];
  /** One or two plain sentences: what it shows, and what it found. */
  readonly says: string;
}

export interface Shape {
  readonly d: string;
  readonly look: string;
  /** A fill of its own, such as a wood's colour. */
  readonly fill?: string;
  readonly title?: string;
}

export interface Label {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  /** mm. */
  readonly size: number;
}

export interface Measured {
  /** Where the line of the dimension runs, y down. */
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly width: number;
  /** What the width is of: "limb of drop 3", "wall". */
  readonly of: string;
}

export interface Thumbnail {
  readonly kind: 'thumbnail';
  readonly figure: Figure;
}
