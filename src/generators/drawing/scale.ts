import type { Piece, Remark } from '../../geometry/artwork.js';
import { bounds } from '../../geometry/region.js';
import { MM_PER_INCH } from '../../schema/units.js';
import { MM_PER_PIXEL } from './numbers.js';
import type { Drawing } from './read-svg.js';

/** What is known of a drawing's size before anyone sets its width. */
export interface OwnSize {
  /** Of all that it shows, as it is read, mm. */
  readonly width: number;
  readonly height: number;
  /** Did the file itself name its unit? */
  readonly named: boolean;
  /** What one unit of the file is taken to be where it names none, mm. */
  readonly taken: number;
}

/** Across, mm: what a small router makes. Smaller is lost to any cutter, larger stands on no bench. Our own choice. */
const LEAST = 5;
const MOST = 1000;

/** A width to show as an example where no likely one is known, mm. */
const ANY = 100;

/** Units to the inch in drawing programs: CSS pixels, points, and the pixels of an older vector editor's files. */
const TO_THE_INCH = [96, 72, 90] as const;

/** A size that came about by a mix-up, and by how much. The likely ones first. */
const MIX_UPS: readonly (readonly [factor: number, why: string])[] = [
  [MM_PER_INCH, 'inches read as mm'],
  [1 / MM_PER_INCH, 'mm read as inches'],
  ...TO_THE_INCH.flatMap((n): [number, string][] => [
    [n / MM_PER_INCH, `mm read as units of ${n} to the inch`],
    [MM_PER_INCH / n, `units of ${n} to the inch read as mm`],
  ]),
  [96 / 72, 'units of 72 to the inch read as 96'],
  [72 / 96, 'units of 96 to the inch read as 72'],
  [96 / 90, 'units of 90 to the inch read as 96'],
  [90 / 96, 'units of 96 to the inch read as 90'],
];

/** What one unit of a file is taken to be where it names none, mm: a CSS pixel; of a DXF file a millimetre. */
const TAKEN = { svg: MM_PER_PIXEL, dxf: 1 };

/** The size that a drawing has of its own, from the figures it shows at it. */
export function ownSize(unit: Drawing['unit'], file: string, figures: readonly Piece[]): OwnSize {
  const { minX, maxX, minY, maxY } = bounds(figures.flatMap((p) => p.region.contours));
  const taken = /\.dxf$/i.test(file) ? TAKEN.dxf : TAKEN.svg;
  return { width: maxX - minX, height: maxY - minY, named: unit !== null, taken };
}

/**
 * What to say of a drawing's own size: that its file names no unit, with the sizes it may have been meant to have; or
 * that it is implausible, with the mix-up that would explain it and the width to give. Nothing where all is well.
 */
export function scaleRemarks(own: OwnSize): Remark[] {
  return own.named ? implausible(own) : [noUnit(own)];
}

function noUnit({ width, height, taken }: OwnSize): Remark {
  const units = width / taken;
  const sizes = {
    asMm: units,
    asInches: units * MM_PER_INCH,
    at72: (units * MM_PER_INCH) / 72,
    at90: (units * MM_PER_INCH) / 90,
    at96: (units * MM_PER_INCH) / 96,
  };
  return {
    code: 'drawing-no-unit',
    severity: 'warn',
    at: null,
    numbers: { width, height, ...sizes },
    text:
      `The drawing's file names no unit, so its figure is taken to be ${mm(width)} wide and ${mm(height)} high. ` +
      `If it is in mm it should be ${mm(sizes.asMm)} wide, in inches ${mm(sizes.asInches)}, ` +
      `at 72 units to the inch ${mm(sizes.at72)}, at 90 ${mm(sizes.at90)}, at 96 ${mm(sizes.at96)}. ` +
      `Give the width you want as pattern.width (with adopt: --width), such as "${wide(Object.values(sizes).find(plausible) ?? ANY)}".`,
  };
}

function implausible({ width, height }: OwnSize): Remark[] {
  const across = Math.max(width, height);
  if (plausible(across)) return [];
  const found = MIX_UPS.filter(([factor]) => plausible(across * factor));
  const size = `The drawing's figure is ${mm(width)} wide and ${mm(height)} high, ${across < LEAST ? `under ${LEAST}` : `over ${MOST}`} mm across`;
  const best = found[0];
  if (!best)
    return [
      remark(
        { width, height },
        `${size}, which no usual mix-up of units explains. If another size is meant, give pattern.width (with adopt: --width).`,
      ),
    ];
  const list = found.map(
    ([factor, why]) => `${why} (off by ${factorText(factor)}: ${mm(width * factor)} wide)`,
  );
  return [
    remark(
      { width, height, factor: best[0], likely: width * best[0] },
      `${size}. If that is not meant, perhaps ${list.join(', or ')}. Give pattern.width (with adopt: --width), such as "${wide(width * best[0])}".`,
    ),
  ];
}

function remark(numbers: Remark['numbers'], text: string): Remark {
  return { code: 'drawing-scale', severity: 'warn', at: null, numbers, text };
}

function plausible(across: number): boolean {
  return across >= LEAST && across <= MOST;
}

/** A width as a recipe and an option take it. */
function wide(value: number): string {
  return mm(value).replace(' ', '');
}

/** A length for a message: two decimals, and three digits where it is tiny. */
function mm(value: number): string {
  return `${Number(value >= 1 ? value.toFixed(2) : value.toPrecision(3))} mm`;
}

/** "25.4" or "1/25.4": what the size has to be multiplied by. */
function factorText(factor: number): string {
  const text = (f: number): string => String(Number(f.toFixed(3)));
  return factor >= 1 ? text(factor) : `1/${text(1 / factor)}`;
}
