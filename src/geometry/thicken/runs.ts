import { type Ball, type Boundary, ballsAlong } from './balls.js';

/** A stretch of the medial axis: balls in order, each near the one before and running the same way. */
export interface Run {
  readonly balls: readonly Ball[];
  readonly closed: boolean;
}

/** What the balls of a region say of its narrow parts. */
export interface Narrow {
  readonly runs: readonly Run[];
  /** By contour: whether a ball of the limit touches it somewhere. */
  readonly wide: readonly boolean[];
}

/** Centres of one run lie no further apart than this share of the limit. */
const STEP = 0.3;

/** A ball adds to a run only when it lies this share of its radius further on: about a round tip they crowd in one place. */
const ADVANCE = 0.03;

/** Balls are followed up to this many times r, so that a run goes on past the place where it is wide enough. */
export const BEYOND = 1.12;

/**
 * The axis of what is narrower than 2r, taken from one side of each branch: balls under BEYOND r whose contacts lie
 * almost opposite (cosine of the angle between them at most `facing`).
 */
export function narrowRuns(b: Boundary, r: number, facing: number): Narrow {
  const limit = r * BEYOND;
  const pieces: Ball[][] = [];
  const wide: boolean[] = [];
  for (let c = 0; c + 1 < b.first.length; c++) {
    const sampled = ballsAlong(b, c, limit, facing);
    wide.push(sampled.wide);
    let run: Ball[] = [];
    for (const ball of sampled.balls) {
      const last = run[run.length - 1];
      if (last && !follows(last, ball, limit)) {
        pieces.push(run);
        run = [];
      }
      run.push(ball);
    }
    if (run.length > 0) pieces.push(run);
  }
  return { runs: linked(pieces.map(withoutRetreats), limit), wide };
}

function near(a: Ball, b: Ball, limit: number): boolean {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  return dx * dx + dy * dy < STEP * STEP * limit * limit;
}

function follows(a: Ball, b: Ball, limit: number): boolean {
  return near(a, b, limit) && a.tx * b.tx + a.ty * b.ty > 0.7;
}

/** Balls that stand still or step back (a fan that stares at one point, rounding at joints) are left out. */
function withoutRetreats(run: readonly Ball[]): Ball[] {
  const out: Ball[] = [];
  for (const b of run) {
    const last = out[out.length - 1];
    if (last && (b.x - last.x) * last.tx + (b.y - last.y) * last.ty < ADVANCE * last.w) continue;
    out.push(b);
  }
  return out;
}

/** The same axis run the other way. */
export function turned(balls: readonly Ball[]): Ball[] {
  return balls.map(reversedBall).reverse();
}

/** Runs whose ends continue each other (cut where a contour's numbering starts) joined; a run that meets itself closes. */
function linked(pieces: readonly Ball[][], limit: number): Run[] {
  const open = [...pieces];
  const out: Run[] = [];
  while (open.length > 0) {
    let run = open.shift()!;
    for (let grew = true; grew; ) {
      grew = false;
      for (let k = 0; k < open.length; k++) {
        const joined = joinedRuns(run, open[k]!, limit);
        if (!joined) continue;
        run = joined;
        open.splice(k, 1);
        grew = true;
        break;
      }
    }
    const closed = run.length > 8 && follows(run[run.length - 1]!, run[0]!, limit);
    out.push({ balls: run, closed });
  }
  return out;
}

function joinedRuns(a: readonly Ball[], b: readonly Ball[], limit: number): Ball[] | null {
  const [a0, a1, b0, b1] = [a[0]!, a[a.length - 1]!, b[0]!, b[b.length - 1]!];
  if (near(a1, b0, limit) && meets(a1, b0, limit)) return [...a, ...b];
  if (near(b1, a0, limit) && meets(b1, a0, limit)) return [...b, ...a];
  if (near(a1, b1, limit) && meets(a1, reversedBall(b1), limit)) return [...a, ...turned(b)];
  if (near(b0, a0, limit) && meets(reversedBall(b0), a0, limit)) return [...turned(b), ...a];
  return null;
}

function meets(p: Ball, q: Ball, limit: number): boolean {
  return follows(p, q, limit) && (q.x - p.x) * p.tx + (q.y - p.y) * p.ty > ADVANCE * p.w;
}

function reversedBall(b: Ball): Ball {
  return {
    x: b.x,
    y: b.y,
    w: b.w,
    tx: -b.tx,
    ty: -b.ty,
    p: b.q,
    q: b.p,
    px: b.qx,
    py: b.qy,
    qx: b.px,
    qy: b.py,
    facing: b.facing,
  };
}
