import type { Box, Region } from '../geometry/region.js';
import type { Parameter } from '../schema/parameter.js';

/** The face of the work piece. Centred so that the middle of its box is (0, 0); mm, y up. */
export interface Outline {
  readonly shape: string;
  /** The whole face. */
  readonly face: Region;
  /** The face less its margin: where the pattern may go. */
  readonly inner: Region;
  readonly box: Box;
  /** The shape's own sizes in mm by parameter name (diameter, width ...), margin among them. */
  readonly sizes: Readonly<Record<string, number>>;
}

/** One shape a recipe's outline may have. */
export interface OutlineShape {
  readonly name: string;
  readonly title: string;
  readonly parameters: readonly Parameter[];
}
