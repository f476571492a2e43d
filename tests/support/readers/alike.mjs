/** How far two drawings that count as one may be apart, mm: more than any proof lets pass. */
const APART = 0.01;

/** Whether two drawings, as the proof reads them, have the same edges in the same order: their ends and their middles. */
export function alike(a, b) {
  const ends = ['x0', 'y0', 'x1', 'y1'];
  if (a.edges.count !== b.edges.count || a.starts.join() !== b.starts.join()) return false;
  for (let i = 0; i < a.edges.count; i++) {
    const [p, q] = [a, b].map(({ edges }) => [...ends.map((key) => edges[key][i]), ...middle(edges, i)]);
    if (!p.every((v, k) => Math.abs(v - q[k]) <= APART)) return false;
  }
  return true;
}

/** The middle of an edge, along it. */
function middle({ x0, y0, x1, y1, cx, cy, r, wide }, i) {
  const [x, y] = [(x0[i] + x1[i]) / 2, (y0[i] + y1[i]) / 2];
  if (r[i] === 0) return [x, y];
  const [dx, dy] = [x1[i] - x0[i], y1[i] - y0[i]];
  const chord = Math.hypot(dx, dy);
  // Left of the way for a clockwise arc, right of it for the other: as far as the arc rises over its chord.
  const rest = Math.hypot(x - cx[i], y - cy[i]);
  const rise = (wide[i] ? Math.abs(r[i]) + rest : Math.abs(r[i]) - rest) * (r[i] > 0 ? 1 : -1);
  return [x + (dy / chord) * rise, y - (dx / chord) * rise];
}
