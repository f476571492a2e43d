import { filletError, ringsDistance, setbacksFit } from './exact.mjs';
import { reference } from './peers.mjs';
import { field, R } from './shapes.mjs';

/**
 * Largest distance of results from what is right, both ways, mm. `free`: from the closed form (every corner
 * filleted). `dense`: from opening and closing at 0.05 µm chords.
 */
export function errors(contender, count) {
  const out = {};
  for (const name of ['free', 'dense']) {
    const shapes = field(name, count, 2);
    const results = contender.rings(contender.run(contender.prepare(shapes)), count);
    out[name] = Math.max(
      ...shapes.map(({ rings: [points] }, i) => {
        if (name === 'free') return filletError(points, R, results[i]);
        const exact = reference(points);
        return Math.max(strays(results[i], exact), strays(exact, results[i]));
      }),
    );
  }
  return out;
}

/** No shape of the free field may have edges too short for its setbacks, or it has no closed form. */
export function checkFree(shapes) {
  const bad = shapes.findIndex((s) => !setbacksFit(s.rings[0], R, 0.1));
  if (bad >= 0) throw new Error(`shape ${bad} of the free field has edges shorter than its setbacks`);
}

function strays(from, to, step = 0.05) {
  let worst = 0;
  for (const ring of from) {
    ring.forEach((p, i) => {
      const q = ring[(i + 1) % ring.length];
      const n = 2 * Math.max(1, Math.ceil(Math.hypot(q[0] - p[0], q[1] - p[1]) / step));
      for (let k = 0; k < n; k++) {
        const t = k / n;
        worst = Math.max(worst, ringsDistance(to, p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t));
      }
    });
  }
  return worst;
}
