import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { drawing } from '../../../src/generators/drawing/drawing.js';
import { recorder } from '../../../src/generators/recorder.js';
import { area, bounds, distanceToBoundary, flatten, type Region } from '../../../src/geometry/region.js';
import { BadInput, Refusal } from '../../../src/schema/fault.js';
import type { Values } from '../../../src/schema/parameter.js';
import { CUT, expectSound, outlineWith, pokesOut } from '../../support/artwork.js';
import { corpusFolder, corpusText, svg } from './support.js';

const lid = outlineWith('rectangle', { width: 100, height: 100, margin: 6 });

/** An L of 30 x 40 mm: no symmetry. */
const ELL = svg('<path d="M10 10h10v30h20v10H10z"/>');

function draw(text: string, given: Values, outline = lid): Region {
  const defaults = Object.fromEntries(
    drawing.parameters.map((p) => [p.name, p.default] as [string, number | string | boolean]),
  );
  const pen = recorder();
  const drawings = new Map([['a.svg', text]]);
  drawing.draw({ ...defaults, file: 'a.svg', ...given }, outline, pen, { drawings, fonts: new Map() }, CUT);
  return { contours: pen.artwork().pieces.flatMap((p) => p.region.contours) };
}

function box(region: Region): number[] {
  const b = bounds(region.contours);
  return [b.minX, b.minY, b.maxX, b.maxY];
}

const near = (values: readonly number[]): unknown[] => values.map((v) => expect.closeTo(v, 3));

describe('the drawing generator', () => {
  it("draws at the file's own size, its figure's middle on the outline's", () => {
    expect(box(draw(ELL, {}))).toEqual(near([-15, -20, 15, 20]));
    expect(area(draw(ELL, {}))).toBeCloseTo(600, 6);
  });

  it('scales the figure, not its page, to the width asked', () => {
    expect(box(draw(ELL, { width: 60 }))).toEqual(near([-30, -40, 30, 40]));
    expect(box(draw('<svg viewBox="0 0 9 9"><circle cx="5" cy="5" r="1"/></svg>', { width: 60 }))).toEqual(
      near([-30, -30, 30, 30]),
    );
  });

  it('turns counter-clockwise, mirrors left for right before that, and moves', () => {
    // The long leg of the L is on the left.
    const leg = (region: Region): number[] => {
      const edge = region.contours[0].reduce((a, b) =>
        Math.hypot(b.x1 - b.x0, b.y1 - b.y0) > Math.hypot(a.x1 - a.x0, a.y1 - a.y0) ? b : a,
      );
      return [(edge.x0 + edge.x1) / 2, (edge.y0 + edge.y1) / 2];
    };
    expect(leg(draw(ELL, {}))).toEqual(near([-15, 0]));
    expect(leg(draw(ELL, { mirror: true }))).toEqual(near([15, 0]));
    expect(leg(draw(ELL, { turn: Math.PI / 2 }))).toEqual(near([0, -15]));
    expect(leg(draw(ELL, { turn: Math.PI / 2, mirror: true }))).toEqual(near([0, 15]));
    expect(leg(draw(ELL, { x: 7, y: -3 }))).toEqual(near([-8, -3]));
  });

  it('fits the figure to the outline: within a thousandth of the largest that goes in', () => {
    const fitted = draw(ELL, { fit: true });
    expect(pokesOut(fitted, lid.inner)).toBe(0);
    expect(box(fitted)[3]).toBeGreaterThan(44 * 0.998);
    const round = outlineWith('circle', { diameter: 100, margin: 5 });
    const disc = draw(svg('<circle cx="20" cy="20" r="7"/>'), { fit: true }, round);
    expect(pokesOut(disc, round.inner)).toBe(0);
    expect(box(disc)[2]).toBeGreaterThan(45 * 0.998);
  });

  it('follows curves to 0.002 mm at the size drawn, however small the file has them', () => {
    const icon = '<svg viewBox="0 0 2 2"><ellipse cx="1" cy="1" rx="1" ry=".6"/></svg>';
    const big = draw(icon, { width: 80 });
    expect(box(big)[2]).toBeCloseTo(40, 3);
    // An egg has no corner on its box, so its width is known from its curves alone.
    const egg = '<svg viewBox="0 0 2 2"><path d="M.3 .2C2.9 .1 .9 2.7 .2 1.4S-.4 .3 .3 .2z"/></svg>';
    const [left, , right] = box(draw(egg, { width: 80 }));
    expect(right - left).toBeCloseTo(80, 2);
    for (let k = 0; k < 400; k++) {
      const t = (k * Math.PI) / 200;
      expect(distanceToBoundary(big, 40 * Math.cos(t), 24 * Math.sin(t))).toBeLessThan(0.002);
    }
    expect(big.contours[0].length).toBeLessThan(60);
  });

  it.each(readdirSync(corpusFolder))('draws %s sound and inside, turned', (name) => {
    const region = draw(corpusText(name.replace('.svg', '')), { fit: true, turn: 0.3 });
    expectSound(region);
    expect(pokesOut(region, lid.inner)).toBe(0);
    expect(region.contours.flatMap((c) => flatten(c, 0.1)).length).toBeGreaterThan(4);
  });
});

describe('a drawing that does not fit', () => {
  const said = (text: string, values: Values, outline = lid): string => {
    try {
      draw(text, values, outline);
    } catch (e) {
      if (e instanceof BadInput || e instanceof Refusal) return e.message;
      throw e;
    }
    throw new Error('was drawn');
  };

  it('is refused with the width that does', () => {
    const message = said(ELL, { width: 80 });
    expect(message).toMatch(/^pattern\.width: the figure, 80 mm wide and 106\.67 mm high, does not fit/);
    const [, width] = /at a width of ([0-9.]+) mm it would/.exec(message)!;
    expect(Number(width)).toBeGreaterThan(65.5);
    expect(() => draw(ELL, { width: Number(width) })).not.toThrow();
  });

  it('is told so when it lies over the opening of a ring, or half outside', () => {
    const ring = outlineWith('ring', { diameter: 180, bore: 60, margin: 6 });
    expect(said(ELL, {}, ring)).toMatch(/at no size; move it with x and y/);
    expect(said(ELL, { fit: true }, ring)).toMatch(/^pattern\.fit: .*at no size; move it with x and y/);
    expect(box(draw(ELL, { fit: true, x: 60 }, ring))[0]).toBeGreaterThan(36);
    expect(said(ELL, { x: 50 })).toMatch(/move it with x and y/);
  });

  it('takes no width too small to cut', () => {
    expect(said(ELL, { width: 0.4 })).toMatch(
      /^pattern\.width: 0\.4 mm is too small to cut; use 1 mm or more, or 0/,
    );
    expect(box(draw(ELL, { width: 1 }))[2]).toBeCloseTo(0.5, 4);
  });

  it('takes width or fit, not both', () => {
    expect(said(ELL, { width: 30, fit: true })).toMatch(/^pattern\.width: 30 mm is given beside fit/);
  });

  it('names the file in faults of the file, and the parameter when it was not loaded', () => {
    expect(said('<svg><text/></svg>', {})).toMatch(/^a\.svg:1: <text>: /);
    expect(said(ELL, { file: 'b.svg' })).toMatch(/^pattern\.file: "b\.svg" was not loaded/);
  });
});
