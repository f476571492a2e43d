import { Refusal } from '../../../schema/fault.js';
import { IDENTITY, type Matrix, multiply } from '../matrix.js';
import type { Subpath } from '../outline-path.js';
import { shortened } from '../shortened.js';
import { type DrawingFaults, Unreadable } from '../unreadable.js';
import type { Drawn, DxfDocument, LayerState } from './document.js';
import type { Entity } from './entity.js';
import { insertMatrices } from './insert.js';
import { polylinePath } from './polyline.js';
import { drawsLines, shapePaths } from './shapes.js';

/** Bounds for what blocks can multiply. */
const MOST_VISITS = 1_000_000;
const MOST_STEPS = 1_000_000;
/** Curves become several arcs each. */
const MOST_CURVES = 30_000;
const MOST_NESTING = 64;

const TEXT =
  'is text, which depends on fonts; use the lettering generator in a layer of its own, or turn it into lines';
const SPACE = 'is a body or face in space; draw its outline in the plane';
const REFUSED: Readonly<{ [kind: string]: string }> = {
  TEXT,
  MTEXT: TEXT,
  '3DFACE': SPACE,
  '3DSOLID': SPACE,
  BODY: SPACE,
  MESH: SPACE,
  SURFACE: SPACE,
};

/** A path where it is drawn: `matrix` leads to the drawing's units, y up. */
export interface Placed {
  readonly path: readonly Subpath[];
  readonly matrix: Matrix;
  readonly kind: string;
  readonly line: number;
  readonly layer: string;
}

/** What was left out, by kind of entity. */
export interface LeftOut {
  count: number;
  /** The first one's line. */
  readonly line: number;
}

export interface Placing {
  readonly placed: readonly Placed[];
  readonly leftOut: ReadonlyMap<string, LeftOut>;
  /** The layers that hold lines, hidden ones too, as the file writes them. */
  readonly layers: ReadonlySet<string>;
}

/**
 * Everything that a DXF shows, its blocks inserted. Hidden entities, layers that are off or frozen, and paper space
 * are left out; with `only`, so is every layer not in it (names in lower case). Faults go to `faults`.
 */
export function placeAll(
  document: DxfDocument,
  only: ReadonlySet<string> | null,
  faults: DrawingFaults,
): Placing {
  return new Placer(document, only, faults).all();
}

interface Context {
  readonly matrix: Matrix;
  /** The layer of the insert: what lies on layer 0 in a block lies on it. */
  readonly layer: string;
  readonly inside: readonly string[];
}

class Placer {
  readonly #placed: Placed[] = [];
  readonly #leftOut = new Map<string, LeftOut>();
  readonly #layers = new Set<string>();
  #visits = 0;
  #steps = 0;
  #curves = 0;

  constructor(
    private readonly document: DxfDocument,
    private readonly only: ReadonlySet<string> | null,
    private readonly faults: DrawingFaults,
  ) {}

