import { parts } from '../../../geometry/region.js';
import type { Job } from '../../../output/job.js';
import { DARK } from '../../../output/wood-looks.js';
import { cutterRadius } from '../../../recipe/recipe.js';
import { lengthText, type Units } from '../../../schema/units.js';
import { figureOf, lookOf } from '../figure.js';
import { pathOf } from '../path.js';
import type { View } from '../protocol.js';
import { counted, faceShape, viewOf } from './view.js';

/** The piece as it will look. */
export function pieceView(job: Job): View {
  const { face, field, inlays } = figureOf(job.recipe, job.outline, job.inlays);
  return viewOf('piece', job.outline, {
    shapes: [
      { d: face, look: 'wood', fill: field.colour },
      ...inlays.flatMap(({ pocket, plug, wood }) => [
        { d: pocket, look: 'joint' },
        { d: plug, look: 'wood', fill: wood.colour },
      ]),
    ],
    key: [
      { look: 'wood', fill: field.colour, text: field.name },
      ...inlays.map(({ wood }) => ({ look: 'wood', fill: wood.colour, text: wood.name })),
    ],
    says: 'The piece from its face, plug in place.',
  });
}

/** What is cut out of the field. */
export function pocketView(job: Job, units: Units): View {
  const { outline, inlays, recipe } = job;
  const n = inlays.reduce((sum, { pair }) => sum + parts(pair.pocket).length, 0);
  return viewOf('pocket', outline, {
    shapes: [
      faceShape(outline),
      ...inlays.map(({ pair }) => ({ d: pathOf(pair.pocket.contours), look: 'pocket' })),
    ],
    key: [{ look: 'pocket', text: 'cut away' }],
    says: `${upper(counted(n, 'pocket'))}, ${lengthText(recipe.depth, units)} deep, every inside corner round enough for a cutter of radius ${lengthText(cutterRadius(recipe.cutter), units)}.`,
  });
}

/** The plug as it lies in its drawing for CAM. */
export function plugView(job: Job, units: Units): View {
  const { outline, inlays, recipe } = job;
  const n = inlays.reduce((sum, { pair }) => sum + parts(pair.plug).length, 0);
  const looks = inlays.map(({ wood }) => lookOf(wood, DARK, recipe.woods.own));
  const mirrored = inlays.some(({ pair }) => pair.mirrored);
  const how =
    recipe.fit.plug === 'carrier'
      ? `on a carrier, ${lengthText(recipe.fit.sawRoom, units)} of saw room above the face`
      : 'cut free';
  return viewOf('plug', outline, {
    shapes: [
      { d: faceShape(outline).d, look: 'ghost' },
      ...inlays.map(({ pair }, k) => ({
        d: pathOf(pair.plug.contours),
        look: 'plug',
        fill: looks[k]!.colour,
      })),
    ],
    key: looks.map(({ name, colour }) => ({ look: 'plug', fill: colour, text: name })),
    says: `${upper(counted(n, 'part'))}, ${how}${mirrored ? '; mirrored, as it is cut, since it goes in face down' : ''}.`,
  });
}

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
