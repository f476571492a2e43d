import { drawRegion } from '../../geometry/draw-region.js';
import type { Pen } from '../../geometry/pen.js';
import { area, bounds, type Region } from '../../geometry/region.js';
import { Refusal } from '../../schema/fault.js';
import type { Parameter, Values } from '../../schema/parameter.js';
import { bandParameter, fieldOf, fillParameter, frameParameter, placer } from '../field.js';
import type { Generator } from '../generator.js';
import { bad, length, mm, num, seed, turn } from '../values.js';
import { cutOff, depth, insetTile } from './inset.js';
import { clippedStraps, wholeStraps } from './straps.js';
import type { LaidTile, Lay, TileKind, TileSource } from './tile.js';

export type { LaidTile, Lay, Point, TileKind, TileSource } from './tile.js';

/** What the edge leaves of a tile must be this share of its area: less would be a lonely dot. */
const SCRAP = 0.15;

/** What sets one generator of tiles apart from another. */
export interface TilePattern {
  readonly name: string;
  readonly title: string;
  readonly summary: string;
  /** Its own parameters; the shared ones follow them. */
  readonly parameters: readonly Parameter[];
  /** Default length of the tiles' edges, mm; which edge, where tiles have several. */
  readonly edge: { readonly default: number; readonly meaning?: string; readonly say?: string };
  /** Every choice that any of its tilings offers. */
  readonly kinds: readonly TileKind[];
  /** The clause of that choice, where it is not the usual one. */
  readonly choosing?: string;
  /** Defaults of shared parameters by name, where they are not the usual ones. Angles in degrees. */
  readonly defaults?: Readonly<Record<string, number | string | boolean>>;
  source(values: Values): TileSource;
}

/** A generator that lays the tiles of a source and lets in straps along their edges, or tiles. */
export function tilePattern(about: TilePattern): Generator {
  const { name, title, summary, source } = about;
  return {
    name,
    title,
    family: 'tilings',
    summary,
    parameters: [...about.parameters, ...shared(about).map((p) => withDefault(p, about.defaults?.[p.name]))],
    draw(values, outline, pen) {
      const field = fieldOf(outline, num(values, 'band'));
      const { kinds, tiles } = source(values);
      const laid = tiles(layOf(values), bounds(field.contours));
      const some = values.plug === 'straps' ? [] : chosen(String(values.tiles), kinds, laid);
      if (values.plug === 'tiles') drawTiles(values, some, field, pen);
      else drawStraps(values, laid, new Set(some), field, pen);
    },
  };
}

/** How the values ask for the tiles to lie. */
export function layOf(values: Values): Lay {
  return {
    edge: num(values, 'edge'),
    turn: num(values, 'turn'),
    centre: values.centre as Lay['centre'],
  };
}

export const centreParameter: Parameter = {
  kind: 'choice',
  name: 'centre',
  meaning: 'What lies on the middle of the outline.',
  say: 'one … on the middle',
  default: 'tile',
  options: [
    { value: 'tile', meaning: 'the middle of a tile (of the largest kind)' },
    { value: 'vertex', meaning: 'a corner where tiles meet' },
    { value: 'edge', meaning: 'the middle of an edge' },
  ],
};

const leastParameter: Parameter = length(
  'least',
  'Width below which what the edge of the pattern leaves of a tile is left off.',
  'scraps under … left off',
  4,
  0,
  50,
);

function shared({ edge, kinds, choosing }: TilePattern): Parameter[] {
  return [
    length(
      'edge',
      edge.meaning ?? "Length of the tiles' edges.",
      edge.say ?? 'edges … long',
      edge.default,
      1,
    ),
    {
      kind: 'choice',
      name: 'plug',
      meaning: 'What is let in.',
      say: '… let in',
      default: 'straps',
      options: [
        { value: 'straps', meaning: 'straps of one width along the edges' },
        { value: 'tiles', meaning: 'the tiles themselves, with walls between them' },
        { value: 'both', meaning: 'straps along all edges, and the chosen tiles solid between them' },
      ],
    },
    length('strap', 'Width of the straps.', 'straps … wide', 4.4, 0.2),
    length('wall', 'Width of the walls between tiles.', 'walls … wide between tiles', 4.4, 0),
    {
      kind: 'choice',
      name: 'tiles',
      meaning: 'Which tiles are let in.',
      say: choosing ?? '… tiles chosen',
      default: 'all',
      options: [
        { value: 'all', meaning: 'all of them' },
        ...kinds.map(({ value, meaning }) => ({ value, meaning })),
      ],
    },
    fillParameter,
    frameParameter,
    leastParameter,
    bandParameter,
    centreParameter,
    turn,
    seed,
  ];
}

