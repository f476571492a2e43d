import { Document, WebIO } from '@gltf-transform/core';
import type { Mesh } from './kernel.js';

/** A body for a glTF scene. */
export interface Coloured {
  readonly name: string;
  readonly mesh: Mesh;
  /** #rrggbb */
  readonly colour: string;
}

/** Metres, which glTF 2.0 (Khronos, ISO/IEC 12113) is in. */
const METRES = 0.001;

/**
 * Bodies as one binary glTF 2.0, each a node and a material of its own. Ours stands on z = 0 in mm; glTF has y up and
 * metres, so x, y, z become x, z, -y. No normals are given: by the standard every triangle is then shown flat.
 */
export async function glb(bodies: readonly Coloured[], name: string): Promise<Uint8Array> {
  const doc = new Document();
  // The library's own name and version would change the bytes with every release of it.
  doc.getRoot().getAsset().generator = 'Inlaywright';
  const buffer = doc.createBuffer();
  const scene = doc.createScene(name);
  for (const { name: own, mesh, colour } of bodies) {
    const positions = new Float32Array(mesh.points.length);
    for (let k = 0; k < positions.length; k += 3) {
      positions[k] = mesh.points[k]! * METRES;
      positions[k + 1] = mesh.points[k + 2]! * METRES;
      positions[k + 2] = -mesh.points[k + 1]! * METRES;
    }
    const material = doc
      .createMaterial(own)
      .setBaseColorFactor([...linear(colour), 1])
      .setMetallicFactor(0)
      .setRoughnessFactor(0.75);
    const primitive = doc
      .createPrimitive()
      .setAttribute('POSITION', doc.createAccessor().setType('VEC3').setArray(positions).setBuffer(buffer))
      .setIndices(doc.createAccessor().setType('SCALAR').setArray(mesh.triangles.slice()).setBuffer(buffer))
      .setMaterial(material);
    const made = doc.createMesh(own).addPrimitive(primitive);
    scene.addChild(doc.createNode(own).setMesh(made));
  }
  return new WebIO().writeBinary(doc);
}

/** A colour of the screen in linear light, by a square where the standard has a power of 2.4: near enough for wood. */
function linear(colour: string): [number, number, number] {
  const part = (k: number): number => {
    const v = Number.parseInt(colour.slice(1 + 2 * k, 3 + 2 * k), 16) / 255;
    return v * v;
  };
  return [part(0), part(1), part(2)];
}