  all(): Placing {
    for (const drawn of this.document.drawn) this.#draw(drawn, { matrix: IDENTITY, layer: '0', inside: [] });
    return { placed: this.#placed, leftOut: this.#leftOut, layers: this.#layers };
  }

  #draw(drawn: Drawn, context: Context): void {
    if (++this.#visits > MOST_VISITS)
      throw new Refusal('too-large', `the drawing shows more than ${MOST_VISITS} entities; make it simpler`);
    const { entity } = drawn;
    try {
      this.#entity(drawn, context);
    } catch (e) {
      if (!(e instanceof Unreadable)) throw e;
      this.faults.addAt(entity.line, entityText(entity), e.message);
    }
  }

  #entity(drawn: Drawn, context: Context): void {
    const { entity } = drawn;
    const { kind } = entity;
    // Hidden, or on the sheet of paper rather than in the drawing.
    if (entity.number(60, 0) === 1 || entity.number(67, 0) === 1) return;
    const own = entity.text(8) ?? '0';
    const layer = own === '0' ? context.layer : own;
    const state = this.document.layers.get(layer.toLowerCase());
    if (kind === 'INSERT') {
      // An insert shows what lies on other layers though its own is off; not when that is frozen.
      if (!state?.frozen) this.#insert(entity, layer, context);
      return;
    }
    this.#layers.add(layer);
    if (hidden(state) || (this.only && !this.only.has(layer.toLowerCase()))) return;
    if (Object.hasOwn(REFUSED, kind)) throw new Unreadable(REFUSED[kind]!);
    const lines = kind === 'POLYLINE' || drawsLines(kind);
    const facing = lines ? facingMatrix(entity) : null;
    if (!facing) {
      this.#leaveOut(lines ? `${kind} in a plane of its own` : kind, entity.line);
      return;
    }
    const path = kind === 'POLYLINE' ? polylinePath(drawn) : shapePaths(entity);
    for (const run of path) {
      this.#steps += run.steps.length;
      if (kind === 'SPLINE') this.#curves += run.steps.length;
    }
    if (this.#curves > MOST_CURVES)
      throw new Refusal(
        'too-large',
        `the drawing's splines have more than ${MOST_CURVES} stretches between knots; make them simpler`,
      );
    if (this.#steps > MOST_STEPS)
      throw new Refusal('too-large', `the drawing has more than ${MOST_STEPS} edges; make it simpler`);
    if (path.length > 0)
      this.#placed.push({ path, matrix: multiply(context.matrix, facing), kind, line: entity.line, layer });
  }

  #insert(entity: Entity, layer: string, context: Context): void {
    const name = (entity.text(2) ?? '').toLowerCase();
    const block = this.document.blocks.get(name);
    if (!block)
      throw new Unreadable(`shows the block "${shortened(name)}", which is not in the file; save it again`);
    if (context.inside.includes(name))
      throw new Unreadable(`shows the block "${shortened(name)}" within itself; take it out`);
    if (context.inside.length >= MOST_NESTING)
      throw new Unreadable(`is nested deeper than ${MOST_NESTING} blocks; explode some of them`);
    const facing = facingMatrix(entity);
    if (!facing) {
      this.#leaveOut('INSERT in a plane of its own', entity.line);
      return;
    }
    const inside = [...context.inside, name];
    for (const matrix of insertMatrices(entity, block)) {
      // Blocks of nothing cost time too.
      if (++this.#visits > MOST_VISITS)
        throw new Refusal(
          'too-large',
          `the drawing shows more than ${MOST_VISITS} entities; make it simpler`,
        );
      const placed = multiply(context.matrix, multiply(facing, matrix));
      if (!placed.every(Number.isFinite))
        throw new Unreadable('puts its block out of all reach; draw it again');
      for (const drawn of block.drawn) this.#draw(drawn, { matrix: placed, layer, inside });
    }
  }

  #leaveOut(what: string, line: number): void {
    const found = this.#leftOut.get(what);
    if (found) found.count++;
    else this.#leftOut.set(what, { count: 1, line });
  }
}

function hidden(state: LayerState | undefined): boolean {
  return state !== undefined && (state.frozen || state.off);
}

/** Entities whose points are in the world's coordinates, whichever way they face. */
const WORLD = new Set(['LINE', 'ELLIPSE', 'SPLINE']);

/** Directions that differ by less than this from straight up or down are just that. */
const UPRIGHT = 1e-6;

/**
 * From an entity's own coordinates to the world's: an entity that faces down (extrusion 0, 0, -1) has its x reversed
 * (DXF reference, "arbitrary axis algorithm"). Null for one that faces elsewhere.
 */
function facingMatrix(entity: Entity): Matrix | null {
  const [x, y, z] = [entity.number(210, 0), entity.number(220, 0), entity.number(230, 1)];
  if (entity.kind === 'LINE') return IDENTITY;
  const size = Math.sqrt(x * x + y * y + z * z);
  // Some programs write a direction of no length where they mean none.
  if (size === 0) return IDENTITY;
  if (!(size > 0) || Math.abs(x) > UPRIGHT * size || Math.abs(y) > UPRIGHT * size) return null;
  return z > 0 || WORLD.has(entity.kind) ? IDENTITY : [-1, 0, 0, 1, 0, 0];
}

/** `LWPOLYLINE on layer "CUT"` */
export function entityText(entity: Entity): string {
  const layer = entity.text(8) ?? '0';
  return layer === '0' ? entity.kind : `${entity.kind} on layer ${JSON.stringify(shortened(layer))}`;
}
