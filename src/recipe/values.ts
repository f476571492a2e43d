import { radians } from '../geometry/trig.js';
import type { Parameter, Values } from '../schema/parameter.js';
import { lengthRange, numberText, parseLength, toMillimetres, type Units } from '../schema/units.js';
import { type Faults, type Path, shown } from './faults.js';
import type { Json, JsonScalar } from './json.js';
import { suggestion } from './nearest.js';

export type Value = number | string | boolean;

/**
 * Reads one value by its description: lengths to mm, angles to radians. Adds a fault and returns undefined when the
 * value is of another kind or out of its range.
 */
export function readValue(
  json: Json,
  p: Parameter,
  path: Path,
  units: Units,
  faults: Faults,
): Value | undefined {
  if (json.kind !== 'scalar') {
    faults.add(path, `must be ${kindText(p)}, not ${json.kind === 'array' ? 'a list' : 'an object'}`);
    return undefined;
  }
  const result = readers[p.kind](json, p as never, units);
  if (typeof result !== 'object') return result;
  faults.add(path, result.fault);
  return undefined;
}

type Result = Value | { readonly fault: string };
type Reader<K extends Parameter['kind']> = (
  json: JsonScalar,
  p: Extract<Parameter, { kind: K }>,
  units: Units,
) => Result;

const readers: { readonly [K in Parameter['kind']]: Reader<K> } = {
  length: ({ value }, p, units) => {
    if (typeof value === 'string' && p.words?.includes(value)) return value;
    const words = (p.words ?? []).map((w) => `, or "${w}"`).join('');
    const range = lengthRange(p.min, p.max, units) + words;
    let mm: number | string;
    if (typeof value === 'number') mm = toMillimetres(value, units);
    else if (typeof value === 'string') mm = parseLength(value);
    else return { fault: `must be ${kindText(p)}, not ${shown(value)}: ${range}` };
    if (typeof mm === 'string') return { fault: `${shown(value)} ${mm}${words}` };
    if (mm >= p.min && mm <= p.max) return mm;
    return {
      fault: `${shown(value)}${typeof value === 'number' ? ` ${units}` : ''} is out of range: ${range}`,
    };
  },
  angle: ({ value }, p) => {
    const range = `${numberText(p.min)} to ${numberText(p.max)} degrees`;
    if (typeof value !== 'number')
      return { fault: `must be a number of degrees, not ${shown(value)}: ${range}` };
    if (value >= p.min && value <= p.max) return radians(value);
    return { fault: `${shown(value)} is out of range: ${range}` };
  },
  count: ({ value }, p) => {
    const range = `${p.min} to ${p.max}`;
    if (typeof value !== 'number' || !Number.isInteger(value))
      return { fault: `must be a whole number, not ${shown(value)}: ${range}` };
    return value >= p.min && value <= p.max ? value : { fault: `${shown(value)} is out of range: ${range}` };
  },
  number: ({ value }, p) => {
    const range = `${numberText(p.min)} to ${numberText(p.max)}`;
    if (typeof value !== 'number') return { fault: `must be a number, not ${shown(value)}: ${range}` };
    return value >= p.min && value <= p.max ? value : { fault: `${shown(value)} is out of range: ${range}` };
  },
  choice: ({ value }, p) => {
    const known = p.options.map((o) => o.value);
    // A choice may be a number of points or sides, which nobody would put in quotes.
    if (typeof value !== 'boolean' && known.includes(String(value))) return String(value);
    if (typeof value === 'string')
      return { fault: `${shown(value)} is not known; ${suggestion(value, known)}` };
    return { fault: `${shown(value)} is not known: one of ${known.join(', ')}` };
  },
  text: ({ value, raw }, p) => {
    const text = raw ?? value;
    if (typeof text !== 'string') return { fault: `must be a text in double quotes, not ${shown(value)}` };
    if (text.trim() === '') return { fault: `is empty: give 1 to ${p.maxLength} characters` };
    if ([...text].length > p.maxLength)
      return { fault: `is longer than ${p.maxLength} characters: shorten it` };
    return controlFault(text, p.lines === true) ?? text;
  },
  flag: ({ value }) =>
    typeof value === 'boolean' ? value : { fault: `must be true or false, not ${shown(value)}` },
};

/** The fault of a text with a character that cannot be drawn, with its place; null when there is none. */
function controlFault(text: string, lines: boolean): { fault: string } | null {
  let line = 1;
  let place = 0;
  for (const character of text) {
    place++;
    if (lines && character === '\n') {
      line++;
      place = 0;
    } else if (/[\p{Cc}\p{Cs}]/u.test(character)) {
      const code = character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0');
      const where = lines ? `character ${place} of line ${line}` : `character ${place}`;
      return {
        fault: `holds a character that cannot be drawn (a line break, a tab ...): U+${code}, ${where}; take it out`,
      };
    }
  }
  return null;
}

function kindText(p: Parameter): string {
  const texts = {
    length: 'a length (a number, or a text such as "1/8in" or "3mm")',
    angle: 'a number of degrees',
    count: 'a whole number',
    number: 'a number',
    choice: 'a text',
    text: 'a text',
    flag: 'true or false',
  } as const;
  return texts[p.kind];
}

/** The default of a parameter as `readValue` would return it: mm, radians. */
export function defaultValue(p: Parameter): Value {
  return p.kind === 'angle' ? radians(p.default) : p.default;
}

/** Every parameter's value from an object's members, defaults filled in. Keys that are not parameters are left alone. */
export function readValues(
  members: ReadonlyMap<string, Json>,
  parameters: readonly Parameter[],
  path: Path,
  units: Units,
  faults: Faults,
): Values {
  const values: Record<string, Value> = {};
  for (const p of parameters) {
    const json = members.get(p.name);
    const read = json ? readValue(json, p, [...path, p.name], units, faults) : undefined;
    values[p.name] = read ?? defaultValue(p);
  }
  return values;
}
