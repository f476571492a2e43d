import { outlineShapes } from '../outline/index.js';
import type { Parameter } from '../schema/parameter.js';
import type { Units } from '../schema/units.js';
import { bowlOutline, readBowl } from './bowl.js';
import { checkTogether } from './check.js';
import { checkBoards } from './check-boards.js';
import { readCutters } from './cutters.js';
import { Faults, type Path } from './faults.js';
import { type Field, knowing } from './field.js';
import { sections, topFields } from './fields.js';
import { BOWL_KEYS } from './fields-bowl.js';
import { type Json, type JsonObject, parseJson } from './json.js';
import { nameFault } from './name.js';
import { checkKeys, type Named, object, readNamed } from './named.js';
import { readOwnWoods } from './own-woods.js';
import { readPattern } from './pattern.js';
import { readPlugs } from './plugs.js';
import {
  type Board,
  type BoardSetup,
  type CutterSetup,
  type FitSetup,
  type MachineSetup,
  type MoistureSetup,
  type PassSetup,
  type PressSetup,
  plugHeight,
  type Recipe,
  type RoughingSetup,
  type TableSetup,
  type TimeSetup,
  type Tool,
  type WallSetup,
  type WoodSetup,
} from './recipe.js';
import { withSettings } from './settings.js';
import { defaultValue, readValue, type Value } from './values.js';

const OUTLINE: Named = { key: 'shape', registry: outlineShapes, more: [] };

/** Keys of the recipe that hold objects of their own. */
const GROUPS = ['outline', 'pattern', ...sections.map((s) => s.name)];

/**
 * Reads a recipe: JSON text, with `key=value` settings put over it. `fileName` is used in messages only.
 * Throws BadInput with every fault found, each with its line, its path, the allowed range and what to do.
 */
export function readRecipe(text: string, fileName: string, settings: readonly string[] = []): Recipe {
  const tree = withSettings(parseJson(text, fileName), settings);
  const faults = new Faults(tree);
  const root = object(tree, [], faults);
  if (!root) throw faults.error();
  checkKeys(root, ['$schema', 'cutters', ...topFields.map((f) => f.parameter.name), ...GROUPS], [], faults);
  const units = readUnits(root);
  const top = readFields(root, topFields, [], units, faults);
  const woods = root.members.get('woods');
  const ofWoods = (key: string) => (woods?.kind === 'object' ? woods.members.get(key) : undefined);
  const own = readOwnWoods(ofWoods('own'), faults);
  const group = Object.fromEntries(
    sections.map((s) => {
      const fields = s.fields.map((f) => knowing(f, own));
      return [s.name, readSection(root, s.name, fields, units, faults)];
    }),
  );
  const face = root.members.get('outline');
  const vessel = readBowl(root, group.bowl!, units, faults);
  const outline = vessel
    ? bowlOutline(vessel, readMargin(face, units, faults))
    : root.members.has('bowl')
      ? null
      : readNamed(face, ['outline'], OUTLINE, units, faults);
  const pattern = readPattern(root, units, faults);
  const cutters = readCutters(root.members.get('cutters'), units, faults);
  const plugs = readPlugs(ofWoods('plugs'), own, faults);
  if (top.name !== undefined) {
    const fault = nameFault(top.name as string);
    if (fault) faults.add(['name'], fault);
  }
  if (faults.any || !outline || !pattern) throw faults.error();

  const depth = top.depth as number;
  const skin = top.skin as number;
  const diameter = group.cutter!.diameter as number;
  const fit = fitOf(group.fit!);
  const field = vessel ? vessel.stave.thickness : depth + skin;
  if (vessel && group.stock!.field !== undefined)
    faults.add(['stock', 'field'], 'is given by the bowl: the staves are the field');
  const stock = { field, plug: plugStock(depth, fit, group.fit!.proud), ...group.stock };
  if (fit.plug === 'loose') fit.proud = stock.plug - depth + fit.glueGap;
  const deepest = Math.max(depth, plugHeight({ depth, fit, stock }));
  const machine = { bridge: null, lift: null, shoe: null, ...group.machine } as unknown as MachineSetup;
  const cutter = toolOf(group.cutter!, Math.max(4 * diameter, deepest), deepest, machine);
  const rough = group.roughing!.diameter as number | undefined;
  const roughing =
    rough === undefined
      ? null
      : (toolOf(group.roughing!, Math.max(3 * rough, deepest), deepest, machine) as RoughingSetup);
  const recipe: Recipe = {
    name: top.name as string,
    units,
    outline: {
      shape: outline.name,
      values: outline.values,
      ...(vessel?.setup.continuous ? { runsOn: true } : {}),
    },
    ...(vessel ? { bowl: vessel.setup } : {}),
    pattern,
    stock,
    cutter: { cuts: null, ease: diameter / 10, ...cutter } as CutterSetup,
    roughing,
    passes: {
      roughingStep: rough ?? diameter,
      finishingStep: null,
      ...group.passes,
    } as unknown as PassSetup,
    cutters,
    fit,
    machine,
    table: { neighbours: null, pitch: null, ...group.table } as unknown as TableSetup,
    walls: { least: null, limbs: null, ...group.walls } as unknown as WallSetup,
    times: group.times as unknown as TimeSetup,
    press: group.press!.tons === undefined ? null : (group.press as unknown as PressSetup),
    boards: boardsOf(group.boards!),
    moisture: group.moisture as unknown as MoistureSetup,
    depth,
    skin,
    woods: {
      ...group.woods,
      ...(plugs.length > 0 ? { plugs } : {}),
      ...(own.length > 0 ? { own } : {}),
    } as unknown as WoodSetup,
  };
  checkBoards(recipe, group.boards!, faults);
  checkTogether(recipe, faults, group.fit!.proud as number | undefined);
  if (faults.any) throw faults.error();
  return recipe;
}

