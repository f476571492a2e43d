import { resolve, union } from '../../../geometry/boolean.js';
import { offset } from '../../../geometry/offset.js';
import type { Region } from '../../../geometry/region.js';
import { stroke } from '../../../geometry/stroke.js';
import type { Values } from '../../../schema/parameter.js';
import { bad, floor, mm, num } from '../../values.js';
import { joinCurves } from './curves.js';
import { type Cell, diagonal, evenArea, type Grid, halfTile, quarterArcs } from './grid.js';

export type Style = 'arcs' | 'areas' | 'diagonals' | 'halves';

/** The figure of the tiles, not yet cut off at the edge of the ground. */
export function figureOf(style: Style, values: Values, grid: Grid, cells: readonly Cell[]): Region[] {
  const strap = num(values, 'strap');
  const { edge } = grid;
  switch (style) {
    case 'arcs': {
      const most = edge * (Math.SQRT2 - 1);
      if (strap >= most)
        throw bad('strap', `${mm(strap)} fills the tiles; make it less than ${mm(floor(most))}`);
      const arcs = cells.flatMap((c) => quarterArcs(grid, c));
      return joinCurves(arcs, edge / 1000).map((c) => stroke(c.edges, strap, { closed: c.closed }));
    }
    case 'areas':
      return [
        resolve(
          cells.flatMap((c) => evenArea(grid, c).contours),
          'nonzero',
        ),
      ];
    case 'diagonals': {
      const most = edge * Math.SQRT1_2;
      if (strap >= most)
        throw bad('strap', `${mm(strap)} fills the tiles; make it less than ${mm(floor(most))}`);
      return [union(cells.map((c) => stroke([diagonal(grid, c)], strap, { closed: false, cap: 'round' })))];
    }
    case 'halves': {
      const wall = num(values, 'wall');
      // Diameter of the circle in a right triangle of sides 1, 1, sqrt 2.
      const most = edge * (2 - Math.SQRT2);
      if (wall >= most) throw bad('wall', `${mm(wall)} leaves nothing; make it less than ${mm(floor(most))}`);
      return [
        offset(
          resolve(
            cells.map((c) => halfTile(grid, c)),
            'nonzero',
          ),
          -wall / 2,
        ),
      ];
    }
  }
}
