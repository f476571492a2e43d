import { describe, expect, it } from 'vitest';
import { area } from '../../../src/geometry/region.js';
import { read, shown, svg } from './support.js';

/** A square of 10 mm drawn with some attributes, by default under some rules: is it painted? */
function painted(attributes: string, rules = '', round: (square: string) => string = (s) => s): boolean {
  const square = `<rect id="it" class="a b" ${attributes} width="10" height="10"/>`;
  const other = '<path style="fill:black" d="M50 50h5v5h-5z"/>';
  const size = area(shown(svg(`<style>${rules}</style>${round(square)}${other}`)));
  return Math.round(size) === 125;
}

describe('what is painted (CSS Cascading 4, section 6; SVG 2, chapter 13)', () => {
  it.each([
    ['', true],
    ['fill="none"', false],
    ['fill="NONE"', false],
    ['fill="transparent"', false],
    ['fill="red"', true],
    ['fill="#12f"', true],
    ['fill="#0000"', false],
    ['fill="#12345600"', false],
    ['fill="rgba(0,0,0,0)"', false],
    ['fill="rgb(0 0 0 / 0%)"', false],
    ['fill="hsl(120, 100%, 50%)"', true],
    ['fill-opacity="0"', false],
    ['fill-opacity="0.2"', true],
    ['opacity="0"', false],
    ['visibility="hidden"', false],
    ['display="none"', false],
    ['style="display: none"', false],
    ['style="fill:none"', false],
    ['fill="none" style="fill: red"', true],
    ['style="fill:none;fill:blue"', true],
    ['style="fill:none!important;fill:blue"', false],
    ['style="not css at all; ; fill:none"', false],
    ['fill="currentColor" color="transparent"', false],
  ])('with %s: %s', (attributes, wanted) => {
    expect(painted(attributes)).toBe(wanted);
  });

  it.each([
    ['.a { fill: none }', '', false],
    ['rect { fill: none }', '', false],
    ['* { fill: none } rect { fill: black }', '', true],
    ['.c { fill: none }', '', true],
    ['.a.b { fill: none }', '', false],
    ['.a.c { fill: none }', '', true],
    ['#it { fill: black } .a { fill: none }', '', true],
    ['.a { fill: none } .b { fill: black }', '', true],
    ['.a { fill: none !important } #it { fill: black }', 'style="fill:black"', false],
    ['rect.a { fill: none } .b { fill: black }', '', false],
    ['g .a { fill: none }', '', true],
    ['svg > rect { fill: none }', '', false],
    ['.x, .a { fill: none }', '', false],
    ['rect:hover { fill: none }', '', true],
    ['@media screen { .a { fill: none } }', '', true],
    ['.a { fill: none }', 'fill="black"', false],
    ['.a { fill: none }', 'style="fill:black"', true],
    ['a[href]:first-child { font-size: 3px }', '', true],
  ])('under %s, with %s: %s', (rules, attributes, wanted) => {
    expect(painted(attributes, rules)).toBe(wanted);
  });

  it('hands inherited properties down, and no others', () => {
    const inside = (a: string) => (square: string) => `<g ${a}><g>${square}</g></g>`;
    expect(painted('', '', inside('fill="none"'))).toBe(false);
    expect(painted('fill="inherit"', '', inside('fill="none"'))).toBe(false);
    expect(painted('fill="initial"', '', inside('fill="none"'))).toBe(true);
    expect(painted('visibility="visible"', '', inside('visibility="hidden"'))).toBe(true);
    expect(painted('display="inline"', '', inside('display="none"'))).toBe(false);
    expect(painted('', 'g > g > rect { fill: none }', inside(''))).toBe(false);
    expect(painted('', 'svg g > rect { fill: none }', inside(''))).toBe(false);
    expect(painted('', 'svg > rect { fill: none }', inside(''))).toBe(true);
  });
});

describe('white', () => {
  const cut = (fill: string): number =>
    area(shown(svg(`<rect width="20" height="20"/><rect x="5" y="5" width="10" height="10" ${fill}/>`)));

  it.each([
    'fill="white"',
    'fill="#fff"',
    'fill="#FFFFFF"',
    'fill="rgb(255,255,255)"',
    'fill="hsl(0,0%,100%)"',
  ])('on top cuts away what is under it: %s', (fill) => {
    expect(cut(fill)).toBeCloseTo(300, 6);
  });

  it('is what misses pure white by no more than 5 of 255', () => {
    expect(cut('fill="#fafafa"')).toBeCloseTo(300, 6);
    expect(cut('fill="#f9f9f9"')).toBeCloseTo(400, 6);
    expect(cut('fill="yellow"')).toBeCloseTo(400, 6);
  });

  it('under the figure, or drawn by none, takes nothing away', () => {
    const under = '<rect width="50" height="50" fill="white"/><rect x="5" y="5" width="10" height="10"/>';
    expect(area(shown(svg(under)))).toBeCloseTo(100, 6);
    expect(cut('fill="none"')).toBeCloseTo(400, 6);
  });

  it('may be painted over again, coat upon coat', () => {
    const coats = Array.from({ length: 9 }, (_, i) => {
      const side = 45 - 5 * i;
      return `<rect x="${2.5 * i}" y="${2.5 * i}" width="${side}" height="${side}" fill="${i % 2 ? '#fff' : '#000'}"/>`;
    });
    const squares = Array.from({ length: 9 }, (_, i) => (45 - 5 * i) ** 2 * (i % 2 ? -1 : 1));
    expect(area(shown(svg(coats.join(''))))).toBeCloseTo(
      squares.reduce((a, b) => a + b, 0),
      6,
    );
  });
});

describe('pieces', () => {
  it('are the connected parts of what one sees, named after what lies on top', () => {
    const { figures } = read(
      svg(`<rect id="bar" width="40" height="10"/><rect x="30" y="5" width="30" height="30"/>
        <path fill="#fff" d="M10-1v20h5v-20z"/>
        <circle id="dot" cx="80" cy="80" r="5"/>`),
    );
    const pieces = figures(1).map((p) => [p.name, Math.round(area(p.region))]);
    expect(pieces.sort()).toEqual([
      ['circle "dot"', 79],
      ['rect "bar"', 100],
      ['rect on line 2', 1100],
    ]);
  });
});
