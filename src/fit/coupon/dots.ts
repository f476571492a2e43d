/**
 * Dots that number the steps: one for the first, two for the second. They are holes of radius r, drilled only a little
 * way into the field beside the pocket, and into the wood beside the plug: the waste of a loose plug, the carrier of
 * the other kind. No plug goes in them, so they need no clearance, take no load and weaken no wall.
 *
 * They stand in a strip along one side of the step, farther from the figure than the cutter is wide: cutting the plug
 * out takes that much of the waste beside it.
 */

/** How deep dots are drilled, mm: deep enough to be seen after sanding, and far from any skin (our own choice). */
export const DOT_DEPTH = 1.5;

/** Wood between dots and beyond them, mm. */
const BETWEEN = 0.8;

/** The wood of one step with its dots, lower left corner at (0, 0), mm; the figure's lower left corner in it. */
export interface Wood {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly low: number;
  readonly dots: readonly (readonly [number, number])[];
}

/**
 * The least wood round a figure of that width and height with `edge` mm on every side and a strip for `count` dots of
 * radius r, above the figure or to its left.
 */
export function woodRound(width: number, height: number, edge: number, count: number, r: number): Wood {
  const above = strip(width + 2 * edge, edge, count, r);
  const beside = strip(height + 2 * edge, edge, count, r);
  const fullHeight = edge + height + above.deep;
  const fullWidth = edge + width + beside.deep;
  if ((width + 2 * edge) * fullHeight <= fullWidth * (height + 2 * edge))
    return {
      width: width + 2 * edge,
      height: fullHeight,
      left: edge,
      low: edge,
      dots: above.dots.map(([along, out]) => [along, edge + height + out] as const),
    };
  return {
    width: fullWidth,
    height: height + 2 * edge,
    left: beside.deep,
    low: edge,
    dots: beside.dots.map(([along, out]) => [beside.deep - out, height + 2 * edge - along] as const),
  };
}

/** Dots along a side so long, in as many rows as they need: along it, and out from the figure. mm. */
function strip(
  long: number,
  edge: number,
  count: number,
  r: number,
): { deep: number; dots: (readonly [number, number])[] } {
  const pitch = 2 * r + BETWEEN;
  const row = Math.max(1, Math.floor((long - 2 * BETWEEN - 2 * r) / pitch) + 1);
  const rows = Math.ceil(count / row);
  return {
    deep: Math.max(edge, 2 * r + rows * pitch),
    dots: Array.from({ length: count }, (_, k) => [
      (long - (Math.min(row, count) - 1) * pitch) / 2 + (k % row) * pitch,
      3 * r + Math.floor(k / row) * pitch,
    ]),
  };
}
