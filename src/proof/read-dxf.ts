import { ChainBuilder } from './chain-builder.js';
import { Drawing, MM_PER, type Unit } from './drawing.js';
import { shown, Unreadable } from './place.js';

/** $INSUNITS (DXF reference, header variables): 1 inches, 4 millimetres. */
const UNITS: Readonly<Record<string, Unit>> = { '1': 'in', '4': 'mm' };

/** Group codes: an integer line and a value line, again and again. */
class Pairs {
  code = 0;
  value = '';
  /** Where the value stands in the file. */
  offset = 0;
  #at = 0;

  constructor(readonly text: string) {}

  next(): boolean {
    if (this.#at >= this.text.length) return false;
    const from = this.#at;
    const code = this.#line();
    if (code === '' && this.text.slice(this.#at).trim() === '') return false;
    this.code = Number(code);
    if (code === '' || this.code % 1 !== 0)
      throw new Unreadable(this.text, from, `expected a group code, found ${shown(code)}`);
    if (this.#at >= this.text.length)
      throw new Unreadable(this.text, from, `group ${code} has no value: the file breaks off`);
    this.offset = this.#at;
    this.value = this.#line();
    return true;
  }

  number(): number {
    const value = this.value === '' ? Number.NaN : Number(this.value);
    if (value - value !== 0)
      throw this.fault(`expected a number for group ${this.code}, found ${shown(this.value)}`);
    return value;
  }

  fault(what: string): Unreadable {
    return new Unreadable(this.text, this.offset, what);
  }

  #line(): string {
    let end = this.text.indexOf('\n', this.#at);
    if (end < 0) end = this.text.length;
    const line = this.text.slice(this.#at, end).trim();
    this.#at = end + 1;
    return line;
  }
}

interface Polyline {
  offset: number;
  readonly type: string;
  layer: string;
  closed: boolean;
  stated: number;
  mirrored: boolean;
  readonly x: number[];
  readonly y: number[];
  readonly bulge: number[];
}

/**
 * Reads a drawing as design.md's DXF contract has it: closed LWPOLYLINEs with bulges on the layer POCKET or PLUG, in mm, y up.
 * Other layers are marks and are not looked at. Throws `Unreadable` with line and column.
 */
export function readDxf(text: string): Drawing {
  const { layer, unit, edges, starts } = readLayer(text, ['pocket', 'plug']);
  return new Drawing(unit, null, null, layer, edges, starts);
}

/** Reads the dots of a coupon's drawing, on the layer DOTS, likewise. `name` is the part they are drilled in. */
export function readDxfDots(text: string, name: 'pocket' | 'plug'): Drawing {
  const { unit, edges, starts } = readLayer(text, ['dots']);
  return new Drawing(unit, null, null, name, edges, starts);
}

function readLayer<T extends string>(text: string, layers: readonly T[]) {
  const pairs = new Pairs(text);
  const found: Polyline[] = [];
  let section = '';
  let variable = '';
  let unit: Unit | undefined;
  let ended = false;
  let entity: Polyline | null = null;
  while (!ended && pairs.next()) {
    const { code, value } = pairs;
    if (code === 0) {
      if (value === 'ENDSEC') section = '';
      if (value === 'EOF') ended = true;
      entity = section === 'ENTITIES' ? started(pairs.offset, value) : null;
      if (entity) found.push(entity);
      if (value === 'SECTION') section = '?';
    } else if (section === '?' && code === 2) section = value;
    else if (section === 'HEADER') {
      if (code === 9) variable = value;
      else if (variable === '$INSUNITS' && code === 70) {
        unit = UNITS[value];
        if (!unit) throw pairs.fault(`$INSUNITS is ${shown(value)}: must be 4 (mm) or 1 (inches)`);
      }
    } else if (entity) take(entity, pairs);
  }
  if (!ended) throw new Unreadable(text, text.length, 'no EOF: the file breaks off, or is no DXF drawing');
  if (!unit) throw new Unreadable(text, 0, '$INSUNITS is not set, so the size is not certain');
  return { unit, ...assemble(text, found, unit, layers) };
}

function started(offset: number, type: string): Polyline {
  return { offset, type, layer: '', closed: false, stated: -1, mirrored: false, x: [], y: [], bulge: [] };
}

/** One group of an entity (DXF reference, LWPOLYLINE). */
function take(e: Polyline, pairs: Pairs): void {
  if (pairs.code === 8) e.layer = pairs.value;
  if (e.type !== 'LWPOLYLINE') return;
  if (pairs.code === 90) e.stated = pairs.number();
  else if (pairs.code === 70) e.closed = pairs.number() % 2 === 1;
  else if (pairs.code === 230) e.mirrored = pairs.number() !== 1;
  else if (pairs.code === 210 || pairs.code === 220) e.mirrored ||= pairs.number() !== 0;
  else if (pairs.code === 10) {
    e.x.push(pairs.number());
    e.bulge.push(0);
  } else if (pairs.code === 20) {
    e.y.push(pairs.number());
    if (e.y.length !== e.x.length) throw pairs.fault('y (group 20) without its x (group 10)');
  } else if (pairs.code === 42) {
    if (e.x.length === 0) throw pairs.fault('a bulge (group 42) before the first vertex');
    e.bulge[e.bulge.length - 1] = pairs.number();
  }
}

function assemble<T extends string>(
  text: string,
  found: readonly Polyline[],
  unit: Unit,
  layers: readonly T[],
) {
  const out = new ChainBuilder();
  const s = MM_PER[unit];
  let name: T | null = null;
  for (const e of found) {
    const layer = layers.find((l) => l === e.layer.toLowerCase());
    if (layer === undefined) continue;
    const wrong = fault(e);
    if (wrong) throw new Unreadable(text, e.offset, wrong);
    if (name !== null && layer !== name)
      throw new Unreadable(text, e.offset, `both ${named(layers, ' and ')} in one file`);
    name = layer;
    const n = e.x.length;
    for (let i = 0; i < n; i++) {
      const j = i + 1 < n ? i + 1 : 0;
      if (e.bulge[i] !== 0 && e.x[i] === e.x[j] && e.y[i] === e.y[j]) {
        throw new Unreadable(
          text,
          e.offset,
          `vertex ${i + 1} of this LWPOLYLINE: an arc that ends where it starts`,
        );
      }
      out.bulged(e.x[i]! * s, e.y[i]! * s, e.x[j]! * s, e.y[j]! * s, e.bulge[i]!);
    }
    if (out.open === 0) throw new Unreadable(text, e.offset, 'a contour without edges');
    out.close();
  }
  if (name === null) throw new Unreadable(text, 0, `nothing on layer ${named(layers, ' or ')}`);
  return { layer: name, ...out.finish() };
}

function named(layers: readonly string[], between: string): string {
  return layers.map((l) => l.toUpperCase()).join(between);
}

function fault(e: Polyline): string {
  if (e.type !== 'LWPOLYLINE') return `${e.type} on layer ${e.layer}: only LWPOLYLINE may stand there`;
  if (e.x.length !== e.y.length) return 'x (group 10) without its y (group 20)';
  if (e.stated !== e.x.length)
    return `${e.x.length} vertices where group 90 says ${e.stated}: the file is damaged`;
  if (e.mirrored) return 'an LWPOLYLINE tilted or turned over (groups 210 to 230)';
  return e.closed ? '' : 'an open contour: group 70 is not set to closed';
}
