import type { Generator } from '../generators/generator.js';
import { findGenerator, generators } from '../generators/index.js';
import { suggestion } from '../recipe/nearest.js';
import { BadInput } from '../schema/fault.js';
import type { Parameter } from '../schema/parameter.js';
import { numberText } from '../schema/units.js';

const FAMILIES: Readonly<Record<Generator['family'], string>> = {
  tilings: 'Tilings',
  symmetry: 'Symmetry',
  radial: 'Radial',
  bands: 'Bands',
  knots: 'Knots',
  fields: 'Fields',
  lettering: 'Lettering',
  drawing: 'Drawings',
};

/** Prints the generators by family, or one generator's parameters. Throws BadInput for an unknown name. */
export function list(name: string | undefined, json: boolean): void {
  if (name === undefined) {
    print(json ? jsonText(generators.map(({ draw: _, ...about }) => about)) : overview());
    return;
  }
  const { draw: _, ...about } = generatorNamed(name);
  print(json ? jsonText(about) : details(about));
}

/** Throws BadInput, with the nearest name, when there is none of that name. */
export function generatorNamed(name: string): Generator {
  const found = findGenerator(name);
  if (found) return found;
  const near = suggestion(
    name,
    generators.map((g) => g.name),
  );
  throw new BadInput([{ where: '', message: `no generator is called ${JSON.stringify(name)}; ${near}` }]);
}

function overview(): string {
  const width = Math.max(...generators.map((g) => g.name.length));
  const families = Object.entries(FAMILIES).flatMap(([family, title]) => {
    const members = generators.filter((g) => g.family === family);
    return members.length === 0
      ? []
      : ['', title, ...members.map((g) => `  ${g.name.padEnd(width)}  ${g.summary}`)];
  });
  return [...families.slice(1), '', 'inlaywright list GENERATOR shows its parameters.'].join('\n');
}

function details(g: Omit<Generator, 'draw'>): string {
  const rows = g.parameters.map((p) => [p.name, defaultText(p), rangeText(p)] as const);
  const head = ['parameter', 'default', 'range'] as const;
  const widths = head.map((h, i) => Math.max(h.length, ...rows.map((r) => r[i]!.length)));
  const line = (cells: readonly string[], last: string): string =>
    `  ${cells.map((c, i) => c.padEnd(widths[i]!)).join('  ')}  ${last}`.trimEnd();
  const indent = ' '.repeat(2 + widths.reduce((a, b) => a + b + 2, 0));
  const lines = g.parameters.flatMap((p, i) => [line(rows[i]!, p.meaning), ...optionLines(p, indent)]);
  return [`${g.name}: ${g.title}`, g.summary, '', line(head, 'meaning'), ...lines].join('\n');
}

function optionLines(p: Parameter, indent: string): string[] {
  if (p.kind !== 'choice') return [];
  return p.options.map((o) => `${indent}${o.value}${o.meaning === '' ? '' : `: ${o.meaning}`}`);
}

function defaultText(p: Parameter): string {
  if (p.kind === 'length') return `${numberText(p.default)} mm`;
  if (p.kind === 'angle') return `${numberText(p.default)} degrees`;
  return typeof p.default === 'number' ? numberText(p.default) : String(p.default);
}

function rangeText(p: Parameter): string {
  switch (p.kind) {
    case 'choice':
      return 'one of';
    case 'text':
      return `1 to ${p.maxLength} characters`;
    case 'flag':
      return 'true or false';
    case 'length':
      return `${numberText(p.min)} to ${numberText(p.max)} mm${(p.words ?? []).map((w) => ` or ${w}`).join('')}`;
    case 'angle':
      return `${numberText(p.min)} to ${numberText(p.max)} degrees`;
    default:
      return `${numberText(p.min)} to ${numberText(p.max)}`;
  }
}

function jsonText(value: unknown): string {
  return JSON.stringify(value, null, 2);
}

function print(text: string): void {
  process.stdout.write(`${text}\n`);
}
