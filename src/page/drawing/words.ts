import type { Units } from '../../schema/units.js';
import type { Drawn, Measured, Trouble, ViewName } from '../worker/protocol.js';
import { readOff } from './lengths.js';

/** What a view is called. */
export const TITLES: Readonly<Record<ViewName, string>> = {
  piece: 'Piece',
  pocket: 'Pocket',
  plug: 'Plug',
  gap: 'Gap',
  reach: 'Where cutters get to',
  walls: 'Walls and grain',
  section: 'Section',
  coupon: 'Coupon',
};

/** What a severity is called. */
export const SEVERITIES = { stop: 'stop', warn: 'take care', note: 'note' } as const;

/** The piece in a sentence or two, for whoever does not see it. */
export function summed(drawn: Drawn, units: Units): string {
  const { findings, stage, recipe } = drawn;
  const found =
    stage !== 'exact'
      ? 'Not inspected yet.'
      : findings.length === 0
        ? 'No findings.'
        : `${counted(findings.length, 'finding')}${severities(findings)}.`;
  return `${recipe.name}: ${shortly(drawn, units)} ${found}`;
}

/** Size, woods, and parts once they are counted. */
export function shortly({ figure, parts, stage }: Drawn, units: Units): string {
  const { minX, maxX, minY, maxY } = figure.box;
  const size = `${readOff(maxX - minX, units)} by ${readOff(maxY - minY, units)}`;
  const woods = [...new Set(figure.inlays.map((i) => i.wood.name))];
  const inlaid = woods.length > 0 ? ` with ${listed(woods)} let in` : '';
  const many = `${counted(parts.pocket, 'pocket')}, ${counted(parts.plug, 'plug part')}`;
  return `${figure.field.name}, ${size},${inlaid}${stage === 'exact' ? `: ${many}.` : '.'}`.replace(
    /,([.:])/,
    '$1',
  );
}

function severities(findings: Drawn['findings']): string {
  const parts = (['stop', 'warn', 'note'] as const).flatMap((s) => {
    const n = findings.filter((f) => f.severity === s).length;
    return n > 0 ? [`${n} ${SEVERITIES[s]}`] : [];
  });
  return parts.length > 0 ? `: ${parts.join(', ')}` : '';
}

/** What is drawn, as it is stamped on the paper. */
export function stamped(drawn: Drawn | null, trouble: Trouble | null, drawing: boolean): string {
  if (drawn === null) return drawing ? 'drawing …' : trouble ? 'no drawing' : '';
  if (trouble !== null) return 'as it was before the fault';
  if (drawn.stage === 'artwork') return 'coarse: as drawn, corners not rounded yet';
  if (drawn.stage === 'rounded') return 'coarse: corners rounded, findings wait';
  return drawing ? 'drawing …' : 'exact';
}

/** "3.2 mm wide: limb of drop 3". */
export function measuredText({ width, of }: Measured, units: Units): string {
  return `${readOff(width, units)} wide${of === '' ? '' : `: ${of}`}`;
}

export function counted(n: number, word: string): string {
  return `${n === 0 ? 'no' : n} ${word}${n === 1 ? '' : 's'}`;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}
