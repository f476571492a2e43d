import { decimal, escapeText, MM_PER, millionths } from './format.js';
import type { Job } from './job.js';
import { marksOf } from './marks.js';
import { frameOf, inFrame, inGrid } from './ring.js';
import { partNumbers } from './sheet-parts.js';
import { pictureData } from './svg.js';

/** Room shown round the face, mm: enough for the datum. */
const RIM = 4;
/** Radius of a numbered disc, and of one with its line, mm of paper. */
const DISC = 1.9;
const DISC_ROOM = 2.1;

/** A place to point at on the pocket's small drawing. */
export interface Place {
  readonly label: string;
  readonly at: readonly [number, number];
}

/**
 * A small drawing of one part with its outline and datum, places numbered, and how much it was reduced. `room` is the
 * widest and tallest it may be on paper, mm.
 */
export function smallDrawing(
  job: Job,
  part: 'pocket' | 'plug',
  places: readonly Place[],
  room: number,
): string {
  const frame = frameOf(job.sheet, job.recipe.units);
  const mirrored = part === 'plug' && job.pair.mirrored;
  const marks = marksOf(job, mirrored);
  const { minX, minY, maxX, maxY } = job.outline.box;
  // Discs keep their size on paper: what one at the edge takes depends on how much the drawing is reduced.
  const disc = (Math.max(maxX - minX, maxY - minY) * DISC_ROOM) / (room - 2 * DISC_ROOM);
  const rim = Math.max(
    RIM,
    ...places.map(({ at: [x, y] }) => disc - Math.min(x - minX, maxX - x, y - minY, maxY - y)),
  );
  const wide = maxX - minX + 2 * rim;
  const tall = maxY - minY + 2 * rim;
  const [left, top] = inFrame(-wide / 2, tall / 2, frame);
  const view = [left, frame.height - top, inGrid(wide, frame.units), inGrid(tall, frame.units)];
  const ratio = Math.max(wide, tall) / room;
  const paper = (mm: number): string => decimal(mm / ratio, 2);
  // Lines and letters keep their size on paper whatever the drawing's own scale.
  const unit = ratio / MM_PER[frame.units];
  const thin = decimal(0.2 * unit, 4);
  const numbered = places.map(({ label, at }) => {
    const [px, py] = inFrame(mirrored ? -at[0] : at[0], at[1], frame);
    const x = decimal(px / 1e6, 4);
    const y = decimal((frame.height - py) / 1e6, 4);
    const r = decimal(DISC * unit, 4);
    return (
      `<circle cx="${x}" cy="${y}" r="${r}" fill="#fff" stroke="#000" stroke-width="${thin}"/>` +
      `<text x="${x}" y="${decimal((frame.height - py) / 1e6 + 0.85 * unit, 4)}" font-size="${decimal(2.4 * unit, 4)}" text-anchor="middle">${escapeText(label)}</text>`
    );
  });
  const inParts = partNumbers(job, part, frame, ratio);
  const small = inParts.all ? '' : '; numbers of small parts: in the drawing';
  const dot = inFrame(mirrored ? -minX : minX, minY, frame);
  const how = mirrored ? 'Plug, mirrored: cut as drawn' : part === 'plug' ? 'Plug' : 'Pocket';
  const size = ratio > 1 ? `about 1 : ${decimal(ratio, 1)}` : `about ${decimal(1 / ratio, 1)} : 1`;
  return [
    `<figure><svg viewBox="${view.map(millionths).join(' ')}" style="width:${paper(wide)}mm;height:${paper(tall)}mm" role="img" aria-label="${how}">`,
    `<path d="${pictureData(marks.outline, frame)}" fill="none" stroke="#000" stroke-width="${thin}"/>`,
    `<circle cx="${decimal(dot[0] / 1e6, 4)}" cy="${decimal((frame.height - dot[1]) / 1e6, 4)}" r="${decimal(unit, 4)}"/>`,
    `<path d="${pictureData(job.pair[part].contours, frame)}" fill-rule="evenodd" fill="${part === 'pocket' ? '#bbb' : '#555'}" stroke="#000" stroke-width="${thin}"/>`,
    ...inParts.text,
    ...numbered,
    `</svg><figcaption>${how} (${size}; dot: datum${small})</figcaption></figure>`,
  ].join('\n');
}
