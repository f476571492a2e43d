import type { Piece } from '../../../geometry/artwork.js';
import { BadInput } from '../../../schema/fault.js';
import { type Matrix, multiply } from '../matrix.js';
import { chainsOf, placeText } from '../outlines/chains.js';
import { AS_DRAWN, type ReadAs, remembered, scaledBy } from '../outlines/options.js';
import { outlined } from '../outlines/outlines.js';
import { piecesOf } from '../outlines/pieces.js';
import { type Repair, Repairs } from '../outlines/repair.js';
import type { Drawing } from '../read-svg.js';
import { shortened } from '../shortened.js';
import { DrawingFaults } from '../unreadable.js';
import { readDocument } from './document.js';
import { type Placed, type Placing, placeAll } from './place.js';
import { spanOf } from './span.js';

/** Coordinates past this, mm, are no wood's. */
const FARTHEST = 50_000;

/**
 * Reads a DXF text: its lines are outlines, and what they enclose by the even-odd rule is the figure. A file that names
 * no unit is taken to be in mm. `source` names the file in messages. Throws BadInput with every fault found, each with
 * its line and entity, and Refusal for a drawing too large.
 */
export function readDxf(text: string, source: string, as: ReadAs = AS_DRAWN): Drawing {
  const document = readDocument(text, source);
  const faults = new DrawingFaults(source);
  const only = layersOf(as.layer);
  const placing = placeAll(document, only, faults);
  if (only) checkLayers(only, placing, document.layers, source);
  faults.check();
  if (placing.placed.length === 0) throw nothing(placing, source);
  const unit = document.unit ?? 1;
  const span = spanOf(placing.placed);
  const extent = span.extent * unit;
  const [mx, my] = span.middle;
  const draw = (scale: number, at: number): { pieces: Piece[]; repairs: readonly Repair[] } => {
    if (!(extent * scale <= FARTHEST))
      throw new BadInput([
        {
          source,
          where: '',
          message: `reaches over ${FARTHEST / 1000} m; give it a width, or move its parts together`,
        },
      ]);
    const s = unit * scale;
    const chains = placing.placed.flatMap((p) => chainsOf(p.path, placed(p, s, mx, my), originOf(p)));
    const repairs = new Repairs();
    for (const [what, { count, line }] of placing.leftOut)
      repairs.add('left-out', [0, 0], 0, `${what}, the first on line ${line}`, count);
    const { region, loops } = outlined(chains, scaledBy(as.tolerances, scale / at), repairs, {
      source,
      place: (x, y) => placeText(x / scale + mx * unit, y / scale + my * unit),
    });
    return { pieces: piecesOf(region, loops), repairs: repairs.list() };
  };
  const drawnAt = remembered(draw);
  return {
    page: null,
    unit: document.unit === null ? null : document.unit === 25.4 ? 'in' : 'mm',
    extent: extent === 0 ? 1 : extent,
    middle: [mx * unit, my * unit],
    figures(scale, at = scale) {
      const { pieces } = drawnAt(scale, at);
      if (pieces.length > 0) return pieces;
      throw new BadInput([
        { source, where: '', message: 'encloses nothing: give it closed outlines of some size' },
      ]);
    },
    repairsAt: (scale) => drawnAt(scale, scale).repairs,
    get repairs() {
      return drawnAt(1, 1).repairs;
    },
  };
}

/** Names of layers in lower case; null for all. */
function layersOf(text: string): ReadonlySet<string> | null {
  const names = text.split(',').map((n) => n.trim().toLowerCase());
  const given = names.filter((n) => n !== '');
  return given.length === 0 ? null : new Set(given);
}

function checkLayers(
  only: ReadonlySet<string>,
  { layers }: Placing,
  states: ReadonlyMap<string, { readonly name: string }>,
  source: string,
): void {
  const held = new Map(
    [...layers].map((name) => [name.toLowerCase(), states.get(name.toLowerCase())?.name ?? name]),
  );
  const missing = [...only].find((name) => !held.has(name));
  if (missing === undefined) return;
  const list = [...held.values()].slice(0, 12).map((n) => JSON.stringify(shortened(n)));
  throw new BadInput([
    {
      where: 'pattern.layer',
      message: `no layer ${JSON.stringify(shortened(missing))} of ${source} holds anything; those that do: ${list.join(', ') || 'none'}`,
    },
  ]);
}

function nothing({ leftOut }: Placing, source: string): BadInput {
  const list = [...leftOut].slice(0, 6).map(([what, { count }]) => `${count} ${what}`);
  const holds = list.length > 0 ? ` (it holds ${list.join(', ')}, which are no outlines)` : '';
  return new BadInput([
    {
      source,
      where: '',
      message: `shows no lines${holds}; give closed outlines on layers that are not off or frozen`,
    },
  ]);
}

function placed({ matrix }: Placed, s: number, mx: number, my: number): Matrix {
  // Moved before it is scaled: far from the origin the digits are kept.
  return multiply([s, 0, 0, s, 0, 0], multiply([1, 0, 0, 1, -mx, -my], matrix));
}

function originOf({ kind, line, layer }: Placed): { name: string; piece: string; line: number } {
  const on = layer === '0' ? '' : shortened(layer);
  return {
    name: on === '' ? kind : `${kind} on layer ${JSON.stringify(on)}`,
    piece: `${on === '' ? kind : `${on} ${kind}`} on line ${line}`,
    line,
  };
}
