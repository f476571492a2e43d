/**
 * What an AC1015 (R2000) file must hold beside its drawing: header, tables, blocks and objects. Written from the
 * published DXF reference; strict readers refuse a file in which a table, a handle or an owner is missing.
 */
import type { DxfWriter } from './dxf-writer.js';
import { millionths } from './format.js';
import type { Frame } from './ring.js';

/** Handles that the parts of a file refer to each other by. */
export interface Handles {
  readonly model: string;
  readonly paper: string;
  readonly root: string;
  readonly groups: string;
  readonly styles: string;
  readonly normal: string;
}

export function takeHandles(w: DxfWriter): Handles {
  return {
    model: w.handle(),
    paper: w.handle(),
    root: w.handle(),
    groups: w.handle(),
    styles: w.handle(),
    normal: w.handle(),
  };
}

/** Opens the file. `seed` is the first handle that no object has. */
export function putHeader(w: DxfWriter, frame: Frame, seed: string): void {
  w.put([0, 'SECTION'], [2, 'HEADER']);
  w.put([9, '$ACADVER'], [1, 'AC1015'], [9, '$DWGCODEPAGE'], [3, 'ANSI_1252'], [9, '$HANDSEED'], [5, seed]);
  w.put([9, '$INSUNITS'], [70, frame.units === 'mm' ? 4 : 1]);
  w.put([9, '$MEASUREMENT'], [70, frame.units === 'mm' ? 1 : 0]);
  w.put([9, '$EXTMIN'], [10, 0], [20, 0], [30, 0]);
  w.put([9, '$EXTMAX'], [10, millionths(frame.width)], [20, millionths(frame.height)], [30, 0]);
  w.put([0, 'ENDSEC'], [0, 'SECTION'], [2, 'CLASSES'], [0, 'ENDSEC']);
}

/** Layers by name, with their colour numbers (7 black or white, 8 grey). */
export function putTables(
  w: DxfWriter,
  h: Handles,
  frame: Frame,
  layers: readonly (readonly [name: string, colour: number])[],
): void {
  w.put([0, 'SECTION'], [2, 'TABLES']);
  table(w, 'VPORT', 1, (record) => {
    record('AcDbViewportTableRecord', '*Active');
    // An inch sheet may be an odd number of millionths wide.
    const half = [millionths(Math.floor(frame.width / 2)), millionths(Math.floor(frame.height / 2))] as const;
    w.put([70, 0], [10, 0], [20, 0], [11, 1], [21, 1], [12, half[0]], [22, half[1]]);
    w.put([13, 0], [23, 0], [14, 10], [24, 10], [15, 10], [25, 10], [16, 0], [26, 0], [36, 1]);
    w.put([17, 0], [27, 0], [37, 0], [40, millionths(frame.height)]);
    w.put([41, 1], [42, 50], [43, 0], [44, 0], [50, 0], [51, 0]);
  });
  table(w, 'LTYPE', 3, (record) => {
    for (const name of ['ByBlock', 'ByLayer', 'Continuous']) {
      record('AcDbLinetypeTableRecord', name);
      w.put([70, 0], [3, ''], [72, 65], [73, 0], [40, 0]);
    }
  });
  table(w, 'LAYER', layers.length, (record) => {
    for (const [name, colour] of layers) {
      record('AcDbLayerTableRecord', name);
      w.put([70, 0], [62, colour], [6, 'Continuous'], [370, -3], [390, h.normal]);
    }
  });
  table(w, 'STYLE', 1, (record) => {
    record('AcDbTextStyleTableRecord', 'Standard');
    w.put([70, 0], [40, 0], [41, 1], [50, 0], [71, 0], [42, 2.5], [3, 'txt'], [4, '']);
  });
  table(w, 'VIEW', 0, () => {});
  table(w, 'UCS', 0, () => {});
  table(w, 'APPID', 1, (record) => {
    record('AcDbRegAppTableRecord', 'ACAD');
    w.put([70, 0]);
  });
  putDimensionStyles(w);
  putBlockRecords(w, h);
  w.put([0, 'ENDSEC']);
}

