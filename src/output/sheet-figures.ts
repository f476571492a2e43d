import { decimal, escapeText, millionths } from './format.js';
import type { Job } from './job.js';
import { marksOf } from './marks.js';
import { frameOf, inFrame } from './ring.js';
import { pathData } from './svg.js';

/** Widest and tallest a small drawing may be on paper, mm. */
const ROOM = 62;

/** A place to point at on the pocket's small drawing. */
export interface Place {
  readonly label: string;
  readonly at: readonly [number, number];
}

/** A small drawing of one part with its outline and datum, places numbered, and how much it was reduced. */
export function smallDrawing(job: Job, part: 'pocket' | 'plug', places: readonly Place[]): string {
  const frame = frameOf(job.sheet, job.recipe.units);
  const mirrored = part === 'plug' && job.pair.mirrored;
  const marks = marksOf(job, mirrored);
  const w = millionths(frame.width);
  const h = millionths(frame.height);
  const ratio = Math.max(job.sheet.width, job.sheet.height) / ROOM;
  const paper = (mm: number): string => decimal(mm / ratio, 2);
  // Lines and letters keep their size on paper whatever the drawing's own scale.
  const unit = frame.width / 1e6 / (job.sheet.width / ratio);
  const thin = decimal(0.2 * unit, 4);
  const numbered = places.map(({ label, at }) => {
    const [px, py] = inFrame(mirrored ? -at[0] : at[0], at[1], frame);
    const x = decimal(px / 1e6, 4);
    const y = decimal((frame.height - py) / 1e6, 4);
    const r = decimal(1.9 * unit, 4);
    return (
      `<circle cx="${x}" cy="${y}" r="${r}" fill="#fff" stroke="#000" stroke-width="${thin}"/>` +
      `<text x="${x}" y="${decimal((frame.height - py) / 1e6 + 0.85 * unit, 4)}" font-size="${decimal(2.4 * unit, 4)}" text-anchor="middle">${escapeText(label)}</text>`
    );
  });
  const how = mirrored ? 'Plug, mirrored: cut it as drawn here' : part === 'plug' ? 'Plug' : 'Pocket';
  const size = ratio > 1 ? `about 1 : ${decimal(ratio, 1)}` : `about ${decimal(1 / ratio, 1)} : 1`;
  return [
    `<figure><svg viewBox="0 0 ${w} ${h}" style="width:${paper(job.sheet.width)}mm;height:${paper(job.sheet.height)}mm" role="img" aria-label="${how}">`,
    `<path d="${pathData(marks.outline, frame)}" fill="none" stroke="#000" stroke-width="${thin}"/>`,
    `<path d="${pathData([marks.datum.circle], frame)}" fill="#000"/>`,
    `<path d="${pathData(job.pair[part].contours, frame)}" fill-rule="evenodd" fill="${part === 'pocket' ? '#bbb' : '#555'}" stroke="#000" stroke-width="${thin}"/>`,
    ...numbered,
    `</svg><figcaption>${how} (${size}; the dot is the datum)</figcaption></figure>`,
  ].join('\n');
}
