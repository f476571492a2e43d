import { inwards, lengthText } from '../schema/units.js';
import { aboveText, atFullDepth, lowest, tooNear } from './collet-meets.js';
import type { Finding } from './finding.js';
import { listed } from './part-names.js';
import type { Setup } from './setup.js';
import { clampHits, leastPitch, standsOf, wallsNearClamps } from './sums/machine/collet.js';

/** A dust shoe whose stiff underside meets the face, clamps or uncut wood beside the piece at full depth. */
export function dustShoe({ recipe, outline, pair }: Setup): Finding[] {
  const { machine, table, units } = recipe;
  if (machine.shoe === null || pair.pocket.contours.length === 0) return [];
  const text = (mm: number): string => lengthText(mm, units);
  const stand = standsOf(recipe, pair, 'shoe').reduce((a, b) => (b.above < a.above ? b : a));
  const clamps = clampHits(recipe, outline, pair, 'shoe');
  const least = leastPitch(recipe, outline, pair, 'shoe');
  const near = tooNear(least, table.pitch);
  const beside = table.neighbours !== null && lowest(least) !== null && near.x && near.y;
  const heights = [
    ...(stand.above < -1e-9 ? [{ what: 'the face', height: 0 }] : []),
    ...(clamps.length > 0 ? [{ what: `clamps ${text(table.clamps)} high`, height: table.clamps }] : []),
    ...(beside
      ? [
          {
            what: `uncut wood ${text(table.neighbours ?? 0)} high beside the piece`,
            height: table.neighbours ?? 0,
          },
        ]
      : []),
  ];
  if (heights.length === 0) return [];
  const hit = clamps.length > 0 ? clamps.reduce((a, b) => (b.away > a.away ? b : a)) : null;
  const needed = stand.cut.deep + Math.max(...heights.map((h) => h.height));
  return [
    {
      code: 'dust-shoe-meets',
      severity: 'warn',
      where: hit?.at ?? null,
      ...(hit ? { zone: { lines: wallsNearClamps(outline, pair, hit) } } : {}),
      numbers: { shoe: machine.shoe, above: stand.above, needed, ...(hit ? { clampsAway: hit.away } : {}) },
      do: `${atFullDepth(stand, text)} the stiff underside of the dust shoe, ${text(machine.shoe)} wide, is ${aboveText(stand.above, text)} and meets ${listed(
        heights.map((h) => h.what),
        'and',
      )}. Set it ${text(inwards(needed, units, Math.ceil))} or more above the tip, or take it off for this cut.`,
    },
  ];
}
