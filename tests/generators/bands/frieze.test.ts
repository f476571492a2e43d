import { describe, expect, it } from 'vitest';
import { bounds } from '../../../src/geometry/region.js';
import type { Values } from '../../../src/schema/parameter.js';
import { disagreement, drawn, outline } from './helper.js';

/**
 * The seven frieze groups differ in which of four operations they hold besides shifts: an upright mirror, a level
 * mirror, a glide (level mirror with a shift that is none of the band's own), a half turn (Grunbaum and Shephard, Tilings and Patterns, 1987,
 * section 1.4; from memory). Each band must hold what its group has, and nothing more.
 */
type Operation = 'upright' | 'level' | 'glide' | 'half turn';

const GROUPS: Readonly<Record<string, readonly Operation[]>> = {
  p111: [],
  p11g: ['glide'],
  p1m1: ['upright'],
  p112: ['half turn'],
  pmg2: ['upright', 'glide', 'half turn'],
  pmm2: ['upright', 'level', 'half turn'],
};

const CASES: readonly (readonly [string, string, Values])[] = [
  ['meander', 'p112', {}],
  ['meander', 'p112', { turns: 2, strap: 3, gap: 3 }],
  ['wave', 'pmg2', {}],
  ['rope', 'p112', {}],
  ['rope', 'p112', { lay: 'left' }],
  ['guilloche', 'p112', {}],
  ['guilloche', 'p11g', { strands: 3, disc: 0 }],
  ['chain', 'p112', {}],
  ['chain', 'pmm2', { link: 'oval' }],
  ['dentil', 'pmm2', {}],
  ['dentil', 'p1m1', { back: 4.4 }],
  ['ribbon', 'p112', {}],
  ['ribbon', 'pmm2', { style: 'twisted', height: 15 }],
  ['scroll', 'p111', {}],
];

/** A long board, so that its middle is far from the band's ends. */
const BOARD = outline('rectangle', { width: 300, height: 60 });

describe('the symmetry of a straight band', () => {
  it.each(CASES)('%s is %s (%o)', (name, group, values) => {
    const region = drawn(name, BOARD, { ...values, across: true });
    const { minY, maxY } = bounds(region.contours);
    const room = [-45, minY, 45, maxY] as const;
    const holds = (move: (x: number, y: number) => readonly [number, number]): boolean =>
      disagreement(region, room, move, 260, 0.012) <= 0.012;
    // The shortest shift, then every centre or axis a twelfth of it apart and finer near whole twelfths.
    const middle = (minY + maxY) / 2;
    const period = shortest(holds);
    const places = Array.from({ length: 121 }, (_, i) => (i / 120) * period);
    const found: Operation[] = [];
    if (places.some((c) => holds((x, y) => [2 * c - x, y]))) found.push('upright');
    if (holds((x, y) => [x, 2 * middle - y])) found.push('level');
    if (places.slice(6, -6).some((c) => holds((x, y) => [x + c, 2 * middle - y]))) found.push('glide');
    if (places.some((c) => holds((x, y) => [2 * c - x, 2 * middle - y]))) found.push('half turn');
    const expected = GROUPS[group]!;
    expect(found).toEqual(expected);
  });
});

/** The least shift, mm, that maps the band to itself, to a twentieth. */
function shortest(holds: (move: (x: number, y: number) => readonly [number, number]) => boolean): number {
  for (let d = 4; d < 100; d += 0.05) if (holds((x, y) => [x + d, y])) return d;
  throw new Error('no period under 100 mm');
}
