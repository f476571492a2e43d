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
    pieces: shapes.map((s, i) => ({ name: `shape ${i}`, region: { contours: [region.polygon(s.points)] } })),
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
function drawingOf(Drawing, contours) {
  const all = contours.flat();
  const n = all.length;
  const make = () => new Float64Array(n);
  const edges = {
    count: n,
    wide: new Uint8Array(n),
    x0: make(),
    y0: make(),
    x1: make(),
    y1: make(),
    cx: make(),
    cy: make(),
    r: make(),
  };
  for (let i = 0; i < n; i++) {
    const e = all[i];
    edges.x0[i] = e.x0;
    edges.y0[i] = e.y0;
    edges.x1[i] = e.x1;
    edges.y1[i] = e.y1;
    edges.cx[i] = e.cx;
    edges.cy[i] = e.cy;
    edges.r[i] = e.r;
  }
  const starts = new Int32Array(contours.length + 1);
  contours.forEach((c, i) => {
    starts[i + 1] = starts[i] + c.length;
  });
  return new Drawing('mm', null, null, 'pocket', edges, starts);
}
