import { Helper } from 'dxf';
import dxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { readDxf } from '../../src/generators/drawing/dxf/read-dxf.js';
import { area, flatten } from '../../src/geometry/region.js';
import { judged } from '../support/engines/jsts-judge.mjs';
import { parityArea } from '../support/engines/jsts-parity.mjs';
import { builtAndProven, corpusFiles, corpusText } from './support.js';

const files = corpusFiles('dxf');

/** How far a chord may lie from its arc, mm. */
const CHORD = 0.0005;

/** Drawings that are refused, each with the words that say why. */
const REFUSED: Readonly<Record<string, RegExp>> = {
  'blocks2.dxf': /MTEXT on layer "boxes": is text, which depends on fonts/,
  'circlesellipsesarcs.dxf': /ELLIPSE: ends open at/,
  'ezdxf-r2000-fit-points.dxf': /is a spline of fit points alone/,
  'ezdxf-r2000-open.dxf': /LWPOLYLINE: ends open at/,
  'gnuplot-waves.dxf': /POLYLINE on layer "2": ends open at/,
  'lines.dxf': /LINE: ends open at/,
  'lwpolylines.dxf': /LWPOLYLINE: ends open at/,
  'points.dxf': /shows no lines \(it holds 2 POINT, which are no outlines\)/,
  'pstoedit-shapes.dxf': /POLYLINE: ends open at/,
  'splines.dxf': /SPLINE/,
  'supported_entities.dxf': /MTEXT on layer "boxes": is text, which depends on fonts/,
  'texts.dxf': /MTEXT: is text, which depends on fonts/,
};

const readable = files.filter((f) => !(f in REFUSED));

describe('DXF files made by other software', () => {
  it('are twenty or more that can be read, and every refusal expected is of a file that is there', () => {
    expect(readable.length).toBeGreaterThanOrEqual(20);
    expect(Object.keys(REFUSED).filter((f) => !files.includes(f))).toEqual([]);
  });

  it.each(files)('%s is made safe and proven, or refused for the reason that is known', (file) => {
    const end = builtAndProven(file);
    const reason = REFUSED[file];
    if (typeof end === 'string') return expect(end).toMatch(reason ?? /^no refusal is expected$/);
    expect(reason, 'a drawing that was to be refused is read').toBeUndefined();
    for (const { name, region } of end.artwork.pieces) {
      const theirs = judged(region.contours.map((c) => flatten(c, CHORD)));
      expect(theirs.fault, name).toBeNull();
      expect(Math.abs(theirs.area - area(region)), name).toBeLessThan(1e-6 + CHORD * theirs.length);
    }
  });
});

// The package's types say otherwise, but under ES modules it is its reader.
const Reader = dxfParser as unknown as typeof dxfParser.default;

/** AutoCAD's table of $INSUNITS, as far as the corpus goes; mm. */
const UNITS: Readonly<Record<number, number>> = { 0: 1, 1: 25.4, 4: 1, 5: 10, 6: 1000 };

/** In shares of the drawing's longer side: loose ends this near meet; points are moved no further than this. */
const WELD = 5e-4;
const GRID = 1e-5;

/**
 * An independent reader makes polylines of all entities, blocks placed, arcs as sides of 5 degrees or so; JSTS finds what
 * they enclose. Such sides take up to 5.6e-3 off a bulge's round part, so that much of the area may differ.
 */
const COARSE = 6e-3;

describe('another DXF reader', () => {
  it.each(readable)('measures %s as we do', (file) => {
    const text = corpusText(file);
    const ours = readDxf(text, file);
    const scale = 200 / ours.extent;
    const mine = ours.figures(scale).reduce((sum, p) => sum + area(p.region), 0) / scale ** 2;
    const head = new Reader().parseSync(text)!;
    const unit = UNITS[(head.header.$INSUNITS as number | undefined) ?? 0];
    const { polylines } = new Helper(text).toPolylines();
    // A layer is off by a negative colour, and frozen by its first flag.
    const seen = polylines.filter(
      ({ layer, vertices }) => vertices.length > 1 && !(layer && (layer.colorNumber < 0 || layer.flags & 1)),
    );
    const size = ours.extent / unit;
    const lines = seen.map((p) => p.vertices.map(([x, y]): [number, number] => [x, y]));
    const theirs = parityArea(lines, WELD * size, GRID * size);
    expect(Math.abs(theirs * unit ** 2 - mine)).toBeLessThan(COARSE * mine);
  });
});