type PutRecord = (marker: string, name: string) => void;

function table(w: DxfWriter, kind: string, count: number, fill: (record: PutRecord) => void): void {
  const own = w.handle();
  w.put([0, 'TABLE'], [2, kind], [5, own], [330, 0], [100, 'AcDbSymbolTable'], [70, count]);
  fill((marker, name) => {
    w.put([0, kind], [5, w.handle()], [330, own], [100, 'AcDbSymbolTableRecord'], [100, marker], [2, name]);
  });
  w.put([0, 'ENDTAB']);
}

/** The one table whose records keep their handle under code 105. */
function putDimensionStyles(w: DxfWriter): void {
  const own = w.handle();
  w.put([0, 'TABLE'], [2, 'DIMSTYLE'], [5, own], [330, 0], [100, 'AcDbSymbolTable'], [70, 1]);
  w.put([100, 'AcDbDimStyleTable'], [71, 1]);
  w.put([0, 'DIMSTYLE'], [105, w.handle()], [330, own], [100, 'AcDbSymbolTableRecord']);
  w.put([100, 'AcDbDimStyleTableRecord'], [2, 'Standard'], [70, 0], [0, 'ENDTAB']);
}

/** Model and paper space: their handles were taken before, since blocks and entities name them as owners. */
function putBlockRecords(w: DxfWriter, h: Handles): void {
  const own = w.handle();
  w.put([0, 'TABLE'], [2, 'BLOCK_RECORD'], [5, own], [330, 0], [100, 'AcDbSymbolTable'], [70, 2]);
  for (const [name, handle] of spaces(h)) {
    w.put([0, 'BLOCK_RECORD'], [5, handle], [330, own], [100, 'AcDbSymbolTableRecord']);
    w.put([100, 'AcDbBlockTableRecord'], [2, name], [340, 0]);
  }
  w.put([0, 'ENDTAB']);
}

function spaces(h: Handles): (readonly [name: string, handle: string])[] {
  return [
    ['*Model_Space', h.model],
    ['*Paper_Space', h.paper],
  ];
}

export function putBlocks(w: DxfWriter, h: Handles): void {
  w.put([0, 'SECTION'], [2, 'BLOCKS']);
  for (const [name, owner] of spaces(h)) {
    w.put([0, 'BLOCK'], [5, w.handle()], [330, owner], [100, 'AcDbEntity'], [8, '0']);
    w.put([100, 'AcDbBlockBegin'], [2, name], [70, 0], [10, 0], [20, 0], [30, 0], [3, name], [1, '']);
    w.put([0, 'ENDBLK'], [5, w.handle()], [330, owner], [100, 'AcDbEntity'], [8, '0'], [100, 'AcDbBlockEnd']);
  }
  w.put([0, 'ENDSEC']);
}

/** The root dictionary with its groups and the one plot style, which the layers name. */
export function putObjects(w: DxfWriter, h: Handles): void {
  w.put([0, 'SECTION'], [2, 'OBJECTS']);
  w.put([0, 'DICTIONARY'], [5, h.root], [330, 0], [100, 'AcDbDictionary'], [281, 1]);
  w.put([3, 'ACAD_GROUP'], [350, h.groups], [3, 'ACAD_PLOTSTYLENAME'], [350, h.styles]);
  w.put([0, 'DICTIONARY'], [5, h.groups], [330, h.root], [100, 'AcDbDictionary'], [281, 1]);
  w.put([0, 'ACDBDICTIONARYWDFLT'], [5, h.styles], [330, h.root], [100, 'AcDbDictionary'], [281, 1]);
  w.put([3, 'Normal'], [350, h.normal], [100, 'AcDbDictionaryWithDefault'], [340, h.normal]);
  w.put([0, 'ACDBPLACEHOLDER'], [5, h.normal], [330, h.styles]);
  w.put([0, 'ENDSEC'], [0, 'EOF']);
}
