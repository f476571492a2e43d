import { type Callback, wasmFunctions } from './callbacks.js';

/**
 * HarfBuzz, the shaping engine, as its WASM file: glyph choice, advances, offsets, kerning, ligatures, joined and
 * right-to-left scripts, marks, and the outlines too. (A font library in JavaScript such as opentype.js kerns only partly and
 * shapes no joined script; and a font made to do so can keep it busy for ever, which HarfBuzz bounds.) The file's exported
 * functions are HarfBuzz's C API; of its five imports only one is ever used in earnest.
 */
export interface Shaper {
  /** Opens an SFNT font. Throws BrokenFont when the engine finds no glyphs in it. Close it, or its memory is kept. */
  open(bytes: Uint8Array): ShapedFont;
}

/** The engine cannot work with a font, or gave up on it. */
export class BrokenFont extends Error {}

/** A glyph where shaping put it; lengths in font units, y up. */
export interface ShapedGlyph {
  readonly id: number;
  /** Where its characters start in the text, UTF-16 units. */
  readonly cluster: number;
  readonly advance: number;
  readonly dx: number;
  readonly dy: number;
}

/** One command of an outline and its coordinates, font units: M x y, L x y, Q x1 y1 x y, C x1 y1 x2 y2 x y, Z. */
export type OutlineCommand = readonly [type: 'M' | 'L' | 'Q' | 'C' | 'Z', ...at: number[]];

export interface Run {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly rtl: boolean;
  /** ISO 15924, such as Latn; empty for signs of no script. */
  readonly script: string;
}

export interface ShapedFont {
  readonly unitsPerEm: number;
  /** The font's own height of capitals, font units; 0 when it says none. */
  readonly capHeight: number;
  /** The glyph of a code point, 0 when there is none. */
  glyphOf(codePoint: number): number;
  /** The glyphs of text from..to in visual order, left to right. `off` names features not to use (kern, liga ...). */
  shape(run: Run, off: readonly string[]): ShapedGlyph[];
  outline(glyph: number): OutlineCommand[];
  close(): void;
}

/** The compiled WASM is small and one instance serves many fonts, opened and closed in turn. */
export function makeShaper(wasm: BufferSource | WebAssembly.Module): Shaper {
  const compiled = wasm instanceof WebAssembly.Module ? wasm : new WebAssembly.Module(wasm);
  let engine: Engine | null = null;
  return {
    open(bytes) {
      // An engine that trapped once is in no known state: the next font gets a new one.
      if (!engine || engine.dead) engine = new Engine(compiled);
      return engine.open(bytes);
    },
  };
}

type C = (...values: number[]) => number;

/** HB_MEMORY_MODE_READONLY: the engine neither copies nor frees the bytes. */
const READ_ONLY = 1;
const LTR = 4;
const RTL = 5;
/** No font of the size that is let in needs more, bytes. */
const MOST_MEMORY = 512 * 1024 * 1024;
const PAGE = 65536;
/** A glyph of more commands is no letter. */
const MOST_COMMANDS = 10_000;
/** Shaping may make several glyphs of a character; more than this many of each are a fault of the font. */
const MOST_GLYPHS = 12;

class Engine {
  dead = false;
  readonly #c: Readonly<Record<string, C>>;
  readonly #memory: WebAssembly.Memory;
  readonly #pens: number;
  #drawn: OutlineCommand[] = [];

  constructor(compiled: WebAssembly.Module) {
    const stop = (): never => {
      throw new BrokenFont('the engine stopped');
    };
    const instance = new WebAssembly.Instance(compiled, {
      env: {
        _abort_js: stop,
        _emscripten_runtime_keepalive_clear: () => undefined,
        _setitimer_js: () => 0,
        emscripten_resize_heap: (bytes: number) => this.#grow(bytes >>> 0),
      },
      wasi_snapshot_preview1: { proc_exit: stop },
    });
    this.#c = instance.exports as unknown as Record<string, C>;
    this.#memory = instance.exports.memory as WebAssembly.Memory;
    this.#c.__wasm_call_ctors!();
    this.#pens = this.#makePens(instance.exports.__indirect_function_table as WebAssembly.Table);
  }

