import { WebIO } from '@gltf-transform/core';
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, it } from 'vitest';
import { makeVessel } from '../../src/bowl/vessel.js';
import { glb } from '../../src/solid/glb.js';
import { elevation, plan, type Seen, unrolled } from '../../src/solid/picture.js';
import { png } from '../../src/solid/png.js';
import { stl } from '../../src/solid/stl.js';
import { type VesselModel, vesselModel } from '../../src/solid/vessel.js';
import { kernel, strip, tube } from '../support/vessel.js';

let model: VesselModel;
beforeAll(async () => {
  model = vesselModel(await kernel(), {
    vessel: makeVessel(tube),
    field: 'maple',
    figures: [{ wood: 'walnut', region: strip(15, 20) }],
    foot: 40,
  });
});

describe('an STL file', () => {
  // The format: 80 bytes, the count, then 50 bytes a triangle, little-endian (3D Systems 1989, from memory).
  it('holds the body: count, size and volume read back by hand', () => {
    const { mesh, volume } = model.bodies[1]!;
    const bytes = stl([mesh], 'tube inlay, mm');
    const view = new DataView(bytes.buffer);
    expect(view.getUint32(80, true)).toBe(mesh.triangles.length / 3);
    expect(bytes.length).toBe(84 + 50 * (mesh.triangles.length / 3));
    let [sum, highest] = [0, 0];
    for (let at = 84; at < bytes.length; at += 50) {
      const v = Array.from({ length: 12 }, (_, i) => view.getFloat32(at + 4 * i, true));
      const [n, a, b, c] = [v.slice(0, 3), v.slice(3, 6), v.slice(6, 9), v.slice(9, 12)] as [
        number[],
        number[],
        number[],
        number[],
      ];
      sum +=
        (a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) -
          a[1]! * (b[0]! * c[2]! - b[2]! * c[0]!) +
          a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!)) /
        6;
      highest = Math.max(highest, a[2]!);
      expect(Math.hypot(...n)).toBeCloseTo(1, 4);
    }
    expect(sum / volume).toBeCloseTo(1, 4);
    // The strip is 40 high about the middle of 80.
    expect(highest).toBeCloseTo(60, 3);
  });

  it('does not begin as text would', () => {
    expect(new TextDecoder().decode(stl([], 'solid bowl').subarray(0, 5))).not.toBe('solid');
  });
});

describe('a glTF file', () => {
  const bodies = () =>
    model.bodies.map((b, k) => ({ name: b.name, mesh: b.mesh, colour: k === 0 ? '#e8d3ab' : '#5a3b28' }));

  // Header, chunks and units: glTF 2.0 specification (Khronos; ISO/IEC 12113:2022).
  it('is a binary glTF 2.0 in metres, y up, a body a node', async () => {
    const bytes = await glb(bodies(), 'tube');
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    expect(view.getUint32(0, true)).toBe(0x46546c67);
    expect(view.getUint32(4, true)).toBe(2);
    expect(view.getUint32(8, true)).toBe(bytes.length);
    expect(view.getUint32(16, true)).toBe(0x4e4f534a);
    const json = JSON.parse(new TextDecoder().decode(bytes.subarray(20, 20 + view.getUint32(12, true))));
    expect(json.nodes.map((n: { name: string }) => n.name)).toEqual(['field', 'inlay 1']);
    const { min, max } = json.accessors[json.meshes[0].primitives[0].attributes.POSITION];
    for (const [k, v] of [-0.05, 0, -0.05].entries()) expect(min[k]).toBeCloseTo(v, 4);
    for (const [k, v] of [0.05, 0.08, 0.05].entries()) expect(max[k]).toBeCloseTo(v, 4);
    expect(json.asset.generator).toBe('Inlaywright');
  });

  it('keeps right and left: x stays, up becomes y, what lies behind lies behind', async () => {
    const mesh = {
      points: Float32Array.from([1, 2, 3, 4, 2, 3, 1, 5, 3]),
      triangles: Uint32Array.from([0, 1, 2]),
    };
    const doc = await new WebIO().readBinary(await glb([{ name: 'one', mesh, colour: '#ffffff' }], 'one'));
    const at = doc
      .getRoot()
      .listMeshes()[0]!
      .listPrimitives()[0]!
      .getAttribute('POSITION')!
      .getElement(0, []);
    // Towards the viewer is -y with us and +z in glTF.
    for (const [k, v] of [0.001, 0.003, -0.002].entries()) expect(at[k]).toBeCloseTo(v, 9);
  });

  it('is the same bytes every time, and is read by a library', async () => {
    const [a, b] = [await glb(bodies(), 'tube'), await glb(bodies(), 'tube')];
    expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true);
    const doc = await new WebIO().readBinary(a);
    expect(doc.getRoot().listMeshes().length).toBe(2);
    const wood = doc.getRoot().listMaterials()[1]!.getBaseColorFactor();
    expect(wood[0]).toBeCloseTo((0x5a / 255) ** 2, 3);
  });
});

