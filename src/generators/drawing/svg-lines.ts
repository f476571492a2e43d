import type { Piece } from '../../geometry/artwork.js';
import type { Painted } from './display.js';
import { type Matrix, multiply } from './matrix.js';
import type { Origin } from './outlines/chain.js';
import { chainsOf } from './outlines/chains.js';
import type { Telling } from './outlines/gaps.js';
import { outlined } from './outlines/outlines.js';
import { piecesOf } from './outlines/pieces.js';
import type { Repairs, Tolerances } from './outlines/repair.js';
import { shortened } from './shortened.js';
import { elementText } from './unreadable.js';
import type { SvgElement } from './xml.js';

/**
 * The lines of an SVG that are to be read as outlines, and what is filled as ever. An element with a fill of its own
 * needs no outline; one that is filled white inside its line is taken by its line.
 */
export function linesApart(painted: readonly Painted[]): { fills: Painted[]; lines: Painted[] } {
  const figures = new Set(painted.filter((p) => !p.stroke && !p.white).map((p) => p.path));
  const lines = painted.filter((p) => p.stroke && !p.white && !figures.has(p.path));
  const lined = new Set(lines.map((p) => p.path));
  return { fills: painted.filter((p) => !p.stroke && !(p.white && lined.has(p.path))), lines };
}

/** What lines enclose by the even-odd rule, mm, as pieces named after their elements. Throws as `outlined` does. */
export function outlinePieces(
  lines: readonly Painted[],
  toMm: Matrix,
  tolerances: Tolerances,
  repairs: Repairs,
  telling: Telling,
): Piece[] {
  const chains = lines.flatMap(({ path, matrix, element }) =>
    chainsOf(path, multiply(toMm, matrix), originOf(element)),
  );
  const { region, loops } = outlined(chains, tolerances, repairs, telling);
  return piecesOf(region, loops);
}

export function originOf(element: SvgElement): Origin {
  return { name: elementText(element), piece: elementName(element), line: element.line };
}

export function elementName({ name, attributes, line }: SvgElement): string {
  const id = attributes.get('id');
  return id ? `${name} ${JSON.stringify(shortened(id))}` : `${name} on line ${line}`;
}