/** What a plug on a carrier needs above the saw room, mm: enough wood to hold it. Common practice, no source. */
const CARRIER = 3;

/** How far a loose plug stands proud when nothing says otherwise, mm: enough to plane. Common practice, no source. */
const PROUD = 1;

/** What turns when the recipe does not say, as far as the spindle can. Common practice, no source. */
const USUAL_RPM = 18_000;

/** A cutter with what is derived: its flute length, unless given, is `flute`; `deepest` is the depth of its cut, mm. */
function toolOf(
  given: Record<string, Value>,
  flute: number,
  deepest: number,
  { slowest, fastest }: MachineSetup,
): Tool {
  const edges = Number(given.flute ?? flute);
  return {
    flute,
    shank: given.diameter,
    stickout: Math.max(edges, deepest),
    rpm: Math.max(slowest, Math.min(fastest, USUAL_RPM)),
    feed: null,
    ...given,
  } as unknown as Tool;
}

type Written<T> = { -readonly [K in keyof T]: T[K] };

/** The fit with what is derived but `proud`, which depends on the stock; on a carrier it is none. */
function fitOf(given: Record<string, Value>): Written<FitSetup> {
  const face = given.plug === 'carrier' ? 'down' : 'up';
  return { face, ...given, proud: 0 } as unknown as FitSetup;
}

function boardsOf(given: Record<string, Value>): BoardSetup {
  const board = (width: Value | undefined, length: Value | undefined): Board | null =>
    width === undefined || length === undefined ? null : { length: Number(length), width: Number(width) };
  return {
    plug: board(given.plugWidth, given.plugLength),
    field: board(given.fieldWidth, given.fieldLength),
    pieces: Number(given.pieces),
  };
}

function plugStock(depth: number, fit: FitSetup, proud: Value | undefined): number {
  const above = fit.plug === 'carrier' ? fit.sawRoom + CARRIER : proud === undefined ? PROUD : Number(proud);
  return depth - fit.glueGap + above;
}

/** The unit has to be known before any length is read. A faulty one is reported with the other top fields. */
function readUnits(root: JsonObject): Units {
  const json = root.members.get('units');
  return json?.kind === 'scalar' && json.value === 'in' ? 'in' : 'mm';
}

/** The sound values of an object, defaults filled in; what is derived, missing or faulty stays out. */
function readFields(
  json: JsonObject,
  fields: readonly Field[],
  path: Path,
  units: Units,
  faults: Faults,
): Record<string, Value> {
  const values: Record<string, Value> = {};
  for (const field of fields) {
    const { parameter: p, need } = field;
    const here = [...path, p.name];
    const given = json.members.get(p.name);
    const none =
      given === undefined || (need === 'otherwise' && given.kind === 'scalar' && given.value === null);
    if (!none) {
      const value = readValue(meant(given, field), p, here, units, faults);
      if (value !== undefined) values[p.name] = value;
    } else if (need === 'default') values[p.name] = defaultValue(p);
    else if (need === 'required')
      faults.add(here, `is missing: ${lower(p.meaning)} For example ${example(p)}`);
  }
  return values;
}

/** Another word for an option becomes the option. */
function meant(json: Json, field: Field): Json {
  if (json.kind !== 'scalar' || typeof json.value !== 'string' || !field.also) return json;
  return { ...json, value: field.also.meant(json.value) ?? json.value };
}

/** Keys of sections that are read apart. */
const MORE_KEYS: Readonly<Record<string, readonly string[]>> = { woods: ['plugs', 'own'], bowl: BOWL_KEYS };

/** What a vessel leaves an outline to say: how far the pattern stays from the edges of a stave. */
function readMargin(face: Json | undefined, units: Units, faults: Faults): number {
  const parameter = outlineShapes[0]!.parameters.find((p) => p.name === 'margin')!;
  if (face === undefined) return defaultValue(parameter) as number;
  const json = object(face, ['outline'], faults);
  if (!json) return 0;
  for (const key of json.members.keys())
    if (key !== 'margin')
      faults.add(['outline', key], 'is given by the bowl: an outline says only "margin" here');
  const given = json.members.get('margin');
  const read = given && readValue(given, parameter, ['outline', 'margin'], units, faults);
  return (read ?? defaultValue(parameter)) as number;
}

/** A section left out is a section with no keys, except `roughing`, which then stays empty (as with null). */
function readSection(
  root: JsonObject,
  name: string,
  fields: readonly Field[],
  units: Units,
  faults: Faults,
): Record<string, Value> {
  const given = root.members.get(name);
  const none = given === undefined || (given.kind === 'scalar' && given.value === null);
  if (none && (name === 'roughing' || name === 'bowl')) return {};
  const json = given
    ? object(given, [name], faults)
    : { kind: 'object' as const, source: root.source, members: new Map() };
  if (!json) return {};
  checkKeys(json, [...fields.map((f) => f.parameter.name), ...(MORE_KEYS[name] ?? [])], [name], faults);
  return readFields(json, fields, [name], units, faults);
}

function lower(sentence: string): string {
  return sentence.charAt(0).toLowerCase() + sentence.slice(1);
}

function example(p: Parameter): string {
  return `"${p.name}": ${p.kind === 'length' ? `"${p.default}mm"` : JSON.stringify(p.default)}`;
}
