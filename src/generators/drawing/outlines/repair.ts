/** What was mended in a drawing, or left out of it. */
export type RepairKind =
  /** Ends of two lines that lay apart were brought together. */
  | 'joined'
  /** The two ends of one line were brought together. */
  | 'closed'
  /** A line or shape that was drawn twice was taken once. */
  | 'duplicate'
  /** A line that ran along part of another was taken once there. */
  | 'overlap'
  /** Two outlines cross, or one crosses itself: what they enclose goes by the even-odd rule. */
  | 'crossing'
  /** A shape too small to see was dropped. */
  | 'speck'
  /** Short segments that lie along a line or an arc became that line or arc. */
  | 'refitted'
  /** What encloses nothing by itself, or is no outline at all, was left out. */
  | 'left-out';

export interface Repair {
  readonly kind: RepairKind;
  /** Its place, mm, y up, about the middle of the drawing. */
  readonly at: readonly [number, number];
  /** How large it was, mm: the gap, the length taken away, the size of the speck, how far the line moved. */
  readonly size: number;
  /** How many such places this stands for: 1, or more where not every one is kept. */
  readonly count: number;
  /** What it is about, where the kind alone does not tell: "POINT". */
  readonly what?: string;
}

/** What a drawing is mended by, mm at the size it is drawn. */
export interface Tolerances {
  /** Ends nearer than this are joined. */
  readonly join: number;
  /** Closed shapes smaller than this across are dropped. */
  readonly speck: number;
  /** Short segments are refitted to lines and arcs within this; 0: not. */
  readonly refit: number;
}

export const TOLERANCES: Tolerances = { join: 0.05, speck: 0.2, refit: 0.01 };

/** Of each kind so many are kept one by one. */
const KEPT = 500;

/** Gathers repairs. */
export class Repairs {
  readonly #list: Repair[] = [];
  readonly #counts = new Map<string, number>();
  readonly #last = new Map<string, number>();

  add(kind: RepairKind, at: readonly [number, number], size: number, what?: string, count = 1): void {
    const key = `${kind} ${what ?? ''}`;
    const kept = this.#counts.get(key) ?? 0;
    const repair: Repair = { kind, at, size, count, ...(what === undefined ? {} : { what }) };
    if (kept < KEPT) {
      this.#counts.set(key, kept + 1);
      this.#last.set(key, this.#list.length);
      this.#list.push(repair);
      return;
    }
    // The last one kept stands for the rest, with the largest of them.
    const k = this.#last.get(key)!;
    const last = this.#list[k]!;
    const larger = size > last.size ? repair : last;
    this.#list[k] = { ...larger, count: last.count + count };
  }

  list(): readonly Repair[] {
    return this.#list;
  }
}
