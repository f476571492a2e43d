import type { Vector } from '../../../geometry/bezier.js';
import { atan, cos, radians, sin } from '../../../geometry/trig.js';
import { type EllipseArc, lineTo, type Step, type Subpath } from '../outline-path.js';
import { Unreadable } from '../unreadable.js';
import type { Entity } from './entity.js';
import { splinePath } from './spline.js';

/** A corner of a polyline, with the bulge of what follows. */
export interface Corner {
  readonly at: Vector;
  readonly bulge: number;
}

const ROUND_TURN = 2 * Math.PI;

/** Angles this near to a whole turn, radians, are one. */
const WHOLE = 1e-9;

/** Entities that draw lines, each with how it is read as paths, in its own coordinates. */
const SHAPES: Readonly<{ [kind: string]: (entity: Entity) => Subpath[] }> = {
  LINE(entity) {
    const start: Vector = [entity.number(10, 0), entity.number(20, 0)];
    const to: Vector = [entity.number(11, 0), entity.number(21, 0)];
    if (start[0] === to[0] && start[1] === to[1]) return [];
    return [{ start, steps: [lineTo(to)], closed: false }];
  },
  CIRCLE(entity) {
    return arcPath(circleOf(entity, 0, ROUND_TURN), true);
  },
  ARC(entity) {
    const from = radians(entity.number(50, 0) % 360);
    const by = turn(radians(entity.number(51, 360) % 360) - from);
    return arcPath(circleOf(entity, from, by), by > ROUND_TURN - WHOLE);
  },
  ELLIPSE: ellipse,
  LWPOLYLINE(entity) {
    return cornersPath(lightCorners(entity), entity.flag(70, 1));
  },
  SPLINE: splinePath,
};

export function drawsLines(kind: string): boolean {
  return Object.hasOwn(SHAPES, kind);
}

/** The paths of an entity. Throws Unreadable. */
export function shapePaths(entity: Entity): Subpath[] {
  return SHAPES[entity.kind]!(entity);
}

/** An angle as a turn above 0, up to a whole one. */
function turn(angle: number): number {
  const rest = angle % ROUND_TURN;
  const by = rest < 0 ? rest + ROUND_TURN : rest;
  return by < WHOLE ? ROUND_TURN : by;
}

function circleOf(entity: Entity, from: number, by: number): EllipseArc {
  const r = entity.number(40, 0);
  if (r < 0) throw new Unreadable('has a radius below 0; draw it again');
  return { centre: [entity.number(10, 0), entity.number(20, 0)], u: [r, 0], v: [0, r], from, by };
}

function ellipse(entity: Entity): Subpath[] {
  const u: Vector = [entity.number(11, 0), entity.number(21, 0)];
  const ratio = entity.number(40, 1);
  // The minor axis stands on the major one, left of it where the entity faces up.
  const side = entity.number(230, 1) < 0 ? -1 : 1;
  const v: Vector = [-u[1] * ratio * side, u[0] * ratio * side];
  const from = entity.number(41, 0) % ROUND_TURN;
  const to = entity.number(42, ROUND_TURN);
  const whole = Math.abs(to - entity.number(41, 0)) > ROUND_TURN - 1e-6;
  const by = whole ? ROUND_TURN : turn(to - from);
  const centre: Vector = [entity.number(10, 0), entity.number(20, 0)];
  return arcPath({ centre, u, v, from, by }, by > ROUND_TURN - WHOLE);
}

/** An arc as a path in steps of a quarter turn at the most; a whole turn ends where it starts. */
function arcPath(arc: EllipseArc, whole: boolean): Subpath[] {
  const { u, v } = arc;
  if (u[0] === 0 && u[1] === 0 && v[0] === 0 && v[1] === 0) return [];
  const start = pointOf(arc, arc.from);
  const n = Math.ceil(arc.by / (Math.PI / 2) - WHOLE);
  const steps = Array.from({ length: n }, (_, k): Step => {
    const from = arc.from + (arc.by * k) / n;
    const by = arc.by / n;
    const to = whole && k === n - 1 ? start : pointOf(arc, from + by);
    return { kind: 'arc', arc: { ...arc, from, by }, to };
  });
  return [{ start, steps, closed: whole }];
}

function pointOf({ centre, u, v }: EllipseArc, t: number): Vector {
  const c = cos(t);
  const s = sin(t);
  return [centre[0] + u[0] * c + v[0] * s, centre[1] + u[1] * c + v[1] * s];
}

function lightCorners(entity: Entity): Corner[] {
  const out: { at: [number, number]; bulge: number }[] = [];
  const { codes } = entity;
  for (let i = 0; i < codes.length; i++) {
    const last = out[out.length - 1];
    if (codes[i] === 10) out.push({ at: [entity.numberAt(i), 0], bulge: 0 });
    else if (codes[i] === 20 && last) last.at[1] = entity.numberAt(i);
    else if (codes[i] === 42 && last) last.bulge = entity.numberAt(i);
  }
  return out;
}

/** A polyline by its corners; bulge = tan(sweep / 4) of the arc that leaves a corner, counter-clockwise above 0. */
export function cornersPath(corners: readonly Corner[], closed: boolean): Subpath[] {
  if (corners.length < 2) return [];
  const steps = corners.flatMap(({ at, bulge }, i): Step[] => {
    if (i === corners.length - 1 && !closed) return [];
    return bulgeSteps(at, corners[(i + 1) % corners.length]!.at, bulge);
  });
  return [{ start: corners[0]!.at, steps, closed }];
}

/** Bulges smaller than this are straight to the last digit that a file holds. */
const STRAIGHT = 1e-12;

function bulgeSteps(p: Vector, q: Vector, bulge: number): Step[] {
  const dx = q[0] - p[0];
  const dy = q[1] - p[1];
  if (Math.abs(bulge) < STRAIGHT || (dx === 0 && dy === 0)) return [lineTo(q)];
  const h = (1 - bulge * bulge) / (4 * bulge);
  const centre: Vector = [(p[0] + q[0]) / 2 - dy * h, (p[1] + q[1]) / 2 + dx * h];
  // From the centre to p is cos 0: u; v a quarter turn on, in the sense of the bulge.
  const u: Vector = [p[0] - centre[0], p[1] - centre[1]];
  const sense = bulge > 0 ? 1 : -1;
  const v: Vector = [-u[1] * sense, u[0] * sense];
  const by = 4 * atan(Math.abs(bulge));
  return [{ kind: 'arc', arc: { centre, u, v, from: 0, by }, to: q }];
}
