/** A sound recipe of a small piece; tests change it. */
export const example = {
  name: 'test-piece',
  units: 'mm',
  outline: { shape: 'circle', diameter: 96, margin: 6 },
  pattern: { generator: 'rosette', points: 12, seed: 1 },
  stock: { field: 11, plug: 12 },
  cutter: { diameter: '1/8in', cuts: 3.19, flute: 22, ease: 0.3, thin: 'drop', touch: 'part' },
  roughing: { diameter: '1/4in' },
  fit: { clearance: 0.08, from: 'plug', plug: 'loose' },
  depth: 8,
  skin: 1.5,
  woods: { field: 'white ash', plug: 'black walnut', fieldGrain: 0, plugGrain: 90 },
};

/** The example as text, with values replaced by dotted path; undefined takes a key out. */
export function exampleText(changes: Record<string, unknown> = {}): string {
  const copy = structuredClone(example) as Record<string, unknown>;
  for (const [path, value] of Object.entries(changes)) {
    const keys = path.split('.');
    let at = copy;
    for (const k of keys.slice(0, -1)) at = at[k] as Record<string, unknown>;
    if (value === undefined) delete at[keys.at(-1)!];
    else at[keys.at(-1)!] = value;
  }
  return JSON.stringify(copy, null, 2);
}
