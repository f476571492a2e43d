import { halfAngle, toStave } from '../bowl/stave.js';
import type { Vessel } from '../bowl/vessel.js';
import { degrees } from '../geometry/trig.js';
import { listed } from '../inspect/part-names.js';
import { escapeText, lengthText } from './format.js';
import { findingList } from './sheet-lists.js';
import { block, sheetPage } from './sheet-page.js';
import { cautionList } from './sheet-words.js';
import { ticked, WORK_STYLE } from './sheet-work.js';
import type { VesselSheet } from './vessel.js';
import { vesselOrder } from './vessel-order.js';

const STYLE = `
.views { display: grid; grid-template-columns: 1fr 1fr; gap: 3mm 5mm }
.views img { width: 100%; height: auto; display: block }
.views .flat { grid-column: 1 / -1 }
.list { width: 100% }
.list th { width: 46mm }
.levels th, .levels td { width: 24mm }`;

/** The sheet of a staved vessel: one self-contained page to print, no scripts, nothing fetched. */
export function vesselSheet(made: VesselSheet): string {
  const { job, vessel, work } = made;
  const { recipe } = job;
  const { setup } = vessel;
  const len = (mm: number): string => lengthText(mm, recipe.units);
  const woods = `${listed(
    job.inlays.map((i) => i.wood),
    'and',
  )} in ${recipe.woods.field}`;
  const from = setup.sides === 1 ? 'one flat board' : `${setup.sides} staves`;
  return sheetPage(recipe.name, 'vessel sheet', WORK_STYLE + STYLE, [
    `<p class="lead">${escapeText(`${woods}; ${len(setup.height)} high, from ${from}. The drawings of one inlaid ${setup.sides === 1 ? 'face' : 'stave'} and their proof are on sheet.html.`)}</p>`,
    `<div class="views">${made.pictures
      .map(
        ({ title, png }) =>
          `<figure${title.startsWith('Unrolled') ? ' class="flat"' : ''}><img alt="${escapeText(title)}" src="data:image/png;base64,${base64(png)}"><figcaption>${escapeText(title)}</figcaption></figure>`,
      )
      .join('\n')}</div>`,
    '<p><small>Seen from the model by projection, in the woods’ colours; no grain.</small></p>',
    block(setup.sides === 1 ? 'The board' : 'Staves', cutList(made), true),
    ...(work.angles ? [block('Joints', joints(made), true)] : []),
    block('The wall in the wood', wallList(made), true),
    block('Findings', findingList(job)),
    block('Order of work', ticked(vesselOrder(made))),
    block('Cautions', `${cautionList()}\n${VESSEL_CAUTIONS}`),
    block('Files', fileNames(made)),
  ]);
}

function cutList({ vessel, work, job }: VesselSheet): string {
  const { units } = job.recipe;
  const len = (mm: number): string => lengthText(mm, units);
  const { setup, stave } = vessel;
  const { blank, outer, inner, wood } = work;
  const size = `${len(blank.length)} long, ${len(blank.width)} wide, ${len(blank.thickness)} thick`;
  if (setup.sides === 1)
    return rows([
      ['Board', `1 of ${size}`],
      ['Wood used', `${volume(wood.block)}, of which ${percent(wood.finished / wood.block)} are left`],
    ]);
  return rows([
    [
      'Blanks',
      `${setup.sides} of ${size}; grain along the length. Least thickness ${len(vessel.left.thickness)}.`,
    ],
    ['Which carry the inlay', setup.inlaid.length === setup.sides ? 'all' : setup.inlaid.join(', ')],
    [
      'Outer face, true size',
      `${len(outer.bottom)} wide at the foot, ${len(outer.top)} at the rim, ${len(outer.length)} between`,
    ],
    ['Inner face, true size', `${len(inner.bottom)}, ${len(inner.top)}, ${len(inner.length)}`],
    ...work.fillers.map((f, k): [string, string] => [
      `Block ${k + 1}, one on each stave`,
      `${len(f.thickness)} thick, glued onto the inner face from ${len(f.from)} to ${len(f.to)} of height`,
    ]),
    [
      'Floor',
      work.hole.flats > 0
        ? `${len(setup.floor)} thick; the staves leave a hole of ${len(work.hole.flats)} across the flats, ${len(work.hole.corners)} across the corners`
        : 'the staves meet at the foot',
    ],
    [
      'Wood used',
      `staves ${volume(wood.staves)} (sawn head to tail), of which ${percent(wood.finished / wood.staves)} are left; a solid block ${volume(wood.block)} (${percent(wood.finished / wood.block)}), flat rings ${volume(wood.rings)} (${percent(wood.finished / wood.rings)})`,
    ],
    [
      'Glued shell',
      `${volume(work.shell)}; its rim has ${Math.round(work.rim / 100)} cm² for tape when it is turned over (${Math.round((work.rim * job.recipe.table.tape) / 1000)} N at ${job.recipe.table.tape} kPa, an estimate)`,
    ],
    ['Apothem at the foot', `${len(stave.apothem)} from the axis to the outer face`],
  ]);
}

/** The wall's surfaces in the stave's own measure: square down from its outer face. */
const DEPTHS = ['outside lies deep, middle', 'at the joint', 'inside lies deep, middle', 'at the joint'];

