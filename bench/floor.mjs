import Flatbush from 'flatbush';
import { spread } from './measure.mjs';
import { R } from './shapes.mjs';

/**
 * What no pass can do without: a static index over the boxes of all edges of the result, built, and asked once for each
 * edge what lies within a corner radius of it. Milliseconds.
 */
export function floorOf(contours, times) {
  const boxes = contours.flat().map(boxOf);
  const run = () => {
    const index = new Flatbush(boxes.length);
    for (const [x0, y0, x1, y1] of boxes) index.add(x0, y0, x1, y1);
    index.finish();
    let found = 0;
    for (const [x0, y0, x1, y1] of boxes) found += index.search(x0 - R, y0 - R, x1 + R, y1 + R).length;
    return found;
  };
  run();
  return spread(
    Array.from({ length: times }, () => {
      const start = performance.now();
      run();
      return performance.now() - start;
    }),
  );
}

/** The box of the chord: an arc's bulge hardly adds to it. */
function boxOf({ x0, y0, x1, y1 }) {
  return [Math.min(x0, x1), Math.min(y0, y1), Math.max(x0, x1), Math.max(y0, y1)];
}
