import type { Pair } from '../../src/fit/pair.js';
import { bounds, circle } from '../../src/geometry/region.js';
import { drawingDxf } from '../../src/output/dxf.js';
import type { Marks } from '../../src/output/marks.js';
import { frameOf } from '../../src/output/ring.js';
import { drawingSvg } from '../../src/output/svg.js';
import { type Proof, prove } from '../../src/proof/index.js';

const noMarks: Marks = {
  outline: [],
  datum: { circle: circle(0, 0, 1), lines: [] },
  square: circle(0, 0, 1),
  label: { text: '', x: 0, y: 0, height: 1 },
};

/** A pair written as drawings without marks, read back and proven. */
export function proofOf(
  pair: Pair,
  asked: { radius: number; clearance: number },
  units: 'mm' | 'in' = 'mm',
): Proof {
  const box = bounds([...pair.pocket.contours, ...pair.plug.contours]);
  const reach = Math.max(Math.abs(box.minX), box.maxX, Math.abs(box.minY), box.maxY, 1);
  const frame = frameOf({ width: 2 * reach + 10, height: 2 * reach + 10 }, units);
  return prove(
    {
      pocketSvg: drawingSvg('pocket', 'pocket', pair.pocket, noMarks, frame),
      plugSvg: drawingSvg('plug', 'plug', pair.plug, noMarks, frame),
      pocketDxf: drawingDxf('POCKET', pair.pocket, noMarks, frame),
      plugDxf: drawingDxf('PLUG', pair.plug, noMarks, frame),
    },
    { ...asked, carrier: pair.mirrored },
  );
}
