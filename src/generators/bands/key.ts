/** Columns of one key of this many turns: the strap's columns stand one pitch apart. */
export function keyColumns(turns: number): number {
  return 2 * turns + 1;
}

/**
 * One key of a running meander as the corners of its strap's middle line, in pitches: columns from 0, rows 0 to
 * 2 turns. It starts at (0, 0), winds in from the top, out to the bottom and ends at (1, 0); the next one starts at
 * (2 turns + 1, 0). Half a turn about (turns + 1/2, turns) maps it to itself, but for where it is cut from the next.
 */
export function keyCorners(turns: number): [number, number][] {
  const inward: [number, number][] = [[0, 2 * turns]];
  for (let i = 0; inward[inward.length - 1]![1] !== turns; i++) {
    const [x, y] = inward[inward.length - 1]!;
    const ring = 2 * Math.floor(i / 4);
    const to = [2 * turns - ring, ring + 1, ring + 2, 2 * turns - 2 - ring][i % 4]!;
    inward.push(i % 2 === 0 ? [to, y] : [x, to]);
  }
  const outward = inward.map(([x, y]): [number, number] => [keyColumns(turns) - x, 2 * turns - y]).reverse();
  return [[0, 0], ...inward, ...outward.slice(0, -1)];
}
