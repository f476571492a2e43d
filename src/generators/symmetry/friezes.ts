import { type Operation, operations } from './positions.js';

export interface FriezeGroup {
  /** Short name of the International Tables. */
  readonly name: string;
  readonly meaning: string;
  /** Every operation that is not a whole number of repeats away from another; x in repeats, y from the middle line. */
  readonly operations: readonly Operation[];
  /** A place in the middle of a fundamental domain: in repeats along the band and in heights above its middle. */
  readonly home: readonly [number, number];
  /** Turn of the motif there, degrees counter-clockwise from upright. */
  readonly lean: number;
  /** Length of a repeat that suits the group, in heights of the band. */
  readonly repeat: number;
}

interface Row extends Omit<FriezeGroup, 'operations'> {
  readonly positions: string;
}

/**
 * General positions of the frieze groups as in the International Tables for Crystallography, volume E (from memory).
 * Letters whose rows show the same symmetry, and orbifolds after Conway, Burgiel and Goodman-Strauss, The Symmetries
 * of Things, 2008 (from memory).
 */
const rows: readonly Row[] = [
  {
    name: 'p1',
    meaning: 'steps only, as in a row of F (orbifold ∞∞)',
    positions: 'x,y',
    home: [1 / 2, 0],
    lean: 0,
    repeat: 0.75,
  },
  {
    name: 'p11g',
    meaning: 'glides, as in footprints or b p b p (orbifold ∞×)',
    positions: 'x,y; x+1/2,-y',
    home: [1 / 4, 0.1],
    lean: 0,
    repeat: 1.3,
  },
  {
    name: 'p1m1',
    meaning: 'upright mirrors, as in a row of A (orbifold *∞∞)',
    positions: 'x,y; -x,y',
    home: [1 / 4, 0],
    lean: 0,
    repeat: 1.4,
  },
  {
    name: 'p2',
    meaning: 'half turns, as in a row of N (orbifold 22∞)',
    positions: 'x,y; -x,-y',
    home: [1 / 4, 0],
    lean: 0,
    repeat: 1.4,
  },
  {
    name: 'p2mg',
    meaning: 'upright mirrors and half turns between them, as in V Λ V Λ (orbifold 2*∞)',
    positions: 'x,y; -x,-y; -x+1/2,y; x+1/2,-y',
    home: [1 / 8, 0],
    lean: 0,
    repeat: 3,
  },
  {
    name: 'p11m',
    meaning: 'a mirror along the band, as in a row of D (orbifold ∞*)',
    positions: 'x,y; x,-y',
    home: [1 / 2, 1 / 4],
    lean: -60,
    repeat: 0.8,
  },
  {
    name: 'p2mm',
    meaning: 'mirrors both ways, as in a row of H (orbifold *22∞)',
    positions: 'x,y; -x,-y; -x,y; x,-y',
    home: [1 / 4, 1 / 4],
    lean: -60,
    repeat: 1.6,
  },
];

export const friezeGroups: readonly FriezeGroup[] = rows.map(({ positions, ...rest }) => ({
  ...rest,
  operations: operations(positions),
}));
