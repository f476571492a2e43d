import type { ChainBuilder } from './chain-builder.js';
import { shown, Unreadable } from './place.js';

/** From a file's coordinates (y down) to mm, y up: x * scaleX - left, top - y * scale. */
export interface Frame {
  readonly scale: number;
  readonly left: number;
  readonly top: number;
}

/**
 * Reads SVG path data (SVG 1.1, section 8.3) from `text` between two offsets into closed chains: M L H V A Z, absolute or
 * relative, with repeated arguments. Refused: curves, elliptical arcs, contours without Z, numbers that are none.
 */
export function readPath(text: string, from: number, to: number, frame: Frame, out: ChainBuilder): void {
  new PathReader(text, from, to, frame, out).read();
}

class PathReader {
  #x = 0;
  #y = 0;
  #startX = 0;
  #startY = 0;
  #open = false;

  constructor(
    readonly text: string,
    private at: number,
    readonly to: number,
    readonly frame: Frame,
    readonly out: ChainBuilder,
  ) {}

  read(): void {
    let command = '';
    for (;;) {
      this.#blanks();
      if (this.at >= this.to) break;
      const c = this.text[this.at]!;
      const letter = (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
      if (letter) {
        command = c;
        this.at++;
      } else if (command === '' || command === 'Z' || command === 'z') {
        throw this.#fault(
          this.at,
          `expected a path command, found ${shown(this.text.slice(this.at, this.at + 30))}`,
        );
      }
      this.#command(command);
      // Pairs after the first of a move are lines.
      if (command === 'M') command = 'L';
      if (command === 'm') command = 'l';
      this.#comma();
    }
    if (this.#open) throw this.#fault(this.to, 'an open contour: its path does not end in Z');
  }

  #command(command: string): void {
    const start = this.at - 1;
    const relative = command >= 'a';
    const dx = relative ? this.#x : 0;
    const dy = relative ? this.#y : 0;
    const upper = command.toUpperCase();
    if (upper === 'M') {
      if (this.#open) throw this.#fault(start, 'an open contour: the next one begins before Z');
      this.#startX = this.#x = this.#number() + dx;
      this.#startY = this.#y = this.#number() + dy;
      this.#open = true;
      return;
    }
    if (!'LHVAZ'.includes(upper)) {
      throw this.#fault(
        start,
        `path command ${command}: only straight lines and circular arcs (M L H V A Z) can be proven`,
      );
    }
    if (!this.#open) {
      if (upper === 'Z' || this.out.empty) throw this.#fault(start, 'a path must begin with M');
      // After Z the next command may draw on from the same start.
      this.#open = true;
    }
    if (upper === 'Z') {
      this.#line(this.#startX, this.#startY);
      if (this.out.open === 0) throw this.#fault(start, 'a contour without edges');
      this.out.close();
      this.#open = false;
    } else if (upper === 'A') this.#arc(dx, dy);
    else {
      const x = upper === 'V' ? this.#x : this.#number() + dx;
      this.#line(x, upper === 'H' ? this.#y : this.#number() + dy);
    }
  }

  #line(x: number, y: number): void {
    const { scale: s, left, top } = this.frame;
    this.out.line(this.#x * s - left, top - this.#y * s, x * s - left, top - y * s);
    this.#x = x;
    this.#y = y;
  }

  #arc(dx: number, dy: number): void {
    this.#blanks();
    const start = this.at;
    const rx = this.#number();
    const ry = this.#number();
    this.#number();
    const large = this.#flag();
    const clockwise = this.#flag();
    const x = this.#number() + dx;
    const y = this.#number() + dy;
    const r = rx < 0 ? -rx : rx;
    if (r !== (ry < 0 ? -ry : ry))
      throw this.#fault(start, `an elliptical arc (radii ${rx} and ${ry}): a cutter needs round ones`);
    if (r === 0) throw this.#fault(start, 'an arc of radius 0');
    if (x === this.#x && y === this.#y) throw this.#fault(start, 'an arc that ends where it starts');
    const { scale: s, left, top } = this.frame;
    // The sweep flag's positive direction is clockwise to the eye, since y points down.
    this.out.arc(this.#x * s - left, top - this.#y * s, x * s - left, top - y * s, r * s, large, !clockwise);
    this.#x = x;
    this.#y = y;
  }

  #number(): number {
    this.#comma();
    const start = this.at;
    const text = this.text;
    let i = start;
    if (text[i] === '-' || text[i] === '+') i++;
    const digits = () => {
      const from = i;
      for (let c = text.charCodeAt(i); c >= 48 && c <= 57; c = text.charCodeAt(i)) i++;
      return i - from;
    };
    let count = digits();
    if (text[i] === '.') {
      i++;
      count += digits();
    }
    if (count > 0 && (text[i] === 'e' || text[i] === 'E')) {
      i++;
      if (text[i] === '-' || text[i] === '+') i++;
      if (digits() === 0) count = 0;
    }
    const value = Number(text.slice(start, i));
    if (count === 0 || i > this.to || value - value !== 0) {
      throw this.#fault(
        start,
        `expected a number, found ${shown(text.slice(start, Math.min(this.to, start + 30)))}`,
      );
    }
    this.at = i;
    return value;
  }

  #flag(): boolean {
    this.#comma();
    const c = this.text[this.at];
    if (c !== '0' && c !== '1') throw this.#fault(this.at, "expected an arc's flag, 0 or 1");
    this.at++;
    return c === '1';
  }

  #blanks(): void {
    while (this.at < this.to && ' \t\n\r\f'.includes(this.text[this.at]!)) this.at++;
  }

  #comma(): void {
    this.#blanks();
    if (this.text[this.at] === ',' && this.at < this.to) {
      this.at++;
      this.#blanks();
    }
  }

  #fault(at: number, what: string): Unreadable {
    return new Unreadable(this.text, at, what);
  }
}
