/** A child that reads each drawing it is sent, draws it 138 mm across, and says how that ended. */
const library = process.argv[2];
const { openDrawing } = await import(`${library}generators/drawing/open.js`);
const { BadInput, Refusal } = await import(`${library}schema/fault.js`);
const { Undecided } = await import(`${library}geometry/fault.js`);

/** What a page cuts off is no part of its size, so a drawing may reach further than asked; never this far, mm. */
const FARTHEST = 50_000;

process.on('message', ({ file, text }) => {
  const before = process.cpuUsage();
  const end = read(file, text);
  const { user, system } = process.cpuUsage(before);
  process.send({ ...end, seconds: (user + system) / 1e6, megabytes: process.resourceUsage().maxRSS / 1024 });
});
process.send({ end: 'ready', said: '', seconds: 0, megabytes: 0 });

function read(file, text) {
  try {
    const drawing = openDrawing({ fonts: new Map(), drawings: new Map([[file, text]]) }, file, 'pattern.file');
    return { end: 'drawn', said: unsound(drawing.figures(138 / drawing.extent)) };
  } catch (e) {
    const plain = e instanceof BadInput || e instanceof Refusal;
    if (plain) return { end: 'refused', said: e.message };
    // The command makes one line of this; how often it comes is counted.
    if (e instanceof Undecided) return { end: 'undecided', said: e.message };
    return { end: 'error', said: String(e?.stack ?? e) };
  }
}

/** What is wrong with what was drawn; empty when nothing is. */
function unsound(pieces) {
  if (pieces.length === 0) return 'no piece';
  for (const { name, region } of pieces)
    for (const contour of region.contours)
      for (const [i, e] of contour.entries()) {
        const last = contour.at(i - 1);
        if (e.x0 !== last.x1 || e.y0 !== last.y1) return `an open contour in ${name}`;
        if (![e.x0, e.y0, e.x1, e.y1, e.cx, e.cy, e.r].every(Number.isFinite)) return `no number in ${name}`;
        if (Math.abs(e.x0) > FARTHEST || Math.abs(e.y0) > FARTHEST) return `a point far off in ${name}`;
      }
  return '';
}
