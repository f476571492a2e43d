import type { Edge } from '../geometry/edge.js';
import { anchor } from '../inspect/anchor.js';
import type { Finding } from '../inspect/finding.js';
import { type Ranked, ranked } from '../inspect/ranked.js';
import { type Badge, placed } from './badges.js';
import { decimal, escapeText } from './format.js';
import type { Job } from './job.js';
import { type Frame, frameOf, inFrame } from './ring.js';
import { pictureData } from './svg.js';

/** Room round the face, and the height of a line of the key, mm per mm of the picture's longer side. */
const RIM = 0.05;

/** Colours of severities; hatching tells them apart in black and white. */
const INK = { stop: '#8e1600', warn: '#c2410c', note: '#1d5fa8' } as const;

const WORD = { stop: 'stop', warn: 'take care', note: 'note' } as const;

/** What a finding's number in the picture stands for, in a line: "3 thin walls (take care)". */
export function keyText({ number, finding }: Ranked): string {
  return `${number}  ${finding.code.replace(/-/g, ' ')} (${WORD[finding.severity]})`;
}

/** The findings of a job that have a place, worst first, with their numbers among all of them. */
export function placedFindings(job: Job): Ranked[] {
  return ranked(job.findings).filter(({ finding }) => finding.where !== null || finding.zone !== undefined);
}

/**
 * The piece with its findings on it: hatched zones and numbered discs, the numbers being those of the list. With `key`,
 * what each number stands for is written below. SVG, unit mm; the words are set in `font`.
 */
export function findingPicture(job: Job, { key, font }: { key: boolean; font: string }): string {
  const { box, face } = job.outline;
  const [faceWidth, faceHeight] = [box.maxX - box.minX, box.maxY - box.minY];
  const size = Math.max(faceWidth, faceHeight);
  const rim = size * RIM;
  const frame = frameOf({ width: faceWidth + 2 * rim, height: faceHeight + 2 * rim }, 'mm');
  const shown = placedFindings(job);
  const line = size * 0.034;
  const [width, height] = [frame.width / 1e6, frame.height / 1e6];
  const all = height + (key ? line * (shown.length + 0.6) : 0);
  // On a long narrow piece marks as large as its length asks would hide the figure.
  const mark = Math.sqrt(faceWidth * faceHeight);
  const radius = mark * 0.019;
  const thin = decimal(size / 900, 3);
  const screen = ([x, y]: readonly [number, number]): [number, number] => {
    const [px, py] = inFrame(x, y, frame);
    return [px / 1e6, (frame.height - py) / 1e6];
  };
  const badges = placed(
    shown.flatMap(({ number, finding }) => {
      const at = anchor(finding);
      return at ? [{ number, at: screen(at) }] : [];
    }),
    { radius, width, height },
  );
  const ink = new Map(shown.map(({ number, finding }) => [number, INK[finding.severity]]));
  const words = `font-family="${escapeText(font)}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${decimal(width, 3)}mm" height="${decimal(all, 3)}mm" viewBox="0 0 ${decimal(width, 3)} ${decimal(all, 3)}">`,
    `<defs>${hatches(mark)}</defs>`,
    `<rect width="${decimal(width, 3)}" height="${decimal(all, 3)}" fill="#fff"/>`,
    `<path d="${pictureData(face.contours, frame)}" fill="#fbfaf7" stroke="#000" stroke-width="${thin}"/>`,
    ...job.inlays.map(
      ({ pair }) =>
        `<path d="${pictureData(pair.pocket.contours, frame)}" fill="#d9d4ca" fill-rule="evenodd" stroke="#777" stroke-width="${thin}"/>`,
    ),
    // The gravest lie on top.
    ...[...shown].reverse().flatMap(({ finding }) => zoneShapes(finding, frame, mark)),
    ...badges.map((b) => leader(b, radius, ink.get(b.number)!)),
    ...badges.map((b) => badge(b, radius, ink.get(b.number)!, words)),
    ...(key
      ? shown.map(
          (r, k) =>
            `<text x="${decimal(rim, 3)}" y="${decimal(height + line * (k + 0.7), 3)}" font-size="${decimal(line * 0.74, 3)}" ${words} fill="${INK[r.finding.severity]}">${escapeText(keyText(r))}</text>`,
        )
      : []),
    '</svg>',
    '',
  ].join('\n');
}

