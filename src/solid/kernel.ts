import Module, { type Manifold, type ManifoldToplevel } from 'manifold-3d';

/** The library of solids, started. Its objects live outside the garbage collector: see `Bench`. */
export type Kernel = ManifoldToplevel;
export type Solid = Manifold;

let started: Promise<Kernel> | undefined;

/** Starts the library of solids from the bytes of its WASM file; later calls reuse the first one's. */
export function startKernel(wasm: ArrayBuffer | Uint8Array): Promise<Kernel> {
  started ??= start(wasm);
  return started;
}

async function start(wasm: ArrayBuffer | Uint8Array): Promise<Kernel> {
  const load = Module as unknown as (config: { wasmBinary: unknown }) => Promise<Kernel>;
  const kernel = await load({ wasmBinary: wasm });
  kernel.setup();
  return kernel;
}

/** Keeps what is made on it until the work is done, and frees it then. */
export class Bench {
  readonly #made: { delete(): void }[] = [];

  keep<T extends { delete(): void }>(made: T): T {
    this.#made.push(made);
    return made;
  }

  clear(): void {
    for (const one of this.#made.splice(0)) one.delete();
  }
}

/** Triangles of a body, mm: x, y, z of every corner, and three corners a triangle, counter-clockwise from outside. */
export interface Mesh {
  readonly points: Float32Array;
  readonly triangles: Uint32Array;
}

/** The triangles of a solid, copied out of the library. */
export function meshOf(solid: Solid): Mesh {
  const { numProp, vertProperties, triVerts } = solid.getMesh();
  if (numProp === 3) return { points: vertProperties.slice(), triangles: triVerts.slice() };
  const points = new Float32Array((vertProperties.length / numProp) * 3);
  for (let k = 0; k < points.length / 3; k++)
    for (let i = 0; i < 3; i++) points[3 * k + i] = vertProperties[numProp * k + i]!;
  return { points, triangles: triVerts.slice() };
}
