import { describe, expect, it } from 'vitest';
import { BadInput, Refusal } from '../../../src/schema/fault.js';
import { corpusText, read, svg } from './support.js';

const square = '<rect width="9" height="9"/>';

/** What is said of a drawing, one line a fault; fails when nothing is. */
function said(text: string, scale = 1): string {
  try {
    read(text).figures(scale);
  } catch (e) {
    if (e instanceof BadInput || e instanceof Refusal) return e.message;
    throw e;
  }
  throw new Error('was read without a fault');
}

describe('a drawing that cannot be read as it looks', () => {
  it.each([
    [
      `${square}\n<text id="label" x="5" y="5">ash</text>`,
      /^drawing\.svg:3: <text id="label">: .*lettering generator/,
    ],
    ['<image href="a.png" width="5" height="5"/>', /:2: <image>: is a picture of pixels; trace it/],
    ['<foreignObject width="5" height="5"/>', /is no drawing; take it out/],
    ['<use href="other.svg#a"/>', /"other.svg#a", which is not in this file; nothing else is read/],
    ['<use href="http://example.org/a.svg#b"/>', /nothing else is read/],
    ['<use href="#gone"/>', /"#gone", which is not in the file/],
    ['<use/>', /shows ""/],
    ['<g id="a"><use href="#a"/></g>', /<use>: leads back to itself/],
    [
      '<defs><g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g></defs><use href="#a"/>',
      /leads back to itself/,
    ],
    ['<rect width="5" height="5" mask="url(#m)"/>', /has a mask, which is not read/],
    ['<rect width="5" height="5" filter="blur(2px)"/>', /has a filter/],
    [
      '<rect width="5" height="5" clip-path="circle(3px)"/>',
      /clip-path="circle\(3px\)", which is no clipPath/,
    ],
    ['<path d="M0 0h9" stroke="black" marker-end="url(#m)"/>', /markers/],
    ['<path d="M0 0h9v9" stroke="black" stroke-dasharray="2 1"/>', /stroke-dasharray="2 1".*draw the dashes/],
    [
      '<rect width="5" height="5" fill="url(#gone)"/>',
      /fill="url\(#gone\)", something that is not in the file/,
    ],
    [
      '<pattern id="p"/><rect width="5" height="5" fill="url(#p)"/>',
      /a pattern of its own; give it a plain colour/,
    ],
    ['<rect width="5" height="5" fill="12,5,7"/>', /fill="12,5,7", which is no colour/],
    ['<rect width="5" height="5" transform="spin(4)"/>', /transform that cannot be read: "spin\(4\)"/],
    [
      '<rect width="5" height="5" transform="scale(2)" style="transform-origin: center"/>',
      /transform-origin/,
    ],
    ['<rect width="5em" height="5"/>', /width="5em", which is no length; give a number, or one with mm/],
    ['<rect width="-5" height="5"/>', /negative width/],
    ['<circle r="1e400"/>', /r="1e400"/],
    ['<polygon points="1 2 3"/>', /no list of pairs: "1 2 3"/],
    ['<path d="M0 0L9"/>', /:2: <path>: .* no number at character 7/],
    [
      '<style>rect:nth-child(2) { fill: none }</style>',
      /<style>: has a rule for "rect:nth-child\(2\)".*classes and ids/,
    ],
    [
      '<svg width="5" height="5" viewBox="0 0 0 5"><rect width="5" height="5"/></svg>',
      /viewBox="0 0 0 5"; it needs/,
    ],
    [
      '<svg width="5" height="5" viewBox="0 0 5 5" preserveAspectRatio="left"><rect width="5" height="5"/></svg>',
      /preserveAspectRatio="left"/,
    ],
  ])('says where and what: %s', (inside, message) => {
    expect(said(svg(inside))).toMatch(message);
  });

  it('says all faults at once, up to eight', () => {
    expect(
      said(svg('<text/>\n<image/>\n<text/>'))
        .split('\n')
        .map((l) => l.slice(0, 14)),
    ).toEqual(['drawing.svg:2:', 'drawing.svg:3:', 'drawing.svg:4:']);
    expect(
      said(svg('<image/>\n'.repeat(30)))
        .split('\n')
        .slice(7),
    ).toEqual([expect.stringMatching(/^drawing\.svg:9:/), 'drawing.svg: and 22 more of the kind']);
  });

  it('lets be what is not shown', () => {
    read(
      svg(
        `${square}<text display="none">x</text><defs><text id="t">x</text><image/></defs><desc>words</desc>`,
      ),
    ).figures(1);
    expect(said(svg(`${square}<defs><text id="t">x</text></defs><use href="#t"/>`))).toMatch(
      /:2: <text id="t">/,
    );
  });

  it.each([
    ['', /nothing painted in it but white; give the figures a fill/],
    ['<rect width="9" height="9" fill="none"/>', /nothing painted/],
    ['<rect width="9" height="9" fill="#fff"/>', /nothing painted/],
    ['<path d="M0 0L9 9"/>', /encloses nothing/],
    ['<rect width="9" height="9"/><rect width="9" height="9" fill="white"/>', /encloses nothing/],
    [
      '<rect width="9" height="9" fill="none" stroke="#000" stroke-width=".1"/>',
      /only lines, 0\.10 mm wide at the most; fill the figures/,
    ],
  ])('says when nothing is left to cut: %s', (inside, message) => {
    expect(said(svg(inside))).toMatch(message);
  });
});

