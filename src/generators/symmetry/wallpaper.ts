import { radians } from '../../geometry/trig.js';
import { Refusal } from '../../schema/fault.js';
import type { Values } from '../../schema/parameter.js';
import { bandParameter, drawFilled, fieldOf, fillParameter } from '../field.js';
import type { Assets, Generator } from '../generator.js';
import { length, mm, num, seed, turn } from '../values.js';
import { type Arrangement, keepsGap } from './arrangement.js';
import { type WallpaperGroup, wallpaperGroups } from './groups.js';
import { after, turned } from './isometry.js';
import { atCell, cellArea, type Lattice, latticeOf, motion, sides } from './lattice.js';
import { chosenMotif, drawingParameter, motifParameter } from './motifs.js';
import { placeParameter, shiftParameters, standFor } from './place.js';
import { repeated } from './repeated.js';
import { checkDisc, checkedSize } from './sizes.js';
import { moved, snug } from './snug.js';

export const wallpaper: Generator = {
  name: 'wallpaper',
  title: 'Wallpaper pattern',
  family: 'symmetry',
  summary: 'A motif repeated over the plane by any of the 17 wallpaper groups.',
  parameters: [
    {
      kind: 'choice',
      name: 'group',
      meaning:
        'The symmetry group, by its short name in the International Tables; a motif with a symmetry of its own may add to it.',
      say: 'group …',
      default: 'p4g',
      options: wallpaperGroups.map(({ name, meaning }) => ({ value: name, meaning })),
    },
    motifParameter,
    drawingParameter,
    length(
      'cell',
      'First side of the cell, the distance after which the pattern repeats; 0 for one that suits the group.',
      { say: 'repeating after …', zero: 'a fitting length' },
      0,
      0,
    ),
    {
      kind: 'number',
      name: 'proportion',
      meaning:
        'Second side of the cell over the first, 0 for one that suits the group; counts only for p1, p2, pm, pg, cm, pmm, pmg, pgg and cmm.',
      say: 'cell sides in the ratio …',
      zero: 'that suits',
      default: 0,
      min: 0,
      max: 5,
    },
    {
      kind: 'angle',
      name: 'angle',
      meaning: 'Angle between the sides of the cell; counts only for p1 and p2.',
      say: 'cell sides … apart',
      default: 60,
      min: 30,
      max: 150,
    },
    placeParameter,
    length(
      'size',
      'Longer side of the motif; 0 for the largest that keeps the gap.',
      { say: 'motif of … size', zero: 'the largest' },
      0,
      0,
    ),
    length('gap', 'Width of the walls between figures when the size is 0.', 'walls … wide', 4.4, 0),
    ...shiftParameters,
    length(
      'disc',
      'Diameter of discs on the centres of highest rotation; 0 for none.',
      { say: '… discs on the centres', zero: 'no' },
      7,
      0,
    ),
    { ...fillParameter, default: 'whole' },
    bandParameter,
    {
      kind: 'choice',
      name: 'centre',
      meaning: 'What lies on the middle of the outline.',
      say: 'a … on the middle',
      default: 'centre',
      options: [
        { value: 'centre', meaning: 'a corner of the cell: a centre of highest rotation, if there are any' },
        { value: 'cell', meaning: 'the middle of a cell' },
      ],
    },
    turn,
    seed,
  ],
  draw(values, outline, pen, assets) {
    const field = fieldOf(outline, num(values, 'band'));
    const group = wallpaperGroups.find((g) => g.name === values.group)!;
    const w = arranged(values, group, assets);
    const size = checkedSize(w, num(values, 'size'), num(values, 'gap'));
    const middle = values.centre === 'cell' ? atCell(w.lattice, [1 / 2, 1 / 2]) : ([0, 0] as const);
    const frame = after(turned(num(values, 'turn')), turned(0, -middle[0], -middle[1]));
    const { motifs, discs } = repeated(w, size, frame, field, String(values.motif));
    const fill = values.fill as 'clip' | 'whole';
    if (drawFilled(pen, motifs, field, fill) === 0)
      throw new Refusal(
        'nothing-fits',
        `pattern.cell: no ${fill === 'whole' ? 'whole figure' : 'figure'} of a cell of ${mm(w.lattice.a[0])} lies within the outline; make it smaller`,
      );
    drawFilled(pen, discs, field, fill);
  },
};

/** Room for one copy where the user leaves the cell to the group, mm: that many square for each. */
const ROOM: Readonly<Record<string, number>> = { snug: 18, apart: 18, mirror: 16, centre: 13 };

function latticeFor(values: Values, group: WallpaperGroup): Lattice {
  const shape = (side: number): Lattice =>
    latticeOf(group.cell, side, num(values, 'proportion') || group.proportion, num(values, 'angle'));
  const natural = ROOM[String(values.place)]! * Math.sqrt(group.operations.length / cellArea(shape(1)));
  return shape(num(values, 'cell') || natural);
}

function arranged(values: Values, group: WallpaperGroup, assets: Assets): Arrangement {
  const lattice = latticeFor(values, group);
  const motions = group.operations.map((o) => motion(lattice, o));
  const motif = chosenMotif(values, assets);
  const home = atCell(lattice, group.home);
  const layout = { name: group.name, lattice, motions, home, lean: radians(group.lean) };
  const stand = standFor(String(values.place), layout, motif.seam);
  const first: Arrangement = {
    lattice,
    motions,
    motif: motif.region,
    hinge: stand.hinge,
    place: stand.place,
    lean: stand.lean,
    disc: num(values, 'disc'),
  };
  const gap = num(values, 'gap');
  checkDisc(first, gap);
  const { shorter, longer } = sides(lattice);
  const search = { stand, fits: (w: Arrangement, size: number) => keepsGap(w, size, gap), most: longer };
  const w = values.place !== 'apart' && gap < shorter ? snug(first, search) : first;
  return moved(w, num(values, 'lean'), [num(values, 'x'), num(values, 'y')]);
}
