import { centred, type Operation, operations } from './positions.js';

/** The kind of cell: which of its sides and angle the group leaves free. */
export type Cell = 'oblique' | 'rectangular' | 'square' | 'hexagonal';

export interface WallpaperGroup {
  /** Short name of the International Tables. */
  readonly name: string;
  /** What it holds, for the list. */
  readonly meaning: string;
  readonly cell: Cell;
  /** Second side of the cell over the first where the group leaves it free and the user does not say. */
  readonly proportion: number;
  /** Every operation that is not a step of the cell away from another. */
  readonly operations: readonly Operation[];
  /** A place in the middle of a fundamental domain, in cell coordinates, where copies lie well apart. */
  readonly home: readonly [number, number];
  /** Turn of the motif there, degrees counter-clockwise from upright. */
  readonly lean: number;
}

interface Row extends Omit<WallpaperGroup, 'operations' | 'proportion'> {
  readonly positions: string;
  readonly centred?: boolean;
  readonly proportion?: number;
}

const P6 = 'x,y; -y,x-y; -x+y,-x; -x,-y; y,-x+y; x-y,x';

/**
 * General positions with the cell's origin of International Tables for Crystallography, volume A (from memory): a
 * point of highest symmetry. Hexagonal cells have sides at 120 degrees; cm and cmm are given in the centred
 * rectangular cell.
 */
const rows: readonly Row[] = [
  {
    name: 'p1',
    meaning: 'steps only',
    cell: 'oblique',
    positions: 'x,y',
    home: [1 / 2, 1 / 2],
    lean: 0,
  },
  {
    name: 'p2',
    meaning: 'half turns',
    cell: 'oblique',
    positions: 'x,y; -x,-y',
    home: [1 / 4, 1 / 2],
    lean: 0,
  },
  {
    name: 'pm',
    meaning: 'mirrors in one direction',
    cell: 'rectangular',
    proportion: 0.75,
    positions: 'x,y; -x,y',
    home: [1 / 4, 1 / 2],
    lean: 0,
  },
  {
    name: 'pg',
    meaning: 'glides in one direction',
    cell: 'rectangular',
    proportion: 1.1,
    positions: 'x,y; -x,y+1/2',
    home: [1 / 4, 1 / 4],
    lean: 0,
  },
  {
    name: 'cm',
    meaning: 'mirrors in one direction with glides between them',
    cell: 'rectangular',
    positions: 'x,y; -x,y',
    centred: true,
    home: [1 / 4, 1 / 2],
    lean: 0,
  },
  {
    name: 'pmm',
    meaning: 'mirrors in two directions',
    cell: 'rectangular',
    positions: 'x,y; -x,-y; -x,y; x,-y',
    home: [1 / 4, 1 / 4],
    lean: -45,
  },
  {
    name: 'pmg',
    meaning: 'mirrors in one direction, glides across them, half turns between them',
    cell: 'rectangular',
    positions: 'x,y; -x,-y; -x+1/2,y; x+1/2,-y',
    home: [0, 1 / 4],
    lean: 0,
  },
  {
    name: 'pgg',
    meaning: 'glides in two directions, and half turns',
    cell: 'rectangular',
    positions: 'x,y; -x,-y; -x+1/2,y+1/2; x+1/2,-y+1/2',
    home: [1 / 4, 1 / 4],
    lean: -45,
  },
  {
    name: 'cmm',
    meaning: 'mirrors in two directions, and half turns off them',
    cell: 'rectangular',
    proportion: 0.75,
    positions: 'x,y; -x,-y; -x,y; x,-y',
    centred: true,
    home: [1 / 4, 1 / 8],
    lean: -90,
  },
  {
    name: 'p4',
    meaning: 'quarter turns',
    cell: 'square',
    positions: 'x,y; -x,-y; -y,x; y,-x',
    home: [1 / 4, 1 / 4],
    lean: -45,
  },
  {
    name: 'p4m',
    meaning: 'quarter turns, all on mirrors',
    cell: 'square',
    positions: 'x,y; -x,-y; -y,x; y,-x; -x,y; x,-y; y,x; -y,-x',
    home: [0.354, 0.146],
    lean: -67.5,
  },
  {
    name: 'p4g',
    meaning: 'quarter turns off the mirrors',
    cell: 'square',
    positions: 'x,y; -x,-y; -y,x; y,-x; -x+1/2,y+1/2; x+1/2,-y+1/2; y+1/2,x+1/2; -y+1/2,-x+1/2',
    home: [0.2, 0.1],
    lean: -70,
  },
  {
    name: 'p3',
    meaning: 'third turns',
    cell: 'hexagonal',
    positions: 'x,y; -y,x-y; -x+y,-x',
    home: [1 / 3, 0],
    lean: -90,
  },
  {
    name: 'p3m1',
    meaning: 'third turns, all on mirrors',
    cell: 'hexagonal',
    positions: 'x,y; -y,x-y; -x+y,-x; -y,-x; -x+y,y; x,x-y',
    home: [1 / 3, 1 / 3],
    lean: -30,
  },
  {
    name: 'p31m',
    meaning: 'third turns on mirrors and off them',
    cell: 'hexagonal',
    positions: 'x,y; -y,x-y; -x+y,-x; y,x; x-y,-y; -x,-x+y',
    home: [0.577, 0.155],
    lean: -90,
  },
  {
    name: 'p6',
    meaning: 'sixth turns',
    cell: 'hexagonal',
    positions: P6,
    home: [0.36, 0.1],
    lean: -80,
  },
  {
    name: 'p6m',
    meaning: 'sixth turns, all on mirrors',
    cell: 'hexagonal',
    positions: `${P6}; -y,-x; -x+y,y; x,x-y; y,x; x-y,-y; -x,-x+y`,
    home: [0.455, 0.122],
    lean: -75,
  },
];

export const wallpaperGroups: readonly WallpaperGroup[] = rows.map(
  ({ positions, centred: isCentred, proportion = 1, ...rest }) => {
    const all = operations(positions);
    return { ...rest, proportion, operations: isCentred ? centred(all) : all };
  },
);