  #grow(bytes: number): number {
    if (bytes > MOST_MEMORY) return 0;
    try {
      this.#memory.grow(Math.ceil((bytes - this.#memory.buffer.byteLength) / PAGE));
      return 1;
    } catch {
      return 0;
    }
  }

  /** The engine's table of drawing functions; each is called with three pointers first, then the coordinates. */
  #makePens(table: WebAssembly.Table): number {
    const put = (type: OutlineCommand[0], coordinates: number): Callback => ({
      takes: `iii${'f'.repeat(coordinates)}i`,
      call: (...values) => {
        if (!values.every(Number.isFinite)) throw new BrokenFont('a letter of it has no size');
        if (this.#drawn.length >= MOST_COMMANDS) throw new BrokenFont('a letter of it is endless');
        this.#drawn.push([type, ...values.slice(3, 3 + coordinates)]);
      },
    });
    const kinds = [put('M', 2), put('L', 2), put('Q', 4), put('C', 6), put('Z', 0)];
    const first = table.grow(kinds.length);
    wasmFunctions(kinds).forEach((f, i) => {
      table.set(first + i, f);
    });
    const pens = this.#c.hb_draw_funcs_create!();
    ['move_to', 'line_to', 'quadratic_to', 'cubic_to', 'close_path'].forEach((kind, i) => {
      this.#c[`hb_draw_funcs_set_${kind}_func`]!(pens, first + i, 0, 0);
    });
    return pens;
  }

  open(bytes: Uint8Array): ShapedFont {
    return this.#guarded(() => this.#opened(bytes));
  }

  #opened(bytes: Uint8Array): ShapedFont {
    const c = this.#c;
    const data = this.#room(bytes.length);
    new Uint8Array(this.#memory.buffer).set(bytes, data);
    const blob = c.hb_blob_create!(data, bytes.length, READ_ONLY, 0, 0);
    const face = c.hb_face_create!(blob, 0);
    const font = c.hb_font_create!(face);
    const unitsPerEm = c.hb_face_get_upem!(face) >>> 0;
    c.hb_font_set_scale!(font, unitsPerEm, unitsPerEm);
    let open = true;
    const used = <T>(work: () => T): T => {
      if (!open) throw new Error('the font was closed');
      return this.#guarded(work);
    };
    return {
      unitsPerEm,
      capHeight: this.#position(font, 'cpht'),
      glyphOf: (codePoint) => used(() => this.#glyphOf(font, codePoint)),
      shape: (run, off) => used(() => this.#shape(font, run, off)),
      outline: (glyph) => used(() => this.#outline(font, glyph)),
      close: () => {
        if (!open) return;
        open = false;
        if (this.dead) return;
        this.#guarded(() => {
          c.hb_font_destroy!(font);
          c.hb_face_destroy!(face);
          c.hb_blob_destroy!(blob);
          c.free!(data);
        });
      },
    };
  }

  #position(font: number, metric: string): number {
    const at = this.#room(4);
    const found = this.#c.hb_ot_metrics_get_position!(font, tag(metric), at);
    const value = found === 0 ? 0 : this.#ints(at, 1)[0]!;
    this.#c.free!(at);
    return value;
  }

  #glyphOf(font: number, codePoint: number): number {
    const at = this.#room(4);
    const found = this.#c.hb_font_get_nominal_glyph!(font, codePoint, at);
    const glyph = found === 0 ? 0 : this.#ints(at, 1)[0]!;
    this.#c.free!(at);
    return glyph;
  }

  #shape(font: number, { text, from, to, rtl, script }: Run, off: readonly string[]): ShapedGlyph[] {
    const c = this.#c;
    const chars = this.#room(2 * text.length);
    const units = new Uint16Array(this.#memory.buffer, chars, text.length);
    for (let i = 0; i < text.length; i++) units[i] = text.charCodeAt(i);
    const buffer = c.hb_buffer_create!();
    // The whole text goes in as context, so that letters at a run's ends know their neighbours.
    c.hb_buffer_add_utf16!(buffer, chars, text.length, from, to - from);
    c.hb_buffer_set_direction!(buffer, rtl ? RTL : LTR);
    if (script !== '') c.hb_buffer_set_script!(buffer, tag(script));
    c.hb_buffer_guess_segment_properties!(buffer);
    const features = this.#room(16 * Math.max(1, off.length));
    // Tag, value 0, and the whole run: from 0 to the largest number.
    const words = new Int32Array(this.#memory.buffer, features, 4 * off.length);
    off.forEach((name, i) => {
      words.set([tag(name), 0, 0, -1], 4 * i);
    });
    c.hb_shape!(font, buffer, features, off.length);
    const n = c.hb_buffer_get_length!(buffer);
    if (n > MOST_GLYPHS * (to - from) + 100) throw new BrokenFont('it makes endless letters of a few');
    const infos = this.#ints(c.hb_buffer_get_glyph_infos!(buffer, 0), 5 * n);
    const places = this.#ints(c.hb_buffer_get_glyph_positions!(buffer, 0), 5 * n);
    const out = Array.from({ length: n }, (_, i) => ({
      id: infos[5 * i]!,
      cluster: infos[5 * i + 2]!,
      advance: places[5 * i]!,
      dx: places[5 * i + 2]!,
      dy: places[5 * i + 3]!,
    }));
    c.hb_buffer_destroy!(buffer);
    c.free!(features);
    c.free!(chars);
    return out;
  }

  #outline(font: number, glyph: number): OutlineCommand[] {
    this.#drawn = [];
    this.#c.hb_font_draw_glyph!(font, glyph, this.#pens, 0);
    return this.#drawn;
  }

  /** A copy: the memory moves when it grows. */
  #ints(at: number, count: number): Int32Array {
    return at === 0 ? new Int32Array(count) : new Int32Array(this.#memory.buffer, at, count).slice();
  }

  #room(bytes: number): number {
    const at = this.#c.malloc!(Math.max(8, bytes)) >>> 0;
    if (at === 0) throw new BrokenFont('it needs more memory than there is');
    return at;
  }

  #guarded<T>(work: () => T): T {
    if (this.dead) throw new BrokenFont('the engine stopped');
    try {
      return work();
    } catch (e) {
      this.dead = true;
      if (e instanceof BrokenFont || e instanceof WebAssembly.RuntimeError)
        throw new BrokenFont(e instanceof BrokenFont ? e.message : 'the engine stopped', { cause: e });
      throw e;
    }
  }
}

function tag(name: string): number {
  return (
    (name.charCodeAt(0) << 24) | (name.charCodeAt(1) << 16) | (name.charCodeAt(2) << 8) | name.charCodeAt(3)
  );
}
