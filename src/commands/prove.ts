import { message } from '../disk/report.js';
import { type Certificate, certifyDrawing } from '../proof/index.js';
import { BadInput } from '../schema/fault.js';
import { lengthRange, parseLength, toMillimetres, type Units } from '../schema/units.js';
import { type PictureKind, pictureKind, writePicture } from './picture-file.js';
import { type Assembly, assemble } from './prove-gap.js';
import { type ProveFile, readProveFile } from './prove-read.js';
import { assemblyText, certificateText, kindText, stockCutterFor } from './prove-text.js';

export interface ProveOptions {
  readonly cutter: string;
  readonly as?: string;
  readonly units?: string;
  readonly clearance?: string;
  readonly join?: string;
  readonly mirrored?: boolean;
  readonly picture?: string;
  readonly json?: boolean;
}

/** Places listed and drawn. */
const TOP = 10;

/** Cutters that are measured for, diameter in mm; and clearances. */
const CUTTER = { min: 0.1, max: 50 };
const CLEARANCE = { min: 0, max: 5 };
const JOIN = { min: 0, max: 5 };

/** Measures one drawing, or a pocket and its plug, and prints the certificate. Returns 1 when it cannot be cut, else 0. */
export async function proveFiles(
  file: string,
  plugFile: string | undefined,
  options: ProveOptions,
): Promise<number> {
  const { picture } = options;
  const kind = picture === undefined ? null : pictureKind(picture, 'certificate.png');
  const asked = choice('--as', options.as, ['pocket', 'plug']);
  const named = choice('--units', options.units, ['mm', 'in']);
  if (plugFile !== undefined && asked)
    throw fault('--as', 'is for one drawing; of two the first is the pocket and the second the plug');
  if (plugFile === undefined && (options.clearance !== undefined || options.mirrored))
    throw fault(
      options.mirrored ? '--mirrored' : '--clearance',
      'is for two drawings: inlaywright prove POCKET PLUG',
    );
  const diameter = length('--cutter', options.cutter, named ?? 'mm', CUTTER);
  const clearance =
    options.clearance === undefined
      ? null
      : length('--clearance', options.clearance, named ?? 'mm', CLEARANCE);
  const join = options.join === undefined ? undefined : length('--join', options.join, named ?? 'mm', JOIN);
  const first = readProveFile(file, join);
  const second = plugFile === undefined ? null : readProveFile(plugFile, join);
  const units = named ?? first.unit;
  message(`${file}: measuring`);
  const side = (second ? 'pocket' : (asked ?? first.names ?? 'pocket')) === 'plug' ? 'outside' : 'inside';
  const ask = { radius: diameter / 2, top: TOP };
  const measured: [ProveFile, Certificate][] = [[first, certifyDrawing(first.drawing, { ...ask, side })]];
  if (second) measured.push([second, certifyDrawing(second.drawing, { ...ask, side: 'outside' })]);
  const assembly = second && assemble(first, second, clearance, options.mirrored === true);
  if (picture !== undefined) await drawTo(picture, kind!, measured[0]!, assembly, units);
  const cutter = cutterName(options.cutter, units);
  const text = options.json
    ? JSON.stringify(resultObject(measured, assembly, diameter), null, 2)
    : [
        ...measured.map(([read, c]) => certificateText(read, c, cutter, units)),
        ...(assembly ? [assemblyText(assembly, units)] : []),
      ].join('\n\n');
  process.stdout.write(`${text}\n`);
  return measured.every(([, c]) => c.holds) && (assembly?.holds ?? true) ? 0 : 1;
}

function fault(where: string, message: string): BadInput {
  return new BadInput([{ where, message }]);
}

function choice<T extends string>(where: string, value: string | undefined, of: readonly T[]): T | null {
  if (value === undefined) return null;
  const found = of.find((o) => o === value);
  if (found === undefined) throw fault(where, `must be ${of.join(' or ')}, not ${JSON.stringify(value)}`);
  return found;
}

/** A length option, mm: with its unit, or a bare number in `units`. */
function length(
  where: string,
  text: string,
  units: Units,
  { min, max }: { min: number; max: number },
): number {
  const bare = /^\s*-?(\d+(\.\d*)?|\.\d+)\s*$/.test(text);
  const mm = bare ? toMillimetres(Number(text), units) : parseLength(text);
  if (typeof mm === 'string') throw fault(where, `${JSON.stringify(text)} ${mm}`);
  if (!(mm >= min && mm <= max))
    throw fault(where, `${JSON.stringify(text)} is out of range: ${lengthRange(min, max, units)}`);
  return mm;
}

/** As it was given, with a space before the unit. */
function cutterName(text: string, units: Units): string {
  const m = /^\s*(.*?)\s*(mm|in)?\s*$/.exec(text)!;
  return `${m[1]} ${m[2] ?? units}`;
}

async function drawTo(
  file: string,
  kind: PictureKind,
  [read, certificate]: [ProveFile, Certificate],
  assembly: Assembly | null,
  units: Units,
): Promise<void> {
  if (assembly) {
    const { gapPicture } = await import('../output/gap-picture.js');
    const { plug } = assembly;
    await writePicture(file, kind, (font) => gapPicture(read.drawing, plug, assembly, { units, font }));
    return;
  }
  const { certificatePicture } = await import('../output/certificate-picture.js');
  await writePicture(file, kind, (font) => certificatePicture(read.drawing, certificate, { units, font }));
}

/** Lengths in mm; places from the lower left corner of the (first) drawing. */
function resultObject(
  measured: readonly [ProveFile, Certificate][],
  assembly: Assembly | null,
  diameter: number,
): object {
  const drawings = measured.map(([{ file, how }, c]) => {
    const [x0, y0, x1, y1] = c.box;
    const from = ([x, y]: readonly [number, number]) => [six(x - x0), six(y - y0)];
    return {
      file,
      read: how,
      as: c.side === 'inside' ? 'pocket' : 'plug',
      size: [six(x1 - x0), six(y1 - y0)],
      parts: c.parts,
      holes: c.holes,
      cutter: diameter,
      required: c.required,
      reach: six(c.reach),
      capped: c.capped,
      field: six(c.field),
      holds: c.holds,
      joints: { worst: six(c.joints.worst), at: c.joints.at && from(c.joints.at) },
      places: c.places.map((p) => ({ at: from(p.at), radius: six(p.radius), kind: kindText(p) })),
      stockCutter: stockCutterFor(c.reach)?.name ?? null,
      failures: c.failures,
    };
  });
  if (!assembly) return drawings[0]!;
  const { corner, overlaps, asked, holds, failures, least, most, leastAt, mostAt } = assembly;
  const from = ([x, y]: readonly [number, number]) => [six(x - corner[0]), six(y - corner[1])];
  return {
    pocket: drawings[0],
    plug: drawings[1],
    gap: {
      least: six(least),
      leastAt: from(leastAt),
      most: six(most),
      mostAt: from(mostAt),
      asked,
      overlaps: overlaps.map((o) => ({ at: from(o.at), deep: six(-o.gap) })),
      holds,
      failures,
    },
  };
}

function six(x: number): number {
  return Math.round(x * 1e6) / 1e6 + 0;
}
