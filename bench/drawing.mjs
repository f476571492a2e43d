/** A drawing of many segments as an SVG text: what `adopt` is timed on. */

const SIDE = 1000;
const ACROSS = 50;
const DOWN = 40;
const SEGMENTS = 25;

/** A steady stream of numbers from 0 to 1: Park and Miller's generator (CACM 31, 1988). */
function random(seed) {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/**
 * 2,000 closed shapes of 25 segments each, wavering round a circle as a traced outline does, on a page of 1 m by 1 m.
 * Half of the corners turn inwards.
 */
export function manySegments() {
  const next = random(7);
  const paths = [];
  for (let k = 0; k < ACROSS * DOWN; k++) {
    const cx = ((k % ACROSS) + 0.5) * (SIDE / ACROSS);
    const cy = (Math.floor(k / ACROSS) + 0.5) * (SIDE / DOWN);
    const points = Array.from({ length: SEGMENTS }, (_, i) => {
      const r = 5.5 + 2 * next();
      const turn = (2 * Math.PI * i) / SEGMENTS;
      return `${(cx + r * Math.cos(turn)).toFixed(3)} ${(cy + r * Math.sin(turn)).toFixed(3)}`;
    });
    paths.push(`<path d="M${points.join('L')}Z"/>`);
  }
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${SIDE}mm" height="${SIDE}mm" viewBox="0 0 ${SIDE} ${SIDE}">\n${paths.join('\n')}\n</svg>\n`;
}
