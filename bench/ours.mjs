/** This package's own pass, from dist/, in the same form as the peers; what is not built is left out and said. */
import { R } from './shapes.mjs';

const RULE = { r: R, thin: 'drop', touch: 'part' };

export async function ours() {
  const missing = [];
  const load = async (file) => {
    try {
      return await import(`../dist/${file}`);
    } catch (error) {
      missing.push(`dist/${file}: ${error.message.split('\n')[0]}`);
      return null;
    }
  };
  const region = await load('geometry/region.js');
  const cutter = await load('cutter/enforce.js');
  const proof = await load('proof/reach.js');
  const drawing = await load('proof/drawing.js');
  if (!region || !cutter) return { contenders: [], missing };

  const prepare = (shapes) => ({
    pieces: shapes.map((s, i) => ({
      name: `shape ${i}`,
      region: { contours: s.edges ?? s.rings.map((ring) => region.polygon(ring)) },
    })),
  });
  // Shapes keep their order and stay apart, but one may vanish or come apart: they are matched by name.
  const rings = ({ pieces }, count) => {
    const out = Array.from({ length: count }, () => []);
    for (const p of pieces) {
      const at = Number(p.name.split(' ')[1]);
      out[at].push(...p.region.contours.map((c) => region.flatten(c, 1e-5)));
    }
    return out;
  };
  const pass = (artwork) => cutter.enforce(artwork, RULE);
  const contenders = [{ name: 'pass', title: 'ours, pass alone', prepare, run: pass, rings }];
  if (proof && drawing) {
    const run = (artwork) => {
      const safe = pass(artwork);
      if (safe.region.contours.length === 0) return safe;
      const drawn = drawingOf(drawing.Drawing, safe.region.contours);
      for (const side of ['inside', 'outside']) {
        // The cap that `make` proves with: reaches beyond twice what is required are not sought.
        const found = proof.reach(drawn, side, 2 * R);
        if (found.reach < R - proof.PRESS) throw new Error(`${side} reach ${found.reach} at ${found.at}`);
      }
      return safe;
    };
    contenders.push({ name: 'proof', title: 'ours, pass + reach proof', prepare, run, rings });
  }
  return { contenders, missing };
}

/** The region as the proof sees a drawing after reading it; writing and reading are not in this measurement. */
export function drawingOf(Drawing, contours) {
  const starts = new Int32Array(contours.length + 1);
  for (let k = 0; k < contours.length; k++) starts[k + 1] = starts[k] + contours[k].length;
  const n = starts[contours.length];
  const make = () => new Float64Array(n);
  const [x0, y0, x1, y1, cx, cy, r] = [make(), make(), make(), make(), make(), make(), make()];
  let i = 0;
  for (const c of contours)
    for (const e of c) {
      x0[i] = e.x0;
      y0[i] = e.y0;
      x1[i] = e.x1;
      y1[i] = e.y1;
      cx[i] = e.cx;
      cy[i] = e.cy;
      r[i] = e.r;
      i++;
    }
  const edges = { count: n, wide: new Uint8Array(n), x0, y0, x1, y1, cx, cy, r };
  return new Drawing('mm', null, null, 'pocket', edges, starts);
}
