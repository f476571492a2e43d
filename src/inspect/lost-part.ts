import { criticalRadius } from '../cutter/critical.js';
import type { Loss } from '../cutter/loss.js';
import { parts } from '../geometry/region.js';
import { cornerRadius } from '../recipe/recipe.js';
import { lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import { remedy } from './remedy.js';
import type { Setup } from './setup.js';

/** Findings of this kind; what is left over is one more. Enough to see what is wrong, few enough to read. */
const MOST = 12;

/** Pieces of more edges are not tried at other sizes: a dozen tries would take longer than all the rest. */
const TRIED = 1500;

/**
 * Each part that vanished, was cut up or grew together, and each hole that filled: by name, worst first. What all the
 * e's of a text lose alike is one finding, at the first of them.
 */
export function lostParts(setup: Setup, losses: readonly Loss[]): Finding[] {
  const radii = new Map<string, number | null | undefined>();
  const groups = alike(losses);
  const found = groups.slice(0, MOST).map((group) => {
    const l = group[0]!;
    const names = l.of.map((p) => p.name).join('\n');
    if (!radii.has(names)) radii.set(names, radiusKeeping(l, setup));
    return finding(group, setup, radii.get(names));
  });
  const more = groups.slice(MOST).reduce((n, group) => n + group.length, 0);
  return more > 0 ? [...found, leftOver(more)] : found;
}

/** Losses of one kind and size by pieces whose names differ in number and word only. */
function alike(losses: readonly Loss[]): Loss[][] {
  const groups = new Map<string, Loss[]>();
  for (const l of losses) {
    const name = l.piece.replace(/ in '[^']*'/g, '').replace(/\d+/g, '#');
    const key = `${l.kind} ${l.parts} ${l.size.toFixed(3)} ${name}`;
    const group = groups.get(key);
    if (group) group.push(l);
    else groups.set(key, [l]);
  }
  return [...groups.values()];
}

function finding(group: readonly Loss[], setup: Setup, radius: number | null | undefined): Finding {
  const l = group[0]!;
  const { text, numbers } = remedy(l, setup, radius);
  const more = group.length - 1;
  const others = more === 0 ? '' : `; likewise ${more} more like it`;
  return {
    code: 'lost-part',
    severity: 'warn',
    where: l.at,
    numbers: { size: l.size, places: group.length, ...numbers },
    do: `${capital(what(l, setup))}${others}. ${text}`,
  };
}

function leftOver(more: number): Finding {
  const things = more === 1 ? 'one more part or hole is lost' : `${more} more parts or holes are lost`;
  return {
    code: 'lost-part',
    severity: 'warn',
    where: null,
    numbers: { more },
    do: `${capital(things)}, all smaller than those named. A larger drawing or a smaller cutter keeps more; \`inlaywright limits\` says how much of either.`,
  };
}

/** The largest corner radius at which the pieces alone keep all they have; undefined when it is not sought. */
function radiusKeeping(l: Loss, { recipe: { cutter } }: Setup): number | null | undefined {
  const edges = l.of.reduce((n, p) => n + p.region.contours.reduce((m, c) => m + c.length, 0), 0);
  if (edges > TRIED) return undefined;
  return criticalRadius(
    { pieces: l.of },
    { r: cornerRadius(cutter), thin: cutter.thin, touch: cutter.touch },
  );
}

function what(l: Loss, { recipe }: Setup): string {
  const across = `${lengthText(l.size, recipe.units)} across`;
  const letter = /^(layer \d+, )?letters? /.test(l.piece);
  const is = /^(layer \d+, )?letters /.test(l.piece) ? 'are' : 'is';
  const hole = letter ? 'the counter' : 'a hole';
  const alone = l.of.length === 1 && parts(l.of[0]!.region).length === 1;
  switch (l.kind) {
    case 'vanished':
      return alone
        ? `${l.piece} ${is} thinner than the cutter and ${is} gone`
        : `a part of ${l.piece}, ${across}, is thinner than the cutter and is gone`;
    case 'split':
      return `${l.piece} ${is} cut into ${l.parts} parts where thinner than the cutter`;
    case 'filled':
      return `${hole} of ${l.piece}, ${across}, closed`;
    case 'opened':
      return `${hole} of ${l.piece}, ${across}, is open: the wall beside it is thinner than the cutter`;
    case 'closed':
      return `an opening of ${l.piece} grew shut and became a hole, ${across}`;
    case 'divided':
      return `${hole} of ${l.piece}, ${across}, is bridged where it is narrower than the cutter`;
    case 'merged':
      return l.of.length > 1
        ? `${l.piece} were drawn apart and became one`
        : `${l.parts} parts of ${l.piece} were drawn apart and became one`;
    case 'limb':
      return `an end of ${l.piece}, ${lengthText(l.size, recipe.units)} long, is cut off`;
    case 'gap':
      return `a gap in ${l.piece} is filled for ${lengthText(l.size, recipe.units)}`;
  }
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
