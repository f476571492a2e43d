import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { readTransform } from '../../../src/generators/drawing/matrix.js';
import { area, bounds } from '../../../src/geometry/region.js';
import { shown, svg } from './support.js';

const box = (inside: string): number[] => {
  const b = bounds(shown(svg(inside)).contours);
  return [b.maxX - b.minX, b.maxY - b.minY];
};

/** What these tests use of paper.js, whose core build has no types of its own. */
interface PaperMatrix {
  readonly values: number[];
  translate(x: number, y: number): PaperMatrix;
  rotate(degrees: number, centre: readonly [number, number]): PaperMatrix;
  scale(x: number, y: number): PaperMatrix;
  append(m: PaperMatrix): PaperMatrix;
}
const paper = createRequire(import.meta.url)('paper/dist/paper-core.js') as {
  Matrix: new (...values: number[]) => PaperMatrix;
};

describe('basic shapes (SVG 2, chapter 10)', () => {
  it.each([
    ['<rect x="5" y="7" width="30" height="20"/>', 600],
    // A rounded rectangle lacks (4 - pi) of the product of its corner radii.
    ['<rect width="30" height="20" rx="4"/>', 600 - (4 - Math.PI) * 16],
    ['<rect width="30" height="20" rx="4" ry="6"/>', 600 - (4 - Math.PI) * 24],
    ['<rect width="30" height="20" ry="5"/>', 600 - (4 - Math.PI) * 25],
    ['<rect width="30" height="20" rx="auto" ry="5"/>', 600 - (4 - Math.PI) * 25],
    // Radii are held to half the sides.
    ['<rect width="30" height="20" rx="100"/>', Math.PI * 150],
    ['<circle cx="50" cy="50" r="12"/>', Math.PI * 144],
    ['<circle r="10%"/>', Math.PI * 100],
    ['<ellipse cx="50" cy="50" rx="30" ry="7"/>', Math.PI * 210],
    ['<ellipse rx="9"/>', Math.PI * 81],
    ['<polygon points="0,0 40,0 40,30"/>', 600],
    ['<polyline points="0 0 40 0 40 30"/>', 600],
    // A star whose inside is wound twice: the area of {5/2}, 5 R^2 sin(36) sin(18) / sin(126) less the pentagon, evenodd.
    [`<polygon points="${star()}"/>`, starArea()],
    [`<polygon points="${star()}" fill-rule="evenodd"/>`, starArea() - pentagonArea()],
    ['<path d="M0 0H40V30Z"/>', 600],
    ['<line x1="10" y1="10" x2="40" y2="50" stroke="black" stroke-width="3"/>', 150],
  ])('gives %s its area by closed form', (inside, wanted) => {
    // Curves stay within 0.0015 mm: for these edges of at most 120 mm, 0.18 mm2; in truth they err both ways.
    expect(Math.abs(area(shown(svg(inside))) - wanted)).toBeLessThan(2e-3 * Math.sqrt(wanted));
  });

  it('keeps a circle a circle: true arcs about its centre, also turned, mirrored and scaled evenly', () => {
    const [contour] = shown(
      svg('<circle transform="rotate(33) scale(-2 2)" cx="20" cy="4" r="8"/>'),
    ).contours;
    expect(contour.map((e) => Math.abs(e.r))).toEqual(contour.map(() => expect.closeTo(16, 9)));
    expect(new Set(contour.map((e) => e.cx.toFixed(6))).size).toBe(1);
  });

  it('draws up what the file has down', () => {
    const { contours } = shown(svg('<path d="M0 0H40V10H10V60H0Z"/>'));
    const b = bounds(contours);
    const top = contours[0].filter(
      (e) => e.r === 0 && Math.abs(e.y0 - b.maxY) < 1e-9 && Math.abs(e.y1 - b.maxY) < 1e-9,
    );
    expect(top.map((e) => Math.abs(e.x1 - e.x0))).toEqual([expect.closeTo(40, 9)]);
  });
});

describe('units (CSS Values and Units 3, section 6.2: 1in = 2.54cm = 25.4mm = 101.6Q = 72pt = 6pc = 96px)', () => {
  it.each([
    ['1in', 25.4],
    ['2.54cm', 25.4],
    ['25.4mm', 25.4],
    ['101.6Q', 25.4],
    ['72pt', 25.4],
    ['6pc', 25.4],
    ['96px', 25.4],
    ['96', 25.4],
    ['9.6e1PX', 25.4],
  ])('%s is an inch', (length, mm) => {
    const plain = (inside: string, a = ''): number[] => {
      const b = bounds(shown(`<svg xmlns="http://www.w3.org/2000/svg" ${a}>${inside}</svg>`).contours);
      return [b.maxX - b.minX, b.maxY - b.minY];
    };
    expect(plain(`<rect width="${length}" height="${length}"/>`)[0]).toBeCloseTo(mm, 9);
    expect(plain('<rect width="10" height="5"/>', `width="${length}" viewBox="0 0 10 20"`)[0]).toBeCloseTo(
      mm,
      9,
    );
    expect(plain('<rect width="10" height="5"/>', `height="${length}" viewBox="0 0 10 20"`)[1]).toBeCloseTo(
      mm / 4,
      9,
    );
  });

  it('takes a view box without a size as pixels', () => {
    const b = bounds(
      shown('<svg viewBox="0 0 96 96" width="100%"><rect width="96" height="48"/></svg>').contours,
    );
    expect(b.maxX - b.minX).toBeCloseTo(25.4, 9);
  });
});