/** Slanting lines for what needs care, dots for what is good to know. */
function hatches(size: number): string {
  const step = decimal(size * 0.012, 3);
  const wide = decimal(size * 0.004, 3);
  const slant = (id: string, ink: string): string =>
    `<pattern id="find-${id}" width="${step}" height="${step}" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="${step}" height="${step}" fill="${ink}" fill-opacity=".22"/><rect width="${wide}" height="${step}" fill="${ink}"/></pattern>`;
  const dot = decimal(size * 0.0024, 3);
  const middle = decimal(size * 0.006, 3);
  return [
    slant('stop', INK.stop),
    slant('warn', INK.warn),
    `<pattern id="find-note" width="${step}" height="${step}" patternUnits="userSpaceOnUse"><rect width="${step}" height="${step}" fill="${INK.note}" fill-opacity=".15"/><circle cx="${middle}" cy="${middle}" r="${dot}" fill="${INK.note}"/></pattern>`,
  ].join('');
}

function zoneShapes({ zone, severity }: Finding, frame: Frame, size: number): string[] {
  if (!zone) return [];
  const ink = INK[severity];
  const { areas, lines } = zone;
  return [
    ...(areas && areas.contours.length > 0
      ? [
          `<path d="${pictureData(areas.contours, frame)}" fill="url(#find-${severity})" fill-rule="evenodd" stroke="${ink}" stroke-width="${decimal(size / 600, 3)}"/>`,
        ]
      : []),
    ...(lines && lines.length > 0
      ? [
          `<path d="${lines.map((l) => openPath(l, frame)).join(' ')}" fill="none" stroke="${ink}" stroke-width="${decimal(size / 150, 3)}" stroke-linecap="round"/>`,
        ]
      : []),
  ];
}

/** Path data of an open chain of edges. */
function openPath(edges: readonly Edge[], frame: Frame): string {
  const [first] = edges;
  if (!first) return '';
  const at = (x: number, y: number): string => {
    const [px, py] = inFrame(x, y, frame);
    return `${decimal(px / 1e6, 3)} ${decimal((frame.height - py) / 1e6, 3)}`;
  };
  const steps = edges.map((e) => {
    if (e.r === 0) return `L ${at(e.x1, e.y1)}`;
    const r = decimal(Math.abs(e.r), 4);
    return `A ${r} ${r} 0 0 ${e.r > 0 ? 0 : 1} ${at(e.x1, e.y1)}`;
  });
  return `M ${at(first.x0, first.y0)} ${steps.join(' ')}`;
}

/** A line from a disc to what it points at, where it had to stand aside. */
function leader({ at: [x, y], disc: [u, v] }: Badge, radius: number, ink: string): string {
  if ((x - u) * (x - u) + (y - v) * (y - v) < 1e-9) return '';
  const to = (n: number): string => decimal(n, 3);
  return `<path d="M ${to(u)} ${to(v)} L ${to(x)} ${to(y)}" stroke="${ink}" stroke-width="${to(radius * 0.14)}"/><circle cx="${to(x)}" cy="${to(y)}" r="${to(radius * 0.25)}" fill="${ink}"/>`;
}

/** A numbered disc. */
function badge({ number, disc: [u, v] }: Badge, radius: number, ink: string, words: string): string {
  const to = (n: number): string => decimal(n, 3);
  return [
    `<circle cx="${to(u)}" cy="${to(v)}" r="${to(radius)}" fill="#fff" stroke="${ink}" stroke-width="${to(radius * 0.14)}"/>`,
    `<text x="${to(u)}" y="${to(v + radius * 0.44)}" font-size="${to(radius * 1.25)}" text-anchor="middle" font-weight="bold" ${words} fill="#000">${number}</text>`,
  ].join('');
}
