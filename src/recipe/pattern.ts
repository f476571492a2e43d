import { generators } from '../generators/index.js';
import {
  type Layer,
  layerParameters,
  MOST_LAYERS,
  WHOLE,
  type Within,
  withinParameters,
} from '../generators/layer.js';
import { outlineShapes } from '../outline/index.js';
import type { Units } from '../schema/units.js';
import type { Faults, Path } from './faults.js';
import type { Json, JsonObject } from './json.js';
import { checkKeys, type Named, object, readNamed } from './named.js';
import { readValues } from './values.js';

const LAYER: Named = {
  key: 'generator',
  registry: generators,
  more: [...layerParameters.map((p) => p.name), 'within'],
};

/** A shape that a layer is drawn in: no margin unless one is asked for. */
const SHAPE: Named = {
  key: 'shape',
  registry: outlineShapes.map((s) => ({
    name: s.name,
    parameters: s.parameters.map((p) =>
      p.name === 'margin' && p.kind === 'length' ? { ...p, default: 0 } : p,
    ),
  })),
  more: withinParameters.map((p) => p.name),
};

/** `pattern`: one layer, or a list of them. Null, with faults added, when it cannot be read. */
export function readPattern(root: JsonObject, units: Units, faults: Faults): Layer | readonly Layer[] | null {
  const given = root.members.get('pattern');
  if (given?.kind !== 'array') return readLayer(given, ['pattern'], units, faults);
  const { items } = given;
  if (items.length < 1 || items.length > MOST_LAYERS) {
    faults.add(['pattern'], `is a list of ${items.length} layers: give 1 to ${MOST_LAYERS}`);
    return null;
  }
  const layers = items.map((item, k) => readLayer(item, ['pattern', `${k}`], units, faults));
  if (layers[0] && layers[0].combine !== 'union')
    faults.add(
      ['pattern', '0', 'combine'],
      `${layers[0].combine} has no layer before it to work on: the first layer is always "union"`,
    );
  return layers.every((l) => l !== null) ? layers : null;
}

function readLayer(json: Json | undefined, path: Path, units: Units, faults: Faults): Layer | null {
  const named = readNamed(json, path, LAYER, units, faults);
  if (!named || json?.kind !== 'object') return null;
  const own = readValues(json.members, layerParameters, path, units, faults);
  return {
    generator: named.name,
    values: named.values,
    combine: own.combine as Layer['combine'],
    clear: own.clear as number,
    nearby: own.nearby as Layer['nearby'],
    within: readWithin(json.members.get('within'), [...path, 'within'], units, faults),
  };
}

function readWithin(given: Json | undefined, path: Path, units: Units, faults: Faults): Within {
  const json = given && object(given, path, faults);
  if (!json) return WHOLE;
  const place = readValues(json.members, withinParameters, path, units, faults);
  const { inset, x, y } = place as { inset: number; x: number; y: number };
  if (!json.members.has('shape')) {
    // The piece's own outline lies where it lies.
    checkKeys(json, ['shape', 'inset'], path, faults);
    return { ...WHOLE, inset };
  }
  const shape = readNamed(json, path, SHAPE, units, faults);
  return shape ? { shape: { shape: shape.name, values: shape.values }, inset, x, y } : WHOLE;
}
