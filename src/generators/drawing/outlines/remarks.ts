import type { Remark } from '../../../geometry/artwork.js';
import type { Repair, RepairKind } from './repair.js';

type Place = readonly [number, number];

/** Each kind of repair as a finding: how many, the largest, its place, and what to do to have it otherwise. */
const SAID: Readonly<{ [kind in RepairKind]: { code: string; say: (n: number, size: string) => string } }> = {
  joined: joins((n, size) => `${places(n, 'gap')} between lines ${was(n)} joined, the widest ${size}`),
  closed: joins((n, size) => `${places(n, 'outline')} ${was(n)} closed over a gap, the widest ${size}`),
  duplicate: {
    code: 'drawing-duplicates',
    say: (n, size) =>
      `${places(n, 'line or shape', 'lines or shapes')} drawn twice ${was(n)} taken once, the longest ${size}`,
  },
  overlap: {
    code: 'drawing-overlaps',
    say: (n, size) =>
      `${places(n, 'line')} running along another ${was(n)} taken once there, over ${size} at the most`,
  },
  crossing: {
    code: 'drawing-crossings',
    say: (n) =>
      `outlines cross at ${places(n, 'place')}: what lies within an odd number of them is the figure; draw them apart to have it otherwise`,
  },
  speck: {
    code: 'drawing-specks',
    say: (n, size) =>
      `${places(n, 'speck')} ${was(n)} dropped, the largest ${size} across; set speck to 0 mm to keep them`,
  },
  refitted: {
    code: 'drawing-refitted',
    say: (n, size) =>
      `${places(n, 'run')} of short segments became lines and arcs, ${size} off at the most; set refit to 0 mm to keep them`,
  },
  'left-out': {
    code: 'drawing-left-out',
    say: (n) => `${places(n, 'entity', 'entities')} of the drawing ${was(n)} left out`,
  },
};

function joins(say: (n: number, size: string) => string): { code: string; say: typeof say } {
  return {
    code: 'drawing-joined',
    say: (n, size) => `${say(n, size)}; look there, or set join smaller to be told instead`,
  };
}

function was(n: number): string {
  return n === 1 ? 'was' : 'were';
}

function places(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}

/**
 * Repairs as remarks, one a kind.
 * @param place from the repairs' places to the piece's, mm
 */
export function repairRemarks(repairs: readonly Repair[], place: (at: Place) => Place): Remark[] {
  const groups = new Map<string, Repair[]>();
  for (const r of repairs) {
    const key = `${r.kind} ${r.what ?? ''}`;
    const list = groups.get(key);
    if (list) list.push(r);
    else groups.set(key, [r]);
  }
  return [...groups.values()].map((list) => {
    const count = list.reduce((sum, r) => sum + r.count, 0);
    const worst = list.reduce((a, b) => (b.size > a.size ? b : a));
    const { code, say } = SAID[worst.kind];
    const text = worst.what === undefined ? say(count, size(worst.size)) : left(worst.what, count);
    const known = worst.what === undefined || worst.size > 0;
    return {
      code,
      at: known ? place(worst.at) : null,
      numbers: { count, size: worst.size },
      text: `the drawing: ${text}`,
    };
  });
}

function left(what: string, count: number): string {
  return what.startsWith('line between')
    ? `${places(count, 'line')} within or between shapes ${was(count)} left out: a line has no width; draw each shape closed by itself to have them apart`
    : `${count} ${what}, ${was(count)} left out: no outline is read from ${count === 1 ? 'it' : 'them'}`;
}

function size(mm: number): string {
  return mm >= 0.001 || mm === 0 ? `${Number(mm.toFixed(3))} mm` : 'under 0.001 mm';
}
