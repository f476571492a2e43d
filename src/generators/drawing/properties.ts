/** The properties that say what of a drawing is painted: initial values, and whether children take them over. */
const PROPERTIES = {
  fill: { initial: 'black', inherits: true },
  'fill-rule': { initial: 'nonzero', inherits: true },
  'fill-opacity': { initial: '1', inherits: true },
  stroke: { initial: 'none', inherits: true },
  'stroke-width': { initial: '1', inherits: true },
  'stroke-linejoin': { initial: 'miter', inherits: true },
  'stroke-linecap': { initial: 'butt', inherits: true },
  'stroke-miterlimit': { initial: '4', inherits: true },
  'stroke-dasharray': { initial: 'none', inherits: true },
  'stroke-opacity': { initial: '1', inherits: true },
  color: { initial: 'black', inherits: true },
  visibility: { initial: 'visible', inherits: true },
  'clip-rule': { initial: 'nonzero', inherits: true },
  'paint-order': { initial: 'normal', inherits: true },
  'marker-start': { initial: 'none', inherits: true },
  'marker-mid': { initial: 'none', inherits: true },
  'marker-end': { initial: 'none', inherits: true },
  'vector-effect': { initial: 'none', inherits: false },
  opacity: { initial: '1', inherits: false },
  display: { initial: 'inline', inherits: false },
  overflow: { initial: 'hidden', inherits: false },
  'clip-path': { initial: 'none', inherits: false },
  mask: { initial: 'none', inherits: false },
  filter: { initial: 'none', inherits: false },
  transform: { initial: 'none', inherits: false },
  'transform-origin': { initial: '0 0', inherits: false },
} as const satisfies Readonly<Record<string, { readonly initial: string; readonly inherits: boolean }>>;

export type Property = keyof typeof PROPERTIES;

export const properties = Object.keys(PROPERTIES) as readonly Property[];

export function isProperty(name: string): name is Property {
  return Object.hasOwn(PROPERTIES, name);
}

/** The value of every property at one element, as text. */
export type Style = Readonly<Record<Property, string>>;

/** What an element starts from: its parent's values where they are inherited, else the initial ones. */
export function startingStyle(parent: Style | null): Record<Property, string> {
  const style = {} as Record<Property, string>;
  for (const p of properties) style[p] = parent && PROPERTIES[p].inherits ? parent[p] : PROPERTIES[p].initial;
  return style;
}

/** A declared value with the keywords that every property knows put in. */
export function computed(property: Property, value: string, parent: Style | null): string {
  const { initial, inherits } = PROPERTIES[property];
  const word = value.trim().toLowerCase();
  if (word === 'inherit') return parent ? parent[property] : initial;
  if (word === 'initial') return initial;
  if (word === 'unset' || word === 'revert') return inherits && parent ? parent[property] : initial;
  return value.trim();
}
