import { describeError } from '../disk/report.js';
import type { Assets } from '../generators/generator.js';
import type { Job } from '../output/job.js';
import type { Recipe } from '../recipe/recipe.js';

/** A recipe with all that it needs, made up by a command: its files are written with the piece. */
export interface Given {
  readonly text: string;
  readonly assets: Assets;
  /** Findings that the user was told of already, by their text. */
  readonly told?: ReadonlySet<string>;
  /** Called when all is known, before anything is drawn. */
  built?(job: Job): void;
  /** Called when all is proven: writes what lies beside the piece, and returns what takes it back. */
  keep(): () => void;
}

/** One piece to be made. Plain data but for its last two, so that it can be sent to a thread without them. */
export interface Task {
  /** The recipe's file, and its text as it was read. */
  readonly path: string;
  readonly text: string;
  readonly name: string;
  readonly out: string;
  readonly set: readonly string[];
  /** Numbers of spoiled parts, when only those are laid out. */
  readonly spoiled: readonly number[] | null;
  /** The recipe as it was read, where that is at hand. */
  readonly recipe?: Recipe;
  readonly given?: Given;
}

/** How it went. Plain data. */
export interface Outcome {
  /** The result in one line; null when nothing was made. */
  readonly line: string | null;
  /** The result for `--json`. */
  readonly result: object;
  readonly code: number;
  /** What went wrong, for the user; empty when the piece was made. */
  readonly errors: readonly string[];
  /** What was said meanwhile, when nobody heard it. */
  readonly told?: readonly string[];
}

export function failed(path: string, e: unknown): Outcome {
  const { lines, code } = describeError(e, path);
  return {
    line: null,
    result: { recipe: path, made: false, exitCode: code, errors: lines },
    code,
    errors: lines,
  };
}
