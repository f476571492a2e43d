import { initWasm, Resvg } from '@resvg/resvg-wasm';

/** The font that words of a picture are set in. */
export interface PictureFont {
  readonly family: string;
  readonly bytes: Uint8Array;
}

/**
 * Draws an SVG as a PNG of the given width, pixels. Same bytes everywhere, since the renderer is WASM and has no fonts but
 * the one it is given.
 */
export interface Renderer {
  png(svg: string, widthPx: number, font?: PictureFont): Uint8Array;
}

/** The library keeps its WASM in module state and refuses to start twice, so whether it was started is kept here too. */
let started: Promise<void> | undefined;

/** Starts the renderer from its WASM, which is asked for only then; later calls reuse what the first one started. */
export async function makeRenderer(wasm: () => BufferSource | WebAssembly.Module): Promise<Renderer> {
  started ??= initWasm(wasm());
  await started;
  return { png };
}

function png(svg: string, widthPx: number, font?: PictureFont): Uint8Array {
  const resvg = new Resvg(svg, {
    fitTo: { mode: 'width', value: widthPx },
    ...(font ? { font: { fontBuffers: [font.bytes], defaultFontFamily: font.family } } : {}),
  });
  try {
    const image = resvg.render();
    try {
      return image.asPng();
    } finally {
      image.free();
    }
  } finally {
    resvg.free();
  }
}
