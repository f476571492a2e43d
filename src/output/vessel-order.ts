import { degrees } from '../geometry/trig.js';
import { lengthText } from './format.js';
import type { VesselSheet } from './vessel.js';

/** How to make a vessel, step by step. The inlay's own order of work stands on the stave's sheet. */
export function vesselOrder({ vessel, work, jigs, job }: VesselSheet): { title: string; items: string[] }[] {
  const { setup } = vessel;
  const { units, table } = job.recipe;
  const len = (mm: number): string => lengthText(mm, units);
  const deg = (radians: number): string => `${Number(degrees(radians).toFixed(2))}°`;
  const turn = {
    title: 'Turn or carve',
    items: [
      `Outside to the profile, ${len(setup.sanding)} over; then the inside from ${len(setup.floor)} up.`,
      ...(setup.ball === null
        ? []
        : [`The inside with a ball cutter of ${len(setup.ball)} leaves ridges: sand them off.`]),
      `Turned over on the machine: dowels in its board at ${len(work.flip[0]![0])} and ${len(work.flip[1]![0])} from the middle; the rim is ${Math.round(work.rim / 100)} cm² of tape.`,
      `Shell on its board: ${len(setup.height + table.board)} high.`,
      'Stop and look when the figure first shows inside: it tells how evenly the wall lies.',
      'Sand both faces, finish.',
    ],
  };
  if (!work.angles)
    return [
      { title: 'Inlay', items: ['Plane the board; cut, glue and level the inlay as on sheet.html.'] },
      turn,
    ];
  const { miter, bevel } = work.angles;
  return [
    {
      title: 'Trial',
      items: [
        'Cut and try the coupon first (inlaywright coupon).',
        `Saw two offcuts at miter ${deg(miter)} and bevel ${deg(bevel)}; put them together and measure the angle.`,
      ],
    },
    {
      title: 'Staves',
      items: [
        `Plane ${setup.sides} blanks to ${len(work.blank.thickness)}; mark outer faces and feet; number them 1 to ${setup.sides}.`,
        `Inlay staves ${setup.inlaid.length === setup.sides ? `1 to ${setup.sides}` : setup.inlaid.join(', ')} while they are flat and square (sheet.html); level the plugs when the glue is cured.`,
        'Saw the edges to miter and bevel, measuring from the inlay’s middle line, so that figures meet at the joints.',
        ...(work.dowels.length > 0 ? ['Bore the dowels of all joints with one stop.'] : []),
      ],
    },
    {
      title: 'Shell',
      items: [
        ...(jigs.length > 0
          ? [
              `Cut both jigs; saw each board in two through the middle. They sit at ${jigs.map((j) => len(j.z)).join(' and ')}.`,
            ]
          : []),
        'Dry-fit all staves in the jigs. True the last two joints on two halves.',
        'Glue two halves, true their faces flat on one board, then glue the halves.',
        ...(work.fillers.length > 0 ? ['Glue the blocks onto the inner faces, grain along the staves.'] : []),
        `Trim foot and rim level, ${len(setup.height)} apart. Fit the floor.`,
      ],
    },
    turn,
  ];
}
