/** A DXF reader that ships no types: what the tests use of it. */
declare module 'dxf' {
  export class Helper {
    constructor(text: string);
    readonly parsed: unknown;
  }
}
