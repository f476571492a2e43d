import { fileStem } from '../fit/inlay.js';
import { isNumbered } from '../fit/islands.js';
import { bareLength, escapeText, UNIT_WORD } from './format.js';
import type { Job } from './job.js';

/** What each file is and how to be sure that it came in at true scale. HTML text. */
export function fileList(job: Job): string {
  const { units } = job.recipe;
  const side = units === 'mm' ? '10 mm' : '1/2 in (0.5 in)';
  const border = bareLength(job.sheet.border, units);
  return [
    '<ul>',
    '<li><b>pocket.svg, pocket.dxf</b>: the pocket; <b>plug.svg, plug.dxf</b>: the plug. SVG and DXF say the same: use either.</li>',
    ...furtherFiles(job),
    `<li>Both are in ${UNIT_WORD[units]}, true scale, lines and true arcs only. Cut paths are in the group or layer of that name; marks are not to be cut.</li>`,
    `<li>Datum: lower left corner of the box round the face, at ${border}, ${border} ${units} from the drawing’s lower left corner${job.pair.mirrored ? '; on the mirrored plug it is at the lower right' : ''}.</li>`,
    `<li>Scale: measure the reference square in your CAM program. It must be ${side} on each side. If it is not, set the import to ${UNIT_WORD[units]} and look again.</li>`,
    ...(job.layouts.plug
      ? [
          '<li><b>plug-layout.svg, plug-layout.dxf</b>: the plug’s parts laid out on a board; its datum is the board’s lower left corner.</li>',
        ]
      : []),
    ...(job.layouts.pocket
      ? [
          '<li><b>pocket-layout.svg, pocket-layout.dxf</b>: the pockets of all pieces on a board, datum likewise; the thin outlines are the pieces.</li>',
        ]
      : []),
    ...(isNumbered(job.islands.length)
      ? ['<li>Numbers in the parts are marks, the same in pocket and plug: part 3 goes into pocket 3.</li>']
      : []),
    '<li><b>picture.svg, picture.png</b>: how the piece will look. <b>job.json</b>: every number, finding and proof.</li>',
    '</ul>',
    '<p>This sheet is written only after the drawings were read back and measured; see job.json for the proof.</p>',
  ].join('\n');
}

/**
 * Usual cautions. Wood dust: NIOSH, OSHA and ACGIH figures as on OSHA's wood dust evaluation page. HTML text.
 */
export function cautionList(): string {
  const cautions = [
    'Eyes and ears: wear protection for both whenever the machine runs.',
    'Dust: collect it at the cutter and wear a mask that fits. Limits over a shift: 1 mg/m³ recommended by NIOSH and, since 2007, ACGIH (0.5 for western red cedar); OSHA enforces 15 mg/m³ total and 5 mg/m³ respirable as nuisance dust (source: OSHA, wood dust evaluation). Some woods irritate skin and lungs. Wood dust burns: no sparks, clean up.',
    'Hold-down: fix the work so that nothing can shift or lift, small parts and the last of a cut above all. Clamps and screws clear of every path.',
    'Switch off and unplug before changing a cutter. Let the spindle stop by itself. Never exceed the speed marked on the cutter.',
    'Keep within what the makers of machine, cutter, press and glue allow: their instructions come before this sheet.',
    'Presses and clamps: hands clear while they close; never exceed the rated load.',
    'Do not leave a cutting machine alone. Know where its stop is.',
    'Follow local rules, and leave to licensed people what those rules leave to them, such as wiring.',
  ];
  return `<ul>${cautions.map((c) => `<li>${c}</li>`).join('\n')}</ul>`;
}

/** The files of the second inlay and those after it. */
function furtherFiles({ inlays }: Job): string[] {
  if (inlays.length === 1) return [];
  const items = inlays.map(({ wood }, k) => {
    const [pocket, plug] = [fileStem('pocket', k), fileStem('plug', k)];
    return `<b>${pocket}.svg, ${plug}.svg</b> (and .dxf): ${escapeText(wood)}`;
  });
  return [`<li>One pocket and one plug a wood, in the order they go in: ${items.join('; ')}.</li>`];
}
