/*
 * A reader of path data that knows nothing of how it was written: M, L, A and Z in absolute coordinates, arcs by the
 * conversion from end points to centre of SVG 1.1 appendix F.6.5, with radii made larger as F.6.6 says. y stays down.
 */

export type Point = readonly [number, number];

/** A chain of points; closed ones end where they begin, without saying so twice. */
export interface Chain {
  readonly points: readonly Point[];
  readonly closed: boolean;
}

/** Steps an arc is flattened to: its area is short by a share of (sweep / STEPS)^2 / 6, under two millionths. */
const STEPS = 1000;

export function readPath(d: string): Chain[] {
  const chains: { points: Point[]; closed: boolean }[] = [];
  const rest = d.replace(/([MLAZ])([^MLAZ]*)/g, (_, command: string, said: string) => {
    const numbers = said.trim() === '' ? [] : said.trim().split(/\s+/).map(Number);
    if (numbers.some((n) => !Number.isFinite(n))) throw new Error(`no number in ${command}${said}`);
    const wants = { M: 2, L: 2, A: 7, Z: 0 }[command];
    if (numbers.length !== wants) throw new Error(`${command}${said} has ${numbers.length} numbers`);
    if (command === 'M') {
      chains.push({ points: [[numbers[0], numbers[1]]], closed: false });
      return '';
    }
    const chain = chains.at(-1);
    if (!chain || chain.closed) throw new Error(`${command} before any M`);
    if (command === 'L') chain.points.push([numbers[0], numbers[1]]);
    else if (command === 'A') chain.points.push(...arcPoints(chain.points.at(-1)!, numbers));
    else chain.closed = true;
    return '';
  });
  if (rest !== '') throw new Error(`not read: ${rest}`);
  return chains;
}

/** The points of an elliptical arc after its first, by F.6.5 and F.6.6; its x axis is never turned here. */
function arcPoints([x1, y1]: Point, [rx, ry, turn, large, sweep, x2, y2]: readonly number[]): Point[] {
  if (turn !== 0) throw new Error('a turned arc');
  // Equation 5.1: the ends from the middle of the chord.
  const [dx, dy] = [(x1 - x2) / 2, (y1 - y2) / 2];
  // Equations 6.2 and 6.3: radii that do not span the chord are made larger.
  const over = (dx * dx) / (rx * rx) + (dy * dy) / (ry * ry);
  const [a, b] = over > 1 ? [rx * Math.sqrt(over), ry * Math.sqrt(over)] : [rx, ry];
  // Equations 5.2 and 5.3: the centre.
  const below = a * a * dy * dy + b * b * dx * dx;
  const share = Math.sqrt(Math.max(0, (a * a * b * b - below) / below)) * (large === sweep ? -1 : 1);
  const [px, py] = [(share * a * dy) / b, (-share * b * dx) / a];
  const [cx, cy] = [px + (x1 + x2) / 2, py + (y1 + y2) / 2];
  // Equations 5.5 and 5.6: where it starts, and how far it goes.
  const from = Math.atan2((dy - py) / b, (dx - px) / a);
  const to = Math.atan2((-dy - py) / b, (-dx - px) / a);
  let by = to - from;
  if (sweep === 1 && by < 0) by += 2 * Math.PI;
  if (sweep === 0 && by > 0) by -= 2 * Math.PI;
  return Array.from({ length: STEPS }, (_, k) => {
    const angle = from + (by * (k + 1)) / STEPS;
    return [cx + a * Math.cos(angle), cy + b * Math.sin(angle)] as const;
  });
}

/** Area inside, mm2: outer contours go one way round and holes the other, so that they subtract. */
export function pathArea(d: string): number {
  let twice = 0;
  for (const { points, closed } of readPath(d)) {
    if (!closed) throw new Error('an open chain has no area');
    points.forEach(([x, y], i) => {
      const [u, v] = points[(i + 1) % points.length];
      // With y down what is counter-clockwise with y up has a negative area.
      twice -= x * v - u * y;
    });
  }
  return twice / 2;
}

/** Length of all closed chains, mm. */
export function pathLength(d: string): number {
  let sum = 0;
  for (const { points } of readPath(d))
    points.forEach(([x, y], i) => {
      const [u, v] = points[(i + 1) % points.length];
      sum += Math.hypot(u - x, v - y);
    });
  return sum;
}

/** The box round all of it. */
export function pathBox(d: string): { minX: number; minY: number; maxX: number; maxY: number } {
  const points = readPath(d).flatMap((c) => c.points);
  const xs = points.map((p) => p[0]);
  const ys = points.map((p) => p[1]);
  const least = (all: number[]): number => all.reduce((a, b) => Math.min(a, b));
  const most = (all: number[]): number => all.reduce((a, b) => Math.max(a, b));
  return { minX: least(xs), minY: least(ys), maxX: most(xs), maxY: most(ys) };
}
