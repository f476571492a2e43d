import { MM_PER_INCH, numberText, parseLength, toMillimetres, type Units } from '../../schema/units.js';
import { type Written, writtenAt } from '../state/edit.js';
import type { Book, Entry } from '../worker/protocol.js';
import { sentence } from './families.js';

/** Lengths of a shape that say nothing of its size. */
const ASIDE = new Set(['margin', 'corner']);

/** What a recipe, taken apart, makes: "Rectangle, 360 × 220 mm" and "Tiling". Empty for what is no recipe. */
export function pieceLines(
  tree: unknown,
  { outlines, generators }: Pick<Book, 'outlines' | 'generators'>,
  units: Units,
): string[] {
  const own = writtenAt(tree, ['units']) === 'in' ? 'in' : 'mm';
  const shape = outlines.find((o) => o.name === writtenAt(tree, ['outline', 'shape']));
  const vessel = vesselLine(tree, own, units);
  if (!shape && vessel === null) return [];
  const sizes = shape && sizesOf(shape, (name) => writtenAt(tree, ['outline', name]), own);
  const patterns = layersOf(tree).map(
    (name) => generators.find((g) => g.name === name)?.title.toLowerCase() ?? name,
  );
  return [
    vessel ?? (sizes ? `${shape!.title}, ${sizesText(sizes, units)}` : shape!.title),
    ...(patterns.length === 0 ? [] : [sentence([...new Set(patterns)].join(', '))]),
  ];
}

/** "Vessel of 12 staves, 90 mm high"; null for a flat piece. */
function vesselLine(tree: unknown, own: Units, units: Units): string | null {
  const sides = writtenAt(tree, ['bowl', 'sides']);
  if (typeof sides !== 'number') return null;
  const of = sides === 1 ? 'Turned from a flat board' : `Vessel of ${sides} staves`;
  const height = writtenAt(tree, ['bowl', 'height']);
  const mm = typeof height === 'number' ? toMillimetres(height, own) : parseLength(String(height));
  return typeof mm === 'number' ? `${of}, ${sizesText([mm], units)} high` : of;
}

/** What else one may look for a piece by: its generators' names and its woods. */
export function pieceWords(tree: unknown): string {
  const woods = ['field', 'plug'].map((part) => writtenAt(tree, ['woods', part]));
  return [...layersOf(tree), ...woods].filter((word) => typeof word === 'string').join(' ');
}

/** Names of the generators of a recipe's layers. */
function layersOf(tree: unknown): string[] {
  return [writtenAt(tree, ['pattern']) ?? []]
    .flat()
    .map((layer) => writtenAt(layer, ['generator']))
    .filter((name) => typeof name === 'string');
}

/** The shape's lengths, mm; null when one cannot be read. */
function sizesOf(
  { parameters }: Entry,
  written: (name: string) => Written | undefined,
  own: Units,
): number[] | null {
  const sizes: number[] = [];
  for (const p of parameters) {
    if (p.kind !== 'length' || ASIDE.has(p.name)) continue;
    const value = written(p.name) ?? p.default;
    const mm =
      typeof value === 'string'
        ? parseLength(value)
        : typeof value === 'number'
          ? toMillimetres(value, written(p.name) === undefined ? 'mm' : own)
          : null;
    if (typeof mm !== 'number') return null;
    sizes.push(mm);
  }
  return sizes;
}

function sizesText(sizes: readonly number[], units: Units): string {
  const each = sizes.map((mm) => (units === 'in' ? numberText(mm / MM_PER_INCH, 2) : numberText(mm, 1)));
  // A size is not broken over two lines.
  return `${each.join(' × ')} ${units}`.replaceAll(' ', '\u00a0');
}