function depths(
  { stave, wall }: Vessel,
  face: 'outside' | 'inside',
  z: number,
  len: (mm: number) => string,
): string[] {
  return [0, halfAngle(stave)].map((angle) => len(toStave(stave, wall[face].radius(z), angle, z).depth));
}

function joints({ vessel, work, job }: VesselSheet): string {
  const { units } = job.recipe;
  const len = (mm: number): string => lengthText(mm, units);
  const a = work.angles!;
  const { setup } = vessel;
  return `${rows([
    ['Slope', `${deg(setup.slope)} from the horizontal`],
    ['Miter (fence)', `${deg(a.miter)} from square`],
    ['Bevel (blade)', `${deg(a.bevel)} from square`],
    ['Between inner faces', deg(a.dihedral)],
    [
      'Error',
      `${deg(setup.angleError)} on each of ${2 * setup.sides} joint faces, all one way, opens the last joint by ${len(work.gap)}. A real joint leaves a step of about 0.3 mm in the pattern (common practice).`,
    ],
    ...work.dowels.map((d, k): [string, string] => [
      `Dowel ${k + 1} in each joint`,
      `${len(d.along)} along the joint from the foot, ${len(d.deep)} under the outer face; ${d.stays ? 'it stays in the wall' : 'it is turned away in the end'}`,
    ]),
  ])}\n<p><small>Compound angles as in saw makers’ tables: miter atan(cos slope × tan(180°/N)), bevel asin(sin slope × sin(180°/N)). Check with offcuts before the wood that counts.</small></p>`;
}

function wallList({ vessel, job }: VesselSheet): string {
  const { units } = job.recipe;
  const len = (mm: number): string => lengthText(mm, units);
  const { left, wall, setup } = vessel;
  const levels = [0, 0.25, 0.5, 0.75, 1].map((s) => setup.height * s);
  const staved = setup.sides > 1;
  const table = levels
    .map((z) => {
      const hollow = z >= setup.floor;
      const cells = [
        len(2 * wall.outside.radius(z)),
        hollow ? len(2 * wall.inside.radius(z)) : 'floor',
        ...(staved ? depths(vessel, 'outside', z, len) : []),
        ...(staved ? (hollow ? depths(vessel, 'inside', z, len) : ['', '']) : []),
      ];
      return `<tr><th>${len(z)}</th>${cells.map((c) => `<td>${c}</td>`).join('')}</tr>`;
    })
    .join('\n');
  const heads = ['outside across', 'inside across', ...(staved ? DEPTHS : [])];
  const words =
    setup.sides === 1
      ? []
      : [
          `Least wood outside of it ${len(left.over.mm)} at ${len(left.over.z)}; inside of it ${len(left.under.mm)} at ${len(left.under.z)}.`,
        ];
  return `<table class="levels"><tr><th>Height</th>${heads.map((h) => `<td>${h}</td>`).join('')}</tr>\n${table}</table>\n<p>${escapeText([...words, `The wall is ${len(left.wall.mm)} at its thinnest. Turn it ${len(setup.sanding)} thicker on each face and sand that off.`].join(' '))}</p>`;
}

const VESSEL_CAUTIONS =
  '<ul><li>A glued-up shell can fly apart: no voids, no dry joints, glue cured as its maker says; stand out of its plane, a full face shield on, the lowest speed first, and never faster than your lathe’s and chuck’s makers allow.</li><li>Compound cuts leave short, pointed offcuts: hold down and push with tools, not hands.</li></ul>';

function fileNames({ jigs, job, work }: VesselSheet): string {
  const inlays = job.inlays
    .map((i, k) => `<b>vessel-inlay-${k + 1}.stl</b> (${escapeText(i.wood)})`)
    .join(', ');
  return [
    '<ul>',
    '<li><b>pocket.*, plug.*, sheet.html, job.json</b>: one inlaid stave, proven.</li>',
    ...(jigs.length > 0
      ? [
          '<li><b>jig-low.*, jig-high.*</b>: openings of the two clamp jigs, for CAM as a pocket’s drawing.</li>',
        ]
      : []),
    `<li><b>vessel.glb</b>: the finished vessel in its woods, metres, y up. <b>vessel-field.stl</b>, ${inlays}: its bodies, mm.</li>`,
    ...(work.angles
      ? [
          `<li><b>stock-stave.stl</b>, ${work.fillers.map((_, k) => `<b>stock-block-${k + 1}.stl</b>, `).join('')}<b>stock-shell.stl</b>: stock for CAM, in the finished vessel’s place, mm.</li>`,
        ]
      : []),
    '<li>All models stand on z = 0 about the z axis, the first stave towards -y; chords stand off by 0.01 mm at most.</li>',
    '</ul>',
  ].join('\n');
}

function rows(all: readonly (readonly [string, string])[]): string {
  return `<table class="list">${all.map(([k, v]) => `<tr><th>${escapeText(k)}</th><td>${escapeText(v)}</td></tr>`).join('\n')}</table>`;
}

function deg(radians: number): string {
  return `${Number(degrees(radians).toFixed(2))}°`;
}

function volume(mm3: number): string {
  return `${Number((mm3 / 1e6).toPrecision(3))} dm³`;
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`;
}

function base64(bytes: Uint8Array): string {
  let text = '';
  for (let k = 0; k < bytes.length; k += 8192) text += String.fromCharCode(...bytes.subarray(k, k + 8192));
  return btoa(text);
}
