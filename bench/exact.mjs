/**
 * Closed forms for the free field: a polygon whose corners do not interact, opened and closed by a disc of radius r,
 * is the polygon with every corner filleted to r.
 */

/** Corners with their setback r tan(turn / 2), where the tangent arc starts and ends, and its centre. */
function corners(points, r) {
  return points.map((p, i) => {
    const a = points[(i + points.length - 1) % points.length];
    const b = points[(i + 1) % points.length];
    const la = Math.hypot(p[0] - a[0], p[1] - a[1]);
    const lb = Math.hypot(b[0] - p[0], b[1] - p[1]);
    const u = [(p[0] - a[0]) / la, (p[1] - a[1]) / la];
    const v = [(b[0] - p[0]) / lb, (b[1] - p[1]) / lb];
    const turn = Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1]);
    const setback = r * Math.tan(Math.abs(turn) / 2);
    const side = turn > 0 ? r : -r;
    const start = [p[0] - u[0] * setback, p[1] - u[1] * setback];
    const end = [p[0] + v[0] * setback, p[1] + v[1] * setback];
    return {
      setback,
      length: lb,
      start,
      end,
      centre: [start[0] - u[1] * side, start[1] + u[0] * side],
      turn,
    };
  });
}

/** Do all setbacks fit their edges? (`spare` mm left over) */
export function setbacksFit(points, r, spare = 0) {
  const all = corners(points, r);
  return all.every((c, i) => c.setback + all[(i + 1) % all.length].setback + spare <= c.length);
}

/** A function giving the distance of a point to the filleted polygon's boundary, mm. */
export function filletDistance(points, r) {
  const all = corners(points, r);
  return (x, y) => {
    let best = Number.POSITIVE_INFINITY;
    all.forEach((c, i) => {
      const next = all[(i + 1) % all.length];
      best = Math.min(best, segment(c.end, next.start, x, y), arc(c, r, x, y));
    });
    return best;
  };
}

/** Points of the filleted polygon's boundary, on it exactly: edges every `step` mm and arcs every `step` mm. */
export function filletPoints(points, r, step) {
  const all = corners(points, r);
  return all.flatMap((c, i) => {
    const next = all[(i + 1) % all.length];
    const out = [];
    const n = Math.max(1, Math.ceil((r * Math.abs(c.turn)) / step));
    const dx = c.start[0] - c.centre[0];
    const dy = c.start[1] - c.centre[1];
    for (let k = 0; k <= n; k++) {
      const a = (c.turn * k) / n;
      out.push([
        c.centre[0] + dx * Math.cos(a) - dy * Math.sin(a),
        c.centre[1] + dx * Math.sin(a) + dy * Math.cos(a),
      ]);
    }
    const m = Math.max(1, Math.ceil(Math.hypot(next.start[0] - c.end[0], next.start[1] - c.end[1]) / step));
    for (let k = 1; k < m; k++) {
      const t = k / m;
      out.push([c.end[0] + (next.start[0] - c.end[0]) * t, c.end[1] + (next.start[1] - c.end[1]) * t]);
    }
    return out;
  });
}

/**
 * Largest distance of the two boundaries from each other, both ways, mm.
 * @param {[number, number][][]} rings a result that should be the filleted polygon
 */
export function filletError(points, r, rings, step = 0.05) {
  const exact = filletDistance(points, r);
  let worst = 0;
  for (const ring of rings) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length];
      const n = Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / step));
      // The middle of a chord strays most, so at least vertex and middle are taken.
      for (let k = 0; k < 2 * n; k++) {
        const t = k / (2 * n);
        worst = Math.max(worst, exact(p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t));
      }
    });
  }
  for (const [x, y] of filletPoints(points, r, step)) worst = Math.max(worst, ringsDistance(rings, x, y));
  return worst;
}

/** Distance of a point to the rings' boundary, mm. */
export function ringsDistance(rings, x, y) {
  let best = Number.POSITIVE_INFINITY;
  for (const ring of rings) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      best = Math.min(best, segment(ring[j], ring[i], x, y));
    }
  }
  return best;
}

function segment(p, q, x, y) {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  const l2 = dx * dx + dy * dy;
  const t = l2 === 0 ? 0 : Math.max(0, Math.min(1, ((x - p[0]) * dx + (y - p[1]) * dy) / l2));
  return Math.hypot(x - p[0] - t * dx, y - p[1] - t * dy);
}

function arc(c, r, x, y) {
  const u = [c.start[0] - c.centre[0], c.start[1] - c.centre[1]];
  const v = [c.end[0] - c.centre[0], c.end[1] - c.centre[1]];
  const w = [x - c.centre[0], y - c.centre[1]];
  const sense = c.turn > 0 ? 1 : -1;
  const within = (u[0] * w[1] - u[1] * w[0]) * sense >= 0 && (w[0] * v[1] - w[1] * v[0]) * sense >= 0;
  return within ? Math.abs(Math.hypot(...w) - r) : Number.POSITIVE_INFINITY;
}
