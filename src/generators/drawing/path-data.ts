import type { Vector } from '../../geometry/bezier.js';
import { arcBetween } from './ellipse.js';
import type { Step, Subpath } from './outline-path.js';
import { type Command, pathCommands } from './path-grammar.js';
import { Unreadable } from './unreadable.js';

/** Reads the data of a path (SVG 2, chapter 9). Data with a fault in it is refused, not drawn up to the fault. */
export function readPathData(data: string): Subpath[] {
  const path = new Runs();
  if (data.trim() !== 'none') for (const command of pathCommands(data)) path.add(command);
  return path.finished();
}

/** Follows the commands: keeps the point, and the handle that a smooth curve mirrors. */
class Runs {
  readonly #runs: Subpath[] = [];
  #steps: Step[] = [];
  #start: Vector = [0, 0];
  #at: Vector = [0, 0];
  #handle: { readonly of: 'cubic' | 'quadratic'; readonly at: Vector } | null = null;
  #moved = false;

  finished(): Subpath[] {
    this.#end(false);
    return this.#runs;
  }

  #end(closed: boolean): void {
    if (this.#moved) this.#runs.push({ start: this.#start, steps: this.#steps, closed });
    this.#steps = [];
    this.#moved = false;
  }

  /** The points that a command's numbers give, from its `skip`-th on, relative ones made absolute. */
  #points({ relative, numbers }: Command, skip = 0): Vector[] {
    const [ox, oy] = relative ? this.#at : [0, 0];
    const out: Vector[] = [];
    for (let i = skip; i + 1 < numbers.length; i += 2) out.push([ox + numbers[i]!, oy + numbers[i + 1]!]);
    if (!out.every(([x, y]) => Number.isFinite(x + y)))
      throw new Unreadable('has path data that leads too far to be drawn');
    return out;
  }

  /** The last handle mirrored at the point, if the last step was of the same kind; else the point. */
  #mirrored(of: 'cubic' | 'quadratic'): Vector {
    const [x, y] = this.#at;
    return this.#handle?.of === of ? [2 * x - this.#handle.at[0], 2 * y - this.#handle.at[1]] : this.#at;
  }

  #go(step: Step, handle: Vector | null = null): void {
    // After a close, a command other than a move goes on from where the closed run started.
    if (!this.#moved) {
      this.#start = this.#at;
      this.#moved = true;
    }
    this.#steps.push(step);
    this.#at = step.to;
    this.#handle =
      handle && (step.kind === 'cubic' || step.kind === 'quadratic') ? { of: step.kind, at: handle } : null;
  }

  add(c: Command): void {
    const [x, y] = this.#at;
    const n = c.numbers;
    switch (c.letter) {
      case 'Z':
        this.#end(true);
        this.#at = this.#start;
        this.#handle = null;
        break;
      case 'M': {
        const [to] = this.#points(c);
        this.#end(false);
        this.#start = this.#at = to!;
        this.#handle = null;
        this.#moved = true;
        break;
      }
      case 'L':
        this.#line(this.#points(c)[0]!);
        break;
      case 'H':
        this.#line([c.relative ? x + n[0]! : n[0]!, y]);
        break;
      case 'V':
        this.#line([x, c.relative ? y + n[0]! : n[0]!]);
        break;
      case 'C': {
        const [first, second, to] = this.#points(c);
        this.#cubic(first!, second!, to!);
        break;
      }
      case 'S': {
        const [second, to] = this.#points(c);
        this.#cubic(this.#mirrored('cubic'), second!, to!);
        break;
      }
      case 'Q': {
        const [handle, to] = this.#points(c);
        this.#quadratic(handle!, to!);
        break;
      }
      case 'T':
        this.#quadratic(this.#mirrored('quadratic'), this.#points(c)[0]!);
        break;
      case 'A':
        this.#arc(n, this.#points(c, 5)[0]!);
    }
  }

  #line(to: Vector): void {
    this.#go({ kind: 'line', to });
  }

  #arc(n: readonly number[], to: Vector): void {
    const [x, y] = this.#at;
    if (to[0] === x && to[1] === y) return;
    const arc = arcBetween(this.#at, to, n[0]!, n[1]!, n[2]!, n[3] === 1, n[4] === 1);
    this.#go(arc ? { kind: 'arc', arc, to } : { kind: 'line', to });
  }

  #cubic(first: Vector, second: Vector, to: Vector): void {
    this.#go({ kind: 'cubic', first, second, to }, second);
  }

  #quadratic(handle: Vector, to: Vector): void {
    this.#go({ kind: 'quadratic', handle, to }, handle);
  }
}