describe('text that is no drawing', () => {
  it.each([
    ['', /no sound XML/],
    ['hello', /no sound XML/],
    ['\u0000\u0001\u0002', /no sound XML/],
    ['<svg>', /:1: is no sound XML: unclosed tag: svg/],
    ['<svg>\n<g></svg>', /:2: is no sound XML/],
    ['<html><body/></html>', /starts with <html>, not with <svg>/],
    ['<x:svg xmlns:x="http://www.w3.org/2000/svg"/>', /starts with <x:svg>/],
    ['<svg width="0" height="5"/>', /not above 0/],
    ['<svg>&nbsp;</svg>', /:1: is no sound XML: an entity other than XML's own five/],
    [`</${'c'.repeat(9000)}>`, /^.{0,60}unmatched closing tag: c{39}…$/],
    [`<${'c'.repeat(9000)}/>`, /starts with <c{39}…>, not with <svg>/],
    ['<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><svg>&b;</svg>', /declares entities/],
    ['<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]><svg/>', /declares entities/],
    ['<!DOCTYPE svg [<!ENTITY % p SYSTEM "http://example.org/x.dtd"> %p;]><svg/>', /declares entities/],
  ])('is refused: %j', (text, message) => {
    expect(said(text)).toMatch(message);
  });

  it('shows no more than a little of a long text, and no control characters', () => {
    const message = said(svg(`<rect width="${'9'.repeat(5000)}\u009b31m" height="3"/>`));
    expect(message.length).toBeLessThan(250);
    expect(message).not.toMatch(/\p{Cc}/u);
  });
});

describe('a drawing that would take for ever', () => {
  const timed = (text: string): [string, number] => {
    const start = performance.now();
    const message = said(text);
    return [message, performance.now() - start];
  };
  const scribble = Array.from({ length: 3000 }, (_, k) => `L${(k * 7919) % 100} ${(k * 104729) % 97}`).join(
    '',
  );
  const doubling = Array.from(
    { length: 40 },
    (_, i) => `<g id="g${i + 1}"><use href="#g${i}"/><use href="#g${i}"/></g>`,
  );

  it.each([
    [
      'more than 2 MB',
      svg(`<path d="${'M0 0h1v1z'.repeat(250_000)}"/>`),
      /holds 2\.3 MB; a drawing is 2 MB at most/,
    ],
    ['a path of very many edges', svg(`<path d="M0 0${'h1v1'.repeat(120_000)}z"/>`), /more than 60000 edges/],
    ['very many elements', svg('<g/>'.repeat(60_000)), /more than 50000 elements/],
    ['elements nested very deep', svg('<g>'.repeat(3000)), /nested deeper than 200/],
    [
      'references that double forty times',
      svg(`<defs><g id="g0"/>${doubling.join('')}</defs><use href="#g40"/>`),
      /shows more than 100000 elements/,
    ],
    ['very many rules', svg(`<style>${'.a{fill:red}'.repeat(2000)}</style>`), /more than 1000 rules/],
    ['a long selector', svg(`<style>${'g '.repeat(50)}{fill:red}</style>`), /which is not read/],
    [
      'coats without end',
      svg('<rect width="9" height="9"/><rect width="9" height="9" fill="#fff"/>'.repeat(500)),
      /more than 400 times/,
    ],
    ['a scribble', svg(`<path d="M0 0${scribble}"/>`), /cross each other too often/],
    [
      'a scribbled line',
      svg(`<path fill="none" stroke="#000" d="M0 0${scribble}"/>`),
      /cross each other too often/,
    ],
    ['numbers beyond all wood', svg('<path d="M0 0h1e300v1z"/>'), /reaches over 50 m/],
    [
      'numbers near the largest there are',
      svg('<rect x="-1.7e308" width="1.7e308" height="1.7e308"/>'),
      /reaches over 50 m|no length/,
    ],
  ])('is refused at once: %s', (_, text, message) => {
    const [line, ms] = timed(text);
    expect(line).toMatch(message);
    expect(line.split('\n').length).toBeLessThan(10);
    expect(ms).toBeLessThan(5000);
  });
});

describe('what changes nothing', () => {
  it('reads the same drawing the same', () => {
    const text = corpusText('exported');
    expect(read(text).figures(1)).toEqual(read(text).figures(1));
  });
});