describe('transforms', () => {
  it.each([
    ['translate(3)', [1, 0, 0, 1, 3, 0]],
    ['translate(3,-4.5)', [1, 0, 0, 1, 3, -4.5]],
    ['scale(2)', [2, 0, 0, 2, 0, 0]],
    ['scale(2 -3)', [2, 0, 0, -3, 0, 0]],
    ['skewX(45)', [1, 0, 1, 1, 0, 0]],
    ['skewY(-45)', [1, -1, 0, 1, 0, 0]],
    ['rotate(90)', [0, 1, -1, 0, 0, 0]],
    ['rotate(810)', [0, 1, -1, 0, 0, 0]],
    ['rotate(90 10 20)', [0, 1, -1, 0, 30, 10]],
    ['matrix(1-2 3 .4.5 6)', [1, -2, 3, 0.4, 0.5, 6]],
    [' translate( 1 , 2 ) , scale(3)rotate(180)', [-3, 0, 0, -3, 1, 2]],
    ['translate(10px, 4px) rotate(90deg)', [0, 1, -1, 0, 10, 4]],
    ['', [1, 0, 0, 1, 0, 0]],
  ])('reads "%s" (SVG 1.1, section 7.6)', (text, wanted) => {
    readTransform(text).forEach((v, i) => {
      expect(v).toBeCloseTo(wanted[i], 12);
    });
  });

  it('multiplies as paper.js does', () => {
    const theirs = new paper.Matrix(1, 0, 0, 1, 0, 0)
      .translate(12, -7)
      .rotate(31, [5, 9])
      .scale(2, -0.7)
      .append(new paper.Matrix(1, 0.2, -0.4, 0.9, 3, 4));
    const ours = readTransform('translate(12 -7) rotate(31 5 9) scale(2 -.7) matrix(1 .2 -.4 .9 3 4)');
    ours.forEach((v, i) => {
      expect(v).toBeCloseTo(theirs.values[i], 10);
    });
  });

  it.each([
    'rotate(1 2)',
    'scale()',
    'turn(3)',
    'translate(1',
    'scale(2) x',
    'translate(1,,2)',
    'scale(1e999)',
  ])('refuses "%s"', (text) => {
    expect(() => readTransform(text)).toThrow(/transform that cannot be read/);
  });

  it('scales an area by the determinant, curves and strokes with it', () => {
    const m = 'matrix(1.4 .3 -.5 .8 10 10)';
    const det = 1.4 * 0.8 + 0.3 * 0.5;
    expect(area(shown(svg(`<circle transform="${m}" r="10"/>`)))).toBeCloseTo(det * Math.PI * 100, 1);
    const ring = `<circle transform="${m}" r="10" fill="none" stroke="black" stroke-width="4"/>`;
    expect(area(shown(svg(ring)))).toBeCloseTo(det * Math.PI * (144 - 64), 1);
  });

  it('fits a view box into its viewport (SVG 2, section 8.6)', () => {
    const inner = (how: string): string =>
      `<svg width="40" height="20" viewBox="0 0 10 10" overflow="visible" preserveAspectRatio="${how}"><rect width="10" height="10"/></svg>`;
    expect(box(inner('xMidYMid'))).toEqual([expect.closeTo(20, 9), expect.closeTo(20, 9)]);
    expect(box(inner('xMidYMid slice'))).toEqual([expect.closeTo(40, 9), expect.closeTo(40, 9)]);
    expect(box(inner('none'))).toEqual([expect.closeTo(40, 9), expect.closeTo(20, 9)]);
  });
});

function star(): string {
  const at = (k: number): string => {
    const a = (k * 4 * Math.PI) / 5;
    return `${50 + 40 * Math.sin(a)},${50 - 40 * Math.cos(a)}`;
  };
  return [0, 1, 2, 3, 4].map(at).join(' ');
}

/** Radius of the inner pentagon of {5/2}: R cos(72) / cos(36). */
const INNER = (40 * Math.cos((2 * Math.PI) / 5)) / Math.cos(Math.PI / 5);

function starArea(): number {
  return 5 * 40 * INNER * Math.sin(Math.PI / 5);
}

function pentagonArea(): number {
  return 2.5 * INNER * INNER * Math.sin((2 * Math.PI) / 5);
}
