import { parts, type Region } from '../geometry/region.js';
import { putBlocks, putHeader, putObjects, putTables, takeHandles } from './dxf-frame.js';
import { DxfWriter } from './dxf-writer.js';
import { decimal, millionths } from './format.js';
import type { Marks } from './marks.js';
import type { Label } from './numbers.js';
import { type Frame, inFrame, inGrid, type Ring, ringBulge, toRing } from './ring.js';

/** One drawing for CAM as DXF (AC1015): closed LWPOLYLINEs with bulges, y up, origin at the sheet's lower left corner. */
export function drawingDxf(layer: 'POCKET' | 'PLUG', region: Region, marks: Marks, frame: Frame): string {
  const w = new DxfWriter();
  const h = takeHandles(w);
  putTables(w, h, frame, [
    ['0', 7],
    ['POCKET', 7],
    ['PLUG', 7],
    ['MARKS', 8],
    ...(marks.dots ? [['DOTS', 7] as const] : []),
  ]);
  putBlocks(w, h);
  w.put([0, 'SECTION'], [2, 'ENTITIES']);
  const entities = new Entities(w, h.model, frame);
  for (const part of parts(region)) for (const c of part) entities.polyline(layer, toRing(c, frame));
  for (const c of marks.dots ?? []) entities.polyline('DOTS', toRing(c, frame));
  for (const c of marks.outline) entities.polyline('MARKS', toRing(c, frame));
  entities.polyline('MARKS', toRing(marks.datum.circle, frame));
  for (const l of marks.datum.lines) entities.line('MARKS', l);
  entities.polyline('MARKS', toRing(marks.square, frame));
  entities.label('MARKS', marks.label);
  for (const n of marks.numbers ?? []) entities.label('MARKS', n);
  w.put([0, 'ENDSEC']);
  putObjects(w, h);
  // The header names the next free handle, so it is written when all the others are taken.
  const header = new DxfWriter();
  putHeader(header, frame, w.handle());
  return header.text() + w.text();
}

/** Writes the kinds of entity a drawing has. */
class Entities {
  constructor(
    private readonly w: DxfWriter,
    private readonly owner: string,
    private readonly frame: Frame,
  ) {}

  polyline(layer: string, ring: Ring): void {
    if (ring.length < 2) return;
    this.#begin('LWPOLYLINE', layer, 'AcDbPolyline');
    this.w.put([90, ring.length], [70, 1], [43, 0]);
    ring.forEach((v, i) => {
      this.w.put([10, millionths(v.x)], [20, millionths(v.y)]);
      const b = ringBulge(v, ring[(i + 1) % ring.length]!);
      // Fifteen decimals leave twelve that count even on an arc of a thousandth of a turn.
      if (b !== 0) this.w.put([42, decimal(b, 15)]);
    });
  }

  line(layer: string, [x0, y0, x1, y1]: readonly [number, number, number, number]): void {
    const [ax, ay] = inFrame(x0, y0, this.frame);
    const [bx, by] = inFrame(x1, y1, this.frame);
    this.#begin('LINE', layer, 'AcDbLine');
    this.w.put([10, millionths(ax)], [20, millionths(ay)], [30, 0]);
    this.w.put([11, millionths(bx)], [21, millionths(by)], [31, 0]);
  }

  /** One line of words, centred on its place both ways. */
  label(layer: string, label: Label): void {
    const [x, y] = inFrame(label.x, label.y, this.frame);
    const height = inGrid(label.height, this.frame.units);
    this.#begin('TEXT', layer, 'AcDbText');
    const at = [millionths(x), millionths(y)] as const;
    this.w.put([10, at[0]], [20, at[1]], [30, 0], [40, millionths(height)], [1, label.text], [72, 1]);
    this.w.put([11, at[0]], [21, at[1]], [31, 0], [100, 'AcDbText'], [73, 2]);
  }

  #begin(kind: string, layer: string, marker: string): void {
    this.w.put(
      [0, kind],
      [5, this.w.handle()],
      [330, this.owner],
      [100, 'AcDbEntity'],
      [8, layer],
      [100, marker],
    );
  }
}
