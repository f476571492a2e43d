/** A DXF reader that ships no types: what the tests use of it. */
declare module 'dxf' {
  export class Helper {
    constructor(text: string);
    readonly parsed: unknown;
    /** Every entity as a polyline, blocks placed; vertices [x, y] in the file's unit. */
    toPolylines(): {
      readonly polylines: readonly {
        readonly layer?: { readonly colorNumber: number; readonly flags: number };
        readonly vertices: readonly [number, number][];
      }[];
    };
  }
}