function withDefault(p: Parameter, value: number | string | boolean | undefined): Parameter {
  return value === undefined ? p : ({ ...p, default: value } as Parameter);
}

function drawStraps(
  values: Values,
  tiles: readonly LaidTile[],
  solid: ReadonlySet<LaidTile>,
  field: Region,
  pen: Pen,
): void {
  const strap = num(values, 'strap');
  const open = tiles.filter((t) => !solid.has(t));
  if (open.length === 0) throw bad('tiles', 'no tile is left open between the straps; choose some, not all');
  if (open.every((t) => insetTile(t.points, strap / 2).contours.length === 0))
    throw bad('strap', `${mm(strap)} closes every tile; make it less than ${mm(widest(open))}`);
  const straps =
    values.fill === 'clip'
      ? clippedStraps(open, strap, values.frame === true, num(values, 'least'), field)
      : wholeStraps(tiles, solid, strap, field);
  if (straps.contours.length === 0) throw nothingFits(values);
  if (values.fill === 'clip' && area(field) - area(straps) < 1e-6)
    throw new Refusal(
      'nothing-fits',
      `pattern.strap: ${mm(strap)} leaves no opening within the outline; make it narrower or the edge longer`,
    );
  pen.piece('straps');
  drawRegion(pen, straps);
}

/** The laid tiles of the kinds asked for. */
function chosen(kind: string, kinds: readonly TileKind[], laid: readonly LaidTile[]): readonly LaidTile[] {
  if (kind === 'all') return laid;
  const choice = kinds.find((k) => k.value === kind);
  if (!choice) {
    const others = ['all', ...kinds.map((k) => k.value)].join(' or ');
    throw bad('tiles', `this tiling has none of kind ${kind}; use ${others}`);
  }
  const wanted = choice.of ?? [kind];
  return laid.filter((t) => wanted.includes(t.kind));
}

function drawTiles(values: Values, tiles: readonly LaidTile[], field: Region, pen: Pen): void {
  const wall = num(values, 'wall');
  if (tiles.length === 0)
    throw bad('tiles', `no tile of kind ${values.tiles} comes near the outline; use all, or smaller ones`);
  const motifs = tiles.map((t) => ({ name: t.name, region: insetTile(t.points, wall / 2) }));
  if (motifs.every((m) => m.region.contours.length === 0))
    throw bad('wall', `${mm(wall)} leaves nothing of the tiles; make it less than ${mm(widest(tiles))}`);
  const place = placer(field);
  let drawn = 0;
  for (const { name, region } of motifs) {
    const where = place(region);
    if (where === 'outside' || (where === 'across' && values.fill === 'whole')) continue;
    const kept = where === 'inside' ? region : cutOff(region, field, num(values, 'least'));
    if (area(kept) < SCRAP * area(region)) continue;
    pen.piece(name);
    drawRegion(pen, kept);
    drawn++;
  }
  if (drawn > 0) return;
  if (values.fill === 'whole') throw nothingFits(values);
  throw new Refusal(
    'nothing-fits',
    `pattern.least: nothing as wide as ${mm(num(values, 'least'))} is left of the tiles at the edge; make it smaller`,
  );
}

/** The strap or wall that leaves nothing of any tile, mm. One tile stands for its kind. */
function widest(tiles: readonly LaidTile[]): number {
  const one = new Map(tiles.map((t) => [t.kind, t.points]));
  return 2 * depth([...one.values()]);
}

function nothingFits(values: Values): Refusal {
  return new Refusal(
    'nothing-fits',
    `pattern.edge: no whole tile of edge ${mm(num(values, 'edge'))} fits the outline; make it smaller`,
  );
}
