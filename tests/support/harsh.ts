/** What damaged files are made with: numbers at their ends, texts that climb out of a folder, words in the wrong place. */

const split = (text: string): string[] => text.split(' ');

/** Names and paths that climb, that a system keeps, that hold what no path may, or that are too long. */
export const PATHS: readonly string[] = [
  ...split('../x.svg ../../x.svg ./../x.svg drawings/../../x.svg x/../../../x.svg .. . ./ ../ ..\\x.svg'),
  ...split('/etc/hosts /tmp/x.svg //x/y.svg C:\\x.svg c:x.svg file:///x.svg http://localhost/x.svg data:,x'),
  ...split(
    'drawings drawings/ drawings/fish.svg/ drawings/fish.svg/x.svg recipe.json con nul.svg aux -x x- x.',
  ),
  ...split('a\0b.svg \0.ttf drawings/fish.svg\0 a\tb.svg a\nb.svg \u001b[2J.svg \u007f.svg \u202efish.svg'),
  ...split('\u2028.svg \ud800.svg a\udfff.ttf \ufeff.svg e\u0301.svg \u{1f33b}.svg %2e%2e/x.svg $HOME/x.svg'),
  ...split('~/x.svg `x`.svg *.svg ? __proto__ constructor __proto__.svg .svg'),
  ...['', ' ', 'a b.svg', 'x'.repeat(300), `${'x'.repeat(300)}.svg`, `${'a/'.repeat(200)}x.svg`],
  ...[`${'a/'.repeat(2500)}x.svg`, `${'../'.repeat(60)}x.svg`, 'W'.repeat(20_000)],
];

/** Numbers, and texts in the place of numbers. */
export const NUMBERS: readonly string[] = [
  ...split('0 -0 -1 1 2 2.5 0.1 1e308 -1e308 1e-308 5e-324 1e999 -1e999 1e15 9007199254740993'),
  ...split('NaN -Infinity 1e400mm 0x1f 1_0 .5 5. +5 5mm 2in 1/0in 7\u00b0 50% "3in" "1/8in" "-3mm" "NaN"'),
  ...split('"Infinity" "1e308mm" "1e-308in" "9e99" "1/0in"'),
  ...['3 cm', '"3 1/2 in"', '" "', '9'.repeat(400), `0.${'0'.repeat(300)}1`, '1'.repeat(20_000)],
  `"${'9'.repeat(400)}mm"`,
];

/** What may stand in the place of any JSON value and leave the text one. */
export const VALUES: readonly string[] = [
  ...NUMBERS.filter(isJson),
  ...PATHS.map((text) => JSON.stringify(text)),
  ...split('null true false [] {} [[]] [null] [1,2] {"__proto__":1} {"a":{"b":{"c":1}}}'),
  ...['"\\ud800"', '"\\u0000"', `[${'0,'.repeat(5000)}0]`, `${'['.repeat(30)}${']'.repeat(30)}`],
];

export const KEYS: readonly string[] = [
  ...split('__proto__ constructor toString hasOwnProperty length 0 a.b nmae \u0000 \ud800 \u202e'),
  ...['', ' ', 'W'.repeat(300)],
];

/** What may stand between quotes, or anywhere: paths, and what ends a text, a tag or a letter too early. Bytes, as latin1. */
export const TEXTS: readonly string[] = [
  ...PATHS.map((text) => Buffer.from(text, 'utf8').toString('latin1')),
  ...split('toString null undefined - & &amp; &#0; < \' " \\ \\" \\n \\ud800 \\u0000.ttf \\u202e \r'),
  ...split('\xed\xa0\x80 \xff\xfe \xc0\x80 \xef\xbb\xbf \x80'),
];

/** Marks of JSON, SVG and DXF. */
export const WORDS: readonly string[] = [
  ...split('null true false {} [] [[]] {"__proto__":{}} "x" {"a":1} [0] , : { } [ ] // # \0 \r \n'),
  ...split('<g> </g> <!-- --> <![CDATA[ /> d="" transform="scale(0)" href="../../x.svg" url(#x)'),
  '<!DOCTYPE x [<!ENTITY a "b">]>',
  ...split('\n0\nSECTION\n \n0\nENDSEC\n \n0\nLWPOLYLINE\n \n90\n3\n \n70\n0\n \n42\n1\n'),
];

export const UNITS: readonly string[] = ['in', 'mm', 'cm', 'ft', 'px', '', 'MM', 'mmmm'];

function isJson(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}
