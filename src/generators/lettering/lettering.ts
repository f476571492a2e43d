import type { Region } from '../../geometry/region.js';
import { thickened } from '../../geometry/thicken/thicken.js';
import { mirrorX } from '../../geometry/transform.js';
import type { Outline } from '../../outline/outline.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { hasCorners } from '../bands/frame.js';
import type { Cut, Generator } from '../generator.js';
import { bad, mm, num } from '../values.js';
import { drawLayout, fitsIn } from './draw.js';
import { onFrame } from './frame.js';
import { groupLine, type Joined, REFERENCE } from './groups.js';
import type { Layout, Setting } from './layout.js';
import { type Font, withFont } from './open-font.js';
import { parameters } from './parameters.js';
import { onArc, onLine, onRing, onStave } from './places.js';
import { setLine } from './set.js';
import { type Shapes, scaledShapes, shapesAt } from './shapes.js';
import type { GroupedLine } from './spacing.js';
import { linesOf } from './text.js';

/** Letters lower than this are not asked for, mm; the height is found to a step of this. */
export const LEAST_HEIGHT = 2;
const STEP = 0.1;
/** Long lines grow by many times what their letters grow. */
const FIT_STEP = 0.01;

/** More than twice the corner radius, so that rounding cannot make a place narrower than the cutter, mm. */
const HAIR = 0.005;

export const lettering: Generator = {
  name: 'lettering',
  title: 'Lettering',
  family: 'lettering',
  summary: 'Text in one or more lines: straight, along a circle, or along the edge of the piece.',
  parameters,
  draw(values, outline, pen, assets, cut) {
    const lines = linesOf(String(values.text));
    withFont(String(values.font), assets, (font) => {
      const tracked = num(values, 'tracking') !== 0;
      const features = {
        kerning: values.kerning !== false,
        // As CSS Text 3 has it ("letter-spacing"): letters that are spaced out are not joined where they need not be.
        ligatures: values.ligatures !== false && !tracked,
      };
      const scale = REFERENCE / font.capHeight;
      const drawn = shapesAt(font, scale, (r) => r);
      const grouped = lines.map((l) =>
        groupLine(setLine(font, l, features), drawn, scale, values.joined as Joined),
      );
      const inked = grouped.filter((g) => g.groups.some((n) => n >= 0));
      if (inked.length === 0) throw bad('text', 'has nothing to draw; give at least one letter');
      const press = new Press(font, drawn, inked, values, mirroredIf(outline, values.mirrored === true), cut);
      const height = values.height === 'fit' ? press.fitted() : num(values, 'height');
      const { layout, setting } = press.made(height);
      drawLayout(pen, layout, setting, values.mirrored === true);
    });
  },
};

/** Mirrored letters are laid out as they are read, in a mirrored outline. */
function mirroredIf(outline: Outline, mirrored: boolean): Outline {
  if (!mirrored) return outline;
  return { ...outline, face: mirrorX(outline.face), inner: mirrorX(outline.inner) };
}

interface Made {
  readonly layout: Layout;
  readonly setting: Setting;
}

/** A trial's letters are scaled from the reference, as they are or widened; null: drawn for good. */
type Trial = 'plain' | 'wide' | null;

/** Lays the text out at any height. */
class Press {
  readonly #font: Font;
  /** The letters at the cap height REFERENCE. */
  readonly #reference: Shapes;
  readonly #lines: readonly GroupedLine[];
  readonly #values: Values;
  readonly #outline: Outline;
  readonly #cut: Cut;
  /** What was last laid out for good and fits: the search ends with what is then drawn. */
  #last: Made | null = null;

  constructor(
    font: Font,
    reference: Shapes,
    lines: readonly GroupedLine[],
    values: Values,
    outline: Outline,
    cut: Cut,
  ) {
    this.#font = font;
    this.#reference = reference;
    this.#lines = lines;
    this.#values = values;
    this.#outline = outline;
    this.#cut = cut;
  }

