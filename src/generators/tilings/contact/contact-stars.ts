import type { Values } from '../../../schema/parameter.js';
import { num } from '../../values.js';
import { penroseSource } from '../aperiodic/penrose.js';
import { dualSource } from '../dual-tiling.js';
import { rhombSource } from '../rhombs.js';
import type { TileSource } from '../tile.js';
import { tilePattern } from '../tile-pattern.js';
import { uniformSource } from '../tiling.js';
import { uniformTilings } from '../uniform.js';
import { type Contacts, middles, touches } from './contacts.js';
import { CONTACT_KINDS, contactSource } from './source.js';

interface Ground {
  readonly value: string;
  readonly meaning: string;
  readonly contacts: Contacts;
  source(values: Values): TileSource;
}

/** Every tiling that stars may stand on. */
const GROUNDS: readonly Ground[] = [
  ...uniformTilings.map((t) => ({
    value: t.name,
    meaning: t.title,
    contacts: middles,
    source: () => uniformSource(t),
  })),
  ...uniformTilings.map((t) => ({
    value: `dual ${t.name}`,
    meaning: `the tiling dual to ${t.name}`,
    contacts: touches,
    source: () => dualSource(t),
  })),
  {
    value: 'rhombs',
    meaning: 'a lattice of rhombs',
    contacts: middles,
    source: (values) => rhombSource(num(values, 'rhomb'), false),
  },
  {
    value: 'penrose',
    meaning: 'Penrose rhombs, thick and thin',
    contacts: middles,
    source: () => penroseSource('rhombs'),
  },
];

export const contactStars = tilePattern({
  name: 'contact-stars',
  title: 'Contact stars',
  summary:
    'Star patterns on a tiling: from the middle of every edge two lines at one angle, cut off where they meet.',
  parameters: [
    {
      kind: 'choice',
      name: 'tiling',
      meaning: 'The tiling under the stars, which is not drawn.',
      say: 'over a tiling of …',
      default: '4.8.8',
      options: GROUNDS.map(({ value, meaning }) => ({ value, meaning })),
    },
    {
      kind: 'angle',
      name: 'contact',
      meaning: 'Angle between the lines and the edge they start from: the larger, the sharper the stars.',
      say: 'lines at … to the edges',
      default: 60,
      min: 10,
      max: 85,
    },
    {
      kind: 'angle',
      name: 'rhomb',
      meaning: 'Angle at the top of the rhombs, on a lattice of rhombs.',
      say: 'rhombs would be … at the top',
      default: 72,
      min: 20,
      max: 160,
    },
  ],
  edge: {
    default: 19.5,
    meaning: "Length of the tiling's edges (the longest, where they differ).",
    say: 'its edges … long',
  },
  choosing: '… chosen',
  kinds: CONTACT_KINDS,
  defaults: { strap: 4.2 },
  source(values) {
    const ground = GROUNDS.find((g) => g.value === values.tiling)!;
    return contactSource(ground.source(values), ground.contacts, num(values, 'contact'));
  },
});
