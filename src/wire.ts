/**
 * What the page and its server send each other, as data. Paths are from the folder served, with forward slashes. Every
 * request under /api carries the run's token in the header `x-card-token`; a fault is answered with status 400 to 500
 * and `Wrong`.
 */

export const TOKEN_HEADER = 'x-card-token';

/** Most bytes of a recipe's text, and of a dropped drawing or font. */
export const MOST_TEXT = 1_000_000;
export const MOST_FILE = 20_000_000;

/** GET /api/start */
export interface Start {
  readonly version: string;
  /** The served folder's own name, without its path. */
  readonly folder: string;
  /** The recipe to open first; null: none was named. */
  readonly open: string | null;
  /** Names of the recipes that ship. */
  readonly shipped: readonly string[];
}

/** GET /api/recipes: the recipes in the folder. */
export interface Listed {
  readonly file: string;
}

/** GET /api/recipe?file=FILE or ?shipped=NAME. */
export interface Opened {
  /** Null for one that ships: it is a start, not a file to write. */
  readonly file: string | null;
  readonly text: string;
  /** Tells this content from any other; null for one that ships. */
  readonly version: string | null;
}

/** PUT /api/recipe: 200 with `Saved`, or 409 with what lies there instead (`Opened`), and nothing written. */
export interface Save {
  readonly file: string;
  readonly text: string;
  /** The version that may be replaced; null: there must be no such file. */
  readonly over: string | null;
}

export interface Saved {
  readonly version: string;
}

/** PUT /api/beside?of=FILE&name=NAME, body: a drawing or font, kept beside the recipe. A file that differs stays. */
export interface Kept {
  /** Path from the recipe's folder, as the recipe writes it. */
  readonly path: string;
}

/** POST /api/make: answered by lines of JSON, each a `Making`; closing the connection cancels it. */
export interface Make {
  readonly file: string;
  readonly text: string;
}

export type Making =
  | { readonly step: 'reading' | 'building' | 'drawing' | 'proving' | 'modelling' | 'writing' }
  | { readonly made: Made }
  | { readonly wrong: Wrong };

export interface Made {
  readonly name: string;
  /** Names of the files in the piece's folder. */
  readonly files: readonly string[];
  /** Where it lies, as the command line would say it. */
  readonly folder: string;
  /** Least reach of the pocket's and the plug's walls as proven, and what was asked, mm. */
  readonly proof: { readonly required: number; readonly pocket: number; readonly plug: number };
}

export interface Wrong {
  /** Each a sentence of its own. */
  readonly lines: readonly string[];
}

/** GET /api/changes: lines of JSON, one a change of a recipe in the folder; an empty line now and then. */
export interface Change {
  readonly file: string;
  /** Null: it is gone. */
  readonly version: string | null;
}

/** POST /api/vessel: answered by a binary glTF of the vessel, whole and cut; 422 when the text makes none. */
export interface Round {
  /** The recipe's file; null while it has none: then `shipped` names where its drawings are. */
  readonly file: string | null;
  readonly shipped: string | null;
  readonly text: string;
}

/*
 * Further: GET /api/asset?of=FILE&path=PATH or ?shipped=NAME&path=PATH: a drawing or font that a recipe names;
 * GET /api/font?name=NAME&part=0: a file of a bundled font; GET /api/zip?name=NAME: a made piece, all files;
 * GET /made/TOKEN/NAME/FILE: one of its files, to look at and print.
 */