  /** The layout at this cap height, mm. Throws Refusal, with the height that fits, when it does not. */
  made(height: number): Made {
    const made = this.#at(height);
    if (made) return made;
    const most = this.#largest(height, STEP);
    throw new Refusal('too-wide', most === null ? this.#hopeless() : this.#tooLarge(height, most));
  }

  /** The largest height that fits, mm, in whole steps. */
  fitted(): number {
    const { minX, minY, maxX, maxY } = this.#outline.box;
    const most = this.#largest(maxX - minX + maxY - minY, FIT_STEP);
    if (most === null) throw new Refusal('too-wide', this.#hopeless());
    return most;
  }

  #at(height: number, trial: Trial = null): Made | null {
    if (trial === null && this.#last?.setting.height === height) return this.#last;
    const setting = this.#setting(height, trial);
    const layout = this.#laid(setting);
    const made = layout && fitsIn(layout, this.#outline.inner) ? { layout, setting } : null;
    if (trial === null) this.#last = made;
    return made;
  }

  /**
   * The largest fitting height of at most `height`, in steps of `step` mm: openings grow in proportion as letters shrink, so it is tried for,
   * first with letters scaled from the reference, last with those that will be drawn. Widening is slow and only makes
   * letters larger, so the height without it is where the search for the height with it starts.
   */
  #largest(height: number, step: number): number | null {
    const fits = (trial: Trial) => (n: number) => this.#at(n * step, trial) !== null;
    const least = Math.round(LEAST_HEIGHT / step);
    let most = bisected(least - 1, Math.floor(height / step) + 1, fits('plain'));
    if (this.#cut.widen) {
      let over = most + 1;
      for (let down = 1; most >= least && !fits('wide')(most); down *= 2) {
        over = most;
        most -= down;
      }
      most = bisected(Math.max(most, least - 1), over, fits('wide'));
    }
    for (; most >= least; most--) {
      const found = Number((most * step).toFixed(2));
      if (this.#at(found)) return found;
    }
    return null;
  }

  #setting(height: number, trial: Trial): Setting {
    const values = this.#values;
    const scale = height / this.#font.capHeight;
    const keep = (region: Region): Region => (trial === 'plain' ? region : kept(region, this.#cut));
    return {
      lines: this.#lines,
      shapes: trial
        ? scaledShapes(this.#reference, height / REFERENCE, keep)
        : shapesAt(this.#font, scale, keep),
      height,
      scale,
      gap: 2 * this.#cut.r + HAIR,
      tracking: num(values, 'tracking'),
      leading: num(values, 'leading'),
      align: values.align as Setting['align'],
    };
  }

  #laid(setting: Setting): Layout | null {
    const values = this.#values;
    const outline = this.#outline;
    if (values.along === 'line') return onLine(setting);
    if (values.along === 'arc') return onArc(setting, values, outline);
    if (outline.shape === 'stave') return onStave(setting, values, outline);
    return hasCorners(outline) ? onFrame(setting, values, outline) : onRing(setting, values, outline);
  }

  #tooLarge(height: number, most: number): string {
    const spaced = num(this.#values, 'tracking') === 0 ? '' : ' with the same tracking';
    return `pattern.height: letters of ${mm(height)} are too large for the outline; use ${mm(most)}${spaced}, or "fit"`;
  }

  #hopeless(): string {
    return `pattern.text: does not fit the outline even at ${mm(LEAST_HEIGHT)}, the least height; use a shorter text, less tracking, a smaller cutter or another outline`;
  }
}

/** The largest whole number from `lo` on, under `hi`, that fits, taking it that `lo` does and `hi` does not. */
function bisected(lo: number, hi: number, fits: (n: number) => boolean): number {
  let [low, high] = [lo, hi];
  while (high - low > 1) {
    const mid = Math.floor((low + high) / 2);
    if (fits(mid)) low = mid;
    else high = mid;
  }
  return low;
}

/** What the cutter pass will make of a letter: it widens what is too thin, if it was told to. */
function kept(region: Region, { r, widen }: Cut): Region {
  return widen ? thickened(region, r).region : region;
}