describe('pictures of it', () => {
  const FIELD = '#f0f000';
  const PLUG = '#0000f0';
  const seen = (which: 'bodies' | 'cutAway'): Seen[] =>
    model[which].map((b, k) => ({ mesh: b.mesh, colour: k === 0 ? FIELD : PLUG }));
  /** Shares of a picture's own pixels by what they show. */
  const shares = (pixels: Uint8Array): { field: number; plug: number } => {
    let [field, plug] = [0, 0];
    for (let k = 0; k < pixels.length; k += 3) {
      if (pixels[k + 2]! > 100 && pixels[k]! < 50) plug++;
      else if (pixels[k + 2]! < 50) field++;
    }
    return { field: field / (field + plug), plug: plug / (field + plug) };
  };

  it('unrolled show as much of the figure as circles say, on either face', () => {
    const round = (r: number): number => ((8 * Math.asin(15 / r)) / (2 * Math.PI)) * 0.5;
    const outside = unrolled(seen('bodies'), 'outside', 50, 1200);
    const inside = unrolled(seen('bodies'), 'inside', 50, 1200);
    expect(shares(outside.pixels).plug).toBeCloseTo(round(50), 2);
    expect(shares(inside.pixels).plug).toBeCloseTo(round(40), 2);
    // Once round at 50 mm across, 80 high.
    expect(outside.scale).toBeCloseTo((1200 - 24) / (2 * Math.PI * 50), 6);
    expect(outside.height).toBe(Math.ceil(80 * outside.scale + 24));
  });

  it('from the front show the first stave’s strip in the middle, 30 mm wide, and the cut wall through the others', () => {
    const { width, height, pixels, scale } = elevation(seen('bodies'), 600);
    const row = Math.floor(height / 2);
    const plugAt = (x: number): boolean =>
      pixels[3 * (row * width + x) + 2]! > 100 && pixels[3 * (row * width + x)]! < 50;
    const across = Array.from({ length: width }, (_, x) => x).filter(
      (x) => plugAt(x) && Math.abs(x - width / 2) < 25 * scale,
    );
    expect((across.at(-1)! - across[0]! + 1) / scale).toBeCloseTo(30, 0);
    const cut = elevation(seen('cutAway'), 600);
    const mid = Math.floor(cut.height / 2);
    // The strips at the sides are cut through: plug from 40 to 50 mm off the middle.
    const at = (mm: number): number => 3 * (mid * cut.width + Math.round(cut.width / 2 + mm * cut.scale));
    expect(cut.pixels[at(45) + 2]!).toBeGreaterThan(100);
    expect(cut.pixels[at(-45) + 2]!).toBeGreaterThan(100);
  });

  it('from above and below keep right on the right, and show what faces the eye', () => {
    // A slab whose right half is plug above, and whose front half is plug below.
    const slab = (x0: number, y0: number, z0: number, x1: number, y1: number, z1: number): Seen['mesh'] => {
      const corner = (k: number): number[] => [k & 1 ? x1 : x0, k & 2 ? y1 : y0, k & 4 ? z1 : z0];
      const faces = [0, 2, 1, 1, 2, 3, 4, 5, 6, 5, 7, 6];
      return {
        points: Float32Array.from(Array.from({ length: 8 }, (_, k) => corner(k)).flat()),
        triangles: Uint32Array.from(faces),
      };
    };
    const bodies: Seen[] = [
      { mesh: slab(-10, -10, 0, 10, 10, 4), colour: FIELD },
      { mesh: slab(0, -10, 4, 10, 10, 5), colour: PLUG },
      { mesh: slab(-10, -10, -1, 10, 0, 0), colour: PLUG },
    ];
    const isPlug = (
      { pixels, width, height, scale }: ReturnType<typeof plan>,
      u: number,
      v: number,
    ): boolean => {
      const at = 3 * (Math.round(height / 2 - v * scale) * width + Math.round(width / 2 + u * scale));
      return pixels[at + 2]! > 100 && pixels[at]! < 50;
    };
    const [above, below] = [plan(bodies, 'above', 200), plan(bodies, 'below', 200)];
    expect([isPlug(above, 5, 5), isPlug(above, 5, -5), isPlug(above, -5, 5)]).toEqual([true, true, false]);
    // Turned over about the line from left to right, what lay in front lies behind.
    expect([isPlug(below, 5, 5), isPlug(below, -5, 5), isPlug(below, 5, -5)]).toEqual([true, true, false]);
  });

  it('are PNG that another reader reads, pixel for pixel', () => {
    const raster = elevation(seen('bodies'), 160);
    const read = PNG.sync.read(Buffer.from(png(raster)));
    expect([read.width, read.height]).toEqual([raster.width, raster.height]);
    for (let k = 0; k < raster.width * raster.height; k += 7)
      expect([...read.data.subarray(4 * k, 4 * k + 3)]).toEqual([
        ...raster.pixels.subarray(3 * k, 3 * k + 3),
      ]);
  });
});
