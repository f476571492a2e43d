import { union } from '../../geometry/boolean.js';
import type { Pen } from '../../geometry/pen.js';
import { contains, flatten, type Region } from '../../geometry/region.js';
import { mirrorX, placedRegion } from '../../geometry/transform.js';
import { cos, sin } from '../../geometry/trig.js';
import { mm } from '../values.js';
import { movedBox } from './gap.js';
import type { Layout, Placed, Setting } from './layout.js';
import { pieceName } from './piece-names.js';

/** Do all letters lie in the field, and no narrow opening of the field inside a letter? */
export function fitsIn({ letters }: Layout, field: Region): boolean {
  const edge = field.contours.flatMap((c) => flatten(c, 0.02));
  return letters.every(({ shape, pose }) => {
    const [c, s] = [cos(pose.turn), sin(pose.turn)];
    if (!shape.points.every(([x, y]) => contains(field, x * c - y * s + pose.x, x * s + y * c + pose.y)))
      return false;
    const box = movedBox(shape.box, pose);
    return edge.every(([x, y]) => {
      if (x < box.minX || x > box.maxX || y < box.minY || y > box.maxY) return true;
      const [dx, dy] = [x - pose.x, y - pose.y];
      return !contains(shape.kept, dx * c + dy * s, dy * c - dx * s);
    });
  });
}

/** Draws the letters, a piece for each group, and says what was opened. */
export function drawLayout(pen: Pen, layout: Layout, setting: Setting, mirrored: boolean): void {
  for (const letters of pieces(layout)) {
    const { set } = letters[0]!.line;
    const copy = layout.letters.some((l) => l.copy > 0) ? ` (text ${letters[0]!.copy + 1})` : '';
    pen.piece(pieceName(set, letters) + copy);
    const regions = letters.map((l) => placedRegion(l.shape.region, l.pose.x, l.pose.y, l.pose.turn));
    const region = regions.length === 1 ? regions[0]! : union(regions);
    pen.region(mirrored ? mirrorX(region) : region);
  }
  remarks(pen, layout, setting, mirrored);
}

function pieces({ letters }: Layout): Placed[][] {
  const groups = new Map<string, Placed[]>();
  const lines = new Map(letters.map((l, i) => [l.line, i]));
  for (const l of letters) {
    const key = `${l.copy} ${lines.get(l.line)} ${l.group}`;
    const group = groups.get(key);
    if (group) group.push(l);
    else groups.set(key, [l]);
  }
  return [...groups.values()];
}

function remarks(pen: Pen, layout: Layout, setting: Setting, mirrored: boolean): void {
  const { opened, leading, letters } = layout;
  const width = mm(setting.gap);
  const first = opened[0];
  if (first) {
    const most = Math.max(...opened.map((o) => o.by));
    const line = letters.find((l) => l.cluster === first.right.cluster)!;
    const name = (l: Placed['cluster']): string => pieceName(line.line.set, [{ cluster: l }]);
    const places = opened.length === 1 ? 'at 1 place' : `at ${opened.length} places`;
    pen.remark({
      code: 'tracking-opened',
      at: [mirrored ? -line.pose.x : line.pose.x, line.pose.y],
      numbers: { places: opened.length, most, width: setting.gap },
      text: `letters were moved apart ${places}, by up to ${mm(most)}, to leave ${width} of wood for the cutter; first ${name(first.left.cluster)} and ${name(first.right.cluster)}. A smaller cutter or larger letters need less, tracking of ${mm(Math.ceil((setting.tracking + most) * 10) / 10)} spaces all alike`,
    });
  }
  if (leading > setting.leading + 1e-6)
    pen.remark({
      code: 'leading-opened',
      at: null,
      numbers: { asked: setting.leading, leading, width: setting.gap },
      text: `lines were moved apart from ${setting.leading} to ${Math.ceil(leading * 100) / 100} cap heights, to leave ${width} of wood between them for the cutter; a leading of that much, a smaller cutter or larger letters avoid it`,
    });
}
