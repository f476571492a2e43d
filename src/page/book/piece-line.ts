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
  const shape = outlines.find((o) => o.name === writtenAt(tree, ['outline', 'shape']));
  if (!shape) return [];
  const own = writtenAt(tree, ['units']) === 'in' ? 'in' : 'mm';
  const sizes = sizesOf(shape, (name) => writtenAt(tree, ['outline', name]), own);
  const patterns = layersOf(tree).map(
    (name) => generators.find((g) => g.name === name)?.title.toLowerCase() ?? name,
  );
  return [
    sizes === null ? shape.title : `${shape.title}, ${sizesText(sizes, units)}`,
    ...(patterns.length === 0 ? [] : [sentence([...new Set(patterns)].join(', '))]),
  ];
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
