import type { Drawing } from '../proof/index.js';
import { decimal } from './format.js';

/** A point of a drawing, mm y up, to a point of the picture. */
export type ToPicture = (at: readonly [number, number]) => [number, number];

/** Path data of a drawing that was read; `scale` is picture units a mm. */
export function drawnPath({ edges: e, starts }: Drawing, to: ToPicture, scale: number): string {
  const out: string[] = [];
  const point = (x: number, y: number): string =>
    to([x, y])
      .map((v) => decimal(v, 3))
      .join(' ');
  for (let k = 0; k + 1 < starts.length; k++) {
    out.push(`M ${point(e.x0[starts[k]!]!, e.y0[starts[k]!]!)}`);
    for (let i = starts[k]!; i < starts[k + 1]!; i++) {
      const r = decimal(Math.abs(e.r[i]!) * scale, 4);
      const end = point(e.x1[i]!, e.y1[i]!);
      out.push(
        e.r[i] === 0 || r === '0' ? `L ${end}` : `A ${r} ${r} 0 ${e.wide[i]} ${e.r[i]! > 0 ? 0 : 1} ${end}`,
      );
    }
    out.push('Z');
  }
  return out.join(' ');
}

/** minX, minY, maxX, maxY of the drawings' boundaries, mm. */
export function boxOfDrawings(drawings: readonly Drawing[]): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const d of drawings) {
    const t = d.index.tree;
    if (t === null) continue;
    box[0] = Math.min(box[0], t.minX);
    box[1] = Math.min(box[1], t.minY);
    box[2] = Math.max(box[2], t.maxX);
    box[3] = Math.max(box[3], t.maxY);
  }
  return box;
}
