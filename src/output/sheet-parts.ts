import { isNumbered } from '../fit/islands.js';
import type { Layout } from '../fit/layout.js';
import { decimal, escapeText, lengthText, MM_PER } from './format.js';
import type { Job } from './job.js';
import { layoutDrawing } from './layout-drawing.js';
import { numberHeight } from './numbers.js';
import { type Frame, inFrame, inGrid } from './ring.js';
import { pictureData } from './svg.js';

/** Heights of a part's number on paper, mm: the usual one, and the least that is read without a glass. */
const USUAL = 2.6;
const LEAST = 1;

/** The numbers of the parts for a small drawing reduced by `ratio`, and whether some were too small to print. SVG text. */
export function partNumbers(
  job: Job,
  part: 'pocket' | 'plug',
  frame: Frame,
  ratio: number,
): { text: string[]; all: boolean } {
  if (!isNumbered(job.islands.length)) return { text: [], all: true };
  const mirrored = part === 'plug' && job.pair.mirrored;
  let all = true;
  const text = job.islands.flatMap(({ number, at: [x, y], room }) => {
    const height = numberHeight(String(number), room / ratio, USUAL);
    if (height < LEAST) {
      all = false;
      return [];
    }
    return [numberText(String(number), mirrored ? -x : x, y, height * ratio, part === 'plug', frame)];
  });
  return { text, all };
}

function numberText(
  text: string,
  x: number,
  y: number,
  height: number,
  light: boolean,
  frame: Frame,
): string {
  const [px, py] = inFrame(x, y - height / 2, frame);
  const size = height / 0.7 / MM_PER[frame.units];
  return (
    `<text x="${decimal(px / 1e6, 4)}" y="${decimal((frame.height - py) / 1e6, 4)}" font-size="${decimal(size, 4)}" ` +
    `text-anchor="middle" fill="${light ? '#fff' : '#000'}">${escapeText(text)}</text>`
  );
}

/** The boards with what is laid out on them, small, and the figures. HTML text; empty when nothing is laid out. */
export function layoutBlock(job: Job): string {
  const figures = (['plug', 'pocket'] as const).flatMap((part) => {
    const layout = job.layouts[part];
    return layout ? [boardFigure(job, layout, part)] : [];
  });
  return figures.join('\n');
}

/** Widest and tallest a board may be on paper, mm. */
const ROOM = { wide: 180, tall: 70 } as const;

function boardFigure(job: Job, layout: Layout, part: 'plug' | 'pocket'): string {
  const { units } = job.recipe;
  const { board, offcut, laid, spacing } = layout;
  const { region, marks, frame } = layoutDrawing(layout, part, job.islands, job.pair.mirrored, units);
  const ratio = Math.max(board.length / ROOM.wide, board.width / ROOM.tall);
  const unit = ratio / MM_PER[units];
  const [left, top] = inFrame(-board.length / 2, board.width / 2, frame);
  const pad = 0.3 * unit;
  const view = [
    left / 1e6 - pad,
    (frame.height - top) / 1e6 - pad,
    inGrid(board.length, units) / 1e6 + 2 * pad,
    inGrid(board.width, units) / 1e6 + 2 * pad,
  ];
  const len = (mm: number): string => lengthText(mm, units);
  const numbers = (marks.numbers ?? []).flatMap((n) => {
    const height = Math.min(n.height / ratio, USUAL);
    return height < LEAST ? [] : [numberText(n.text, n.x, n.y, height * ratio, part === 'plug', frame)];
  });
  const what =
    part === 'plug'
      ? `${laid.length} plug part${laid.length === 1 ? '' : 's'}`
      : `${laid.length} piece${laid.length === 1 ? '' : 's'}`;
  const rest = offcut ? `a clean rest of ${len(offcut.length)} by ${len(offcut.width)}` : 'no clean rest';
  const caption =
    `${part}-layout: ${what} on ${len(board.length)} by ${len(board.width)}, grain along its length, ${len(spacing)} apart and from the edges; ` +
    `yield ${decimal(layout.yield, 1)} %, ${rest}.${part === 'plug' ? ' Boxes are packed, not shapes: parts may nest closer by hand.' : ''}`;
  return [
    `<figure><svg viewBox="${view.map((v) => decimal(v, 4)).join(' ')}" style="width:${decimal(board.length / ratio, 2)}mm;height:${decimal(board.width / ratio, 2)}mm" role="img" aria-label="${escapeText(what)} on a board">`,
    `<path d="${pictureData(marks.outline, frame)}" fill="none" stroke="#000" stroke-width="${decimal(0.2 * unit, 4)}"/>`,
    `<path d="${pictureData(region.contours, frame)}" fill-rule="evenodd" fill="${part === 'pocket' ? '#bbb' : '#555'}" stroke="#000" stroke-width="${decimal(0.15 * unit, 4)}"/>`,
    ...numbers,
    `</svg><figcaption>${escapeText(caption)}</figcaption></figure>`,
  ].join('\n');
}
