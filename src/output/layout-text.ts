import { type Layout, moved } from '../fit/layout.js';
import { bounds } from '../geometry/region.js';
import { cos, sin } from '../geometry/trig.js';
import { cutterRadius } from '../recipe/recipe.js';
import type { Files, Job } from './job.js';
import { layoutSheet } from './layout-drawing.js';

/** What reading a layout's files back measured; mm. */
export interface LayoutProofResult {
  readonly required: number;
  readonly reach: number;
  /** The reach by the proof's second route. */
  readonly field: number;
  readonly strays: number;
  readonly between: number;
  readonly edge: number;
  readonly joints: { readonly worst: number };
  readonly svgDxf: number;
  readonly holds: boolean;
}

export type LayoutProofs = { readonly [part in 'plug' | 'pocket']?: LayoutProofResult };

/** job.json's entry about the layouts; none when there are none. Places are from the board's lower left corner, mm. */
export function layoutEntry(job: Job, proofs: LayoutProofs): { layout?: object } {
  const parts = (['plug', 'pocket'] as const).filter((part) => job.layouts[part] !== null);
  if (parts.length === 0) return {};
  return { layout: Object.fromEntries(parts.map((p) => [p, entry(job.layouts[p]!, p, proofs[p])])) };
}

function entry(layout: Layout, part: 'plug' | 'pocket', proof: LayoutProofResult | undefined): object {
  const { board, spacing, used, offcut, laid } = layout;
  const turn = laid[0]!.turn;
  return {
    board: { length: board.length, width: board.width },
    spacing,
    turned: [turn.c, turn.s],
    used,
    offcut: offcut && { length: offcut.length, width: offcut.width },
    yield: layout.yield,
    laid: laid.map(({ item, box }) => ({
      [part === 'plug' ? 'part' : 'piece']: item.number,
      from: [box.minX + board.length / 2, box.minY + board.width / 2],
      to: [box.maxX + board.length / 2, box.maxY + board.width / 2],
    })),
    proof: proof && {
      required: proof.required,
      reach: proof.reach,
      strays: proof.strays,
      between: proof.between,
      edge: proof.edge,
      joints: { worst: proof.joints.worst },
      svgDxf: proof.svgDxf,
      holds: proof.holds,
      field: proof.field,
    },
  };
}

/** What a layout's proof is asked to hold it against. */
export function layoutAsked(job: Job, part: 'plug' | 'pocket') {
  const { recipe, layouts, outline, pair } = job;
  const layout = layouts[part]!;
  const { plugGrain, fieldGrain } = recipe.woods;
  const grain = part === 'pocket' ? fieldGrain : pair.mirrored ? Math.PI - plugGrain : plugGrain;
  // Of the two directions of the grain the one that the layout's turn brings to point along x.
  const { turn } = layout.laid[0]!;
  const way = turn.c * cos(grain) - turn.s * sin(grain) < 0 ? -1 : 1;
  const asked = {
    part,
    radius: cutterRadius(recipe.cutter),
    spacing: layout.spacing,
    board: { ...layout.board, border: layoutSheet(layout).border },
    grain: [way * cos(grain), way * sin(grain)] as const,
    laid: layout.laid.map((l) => l.item.index),
  };
  if (part === 'plug') return asked;
  const box = bounds(moved(outline.face.contours, turn, 0, 0));
  return { ...asked, face: [box.minX, box.minY, box.maxX, box.maxY] as const };
}

/** The files of a layout, and the drawing its parts come from, as they will be written. */
export function layoutFilesOf(files: Files, part: 'plug' | 'pocket') {
  const text = (name: string): string => {
    const content = files.get(name);
    if (typeof content !== 'string') throw new Error(`${name} was not drawn`);
    return content;
  };
  return { svg: text(`${part}-layout.svg`), dxf: text(`${part}-layout.dxf`), source: text(`${part}.svg`) };
}
