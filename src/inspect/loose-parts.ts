import { lengthText, MM_PER_INCH, numberText, type Units } from '../schema/units.js';
import { LEAST_FOOT, ONION_SKIN } from '../shop/holding.js';
import type { Finding } from './finding.js';
import { partNames } from './part-names.js';
import type { Setup } from './setup.js';
import { type LoosePart, type LooseParts, looseFieldParts, loosePlugParts } from './sums/machine/holding.js';

/** Parts that come loose when they are cut out, and what holds them. */
export function looseParts(setup: Setup): Finding[] {
  const { recipe, pair } = setup;
  const plug = loosePlugParts(recipe, pair);
  const field = looseFieldParts(recipe, pair);
  const some = [plug, field].filter((p) => p !== null).filter((p) => p.all.length > 0);
  if (some.length === 0) return [];
  if (recipe.table.onionSkin >= ONION_SKIN.least.value - 1e-9) return [onionSkin(setup, plug, field)];
  return [...(plug ? ofPlug(setup, plug) : []), ...(field ? ofField(setup, field) : [])];
}

/** Loose plug parts that nothing holds, or tape or vacuum only weakly. */
function ofPlug(setup: Setup, { all, height, risky }: LooseParts): Finding[] {
  const flagged = unheld(setup) ? bySize(all) : risky;
  if (flagged.length === 0) return [];
  const names = short(flagged, all.length);
  const is = flagged.length === 1 ? 'is' : 'are';
  return [
    {
      code: 'loose-small-parts',
      severity: 'warn',
      ...place(flagged),
      numbers: numbers(setup, flagged, all.length),
      do: `${names} ${is} ${why(setup, flagged, height)}. Cut the plug on a carrier (fit.plug: "carrier"), or leave ${skinText(setup)} and sand it off; tabs would stand on the fitting wall and spoil it.`,
    },
  ];
}

/** Field inside a through pocket: always told, since it also loses its place. */
function ofField(setup: Setup, { all, height, risky }: LooseParts): Finding[] {
  if (all.length === 0) return [];
  const none = unheld(setup);
  const flagged = none || risky.length === 0 ? bySize(all) : risky;
  const many = all.length > 1;
  const what = many
    ? `${all.length} parts of field inside the pocket come`
    : 'A part of field inside the pocket comes';
  const held =
    none || risky.length > 0
      ? ` ${flagged.length === all.length ? (many ? 'They are' : 'It is') : flagged.length === 1 ? 'One of them is' : `${flagged.length} of them are`} ${why(setup, flagged, height)}.`
      : '';
  return [
    {
      code: 'loose-field-parts',
      severity: held === '' ? 'note' : 'warn',
      ...place(flagged),
      numbers: numbers(setup, flagged, all.length),
      do: `${what} loose when it is cut through.${held} Leave a skin under the pocket, or ${skinText(setup)} that is sanded off once the plug is glued in; else mark where each belongs.`,
    },
  ];
}

/** What an onion skin asks for afterwards. */
function onionSkin({ recipe }: Setup, plug: LooseParts | null, field: LooseParts | null): Finding {
  const { depth, fit, stock, table, units } = recipe;
  const text = (mm: number): string => lengthText(mm, units);
  const skin = table.onionSkin;
  const loose = plug && plug.all.length > 0 ? plug : null;
  const enclosed = field && field.all.length > 0 ? field : null;
  const cuts = [
    ...(loose ? [`the plug ${text(loose.height - skin)} deep`] : []),
    ...(enclosed ? [`the pocket ${text(enclosed.height - skin)} deep`] : []),
  ].join(' and ');
  const needed = depth - fit.glueGap + skin;
  const low = loose !== null && stock.plug < needed - 1e-9;
  const height = !loose
    ? ''
    : low
      ? ` Sanded, the plug lies ${text(needed - stock.plug)} below the face: use plug stock of ${text(needed)} or more.`
      : ` Sanded, the plug is ${text(stock.plug - skin)} high and stands ${text(stock.plug - needed)} proud.`;
  return {
    code: 'onion-skin',
    severity: low ? 'warn' : 'note',
    where: null,
    numbers: { onionSkin: skin, ...(loose ? { height: stock.plug - skin, proud: stock.plug - needed } : {}) },
    do: `An onion skin of ${text(skin)} holds the loose parts: cut ${cuts}, and sand it off the underside.${height}`,
  };
}

/** Clamps hold the board and nothing that is cut out of it. */
function unheld({ recipe }: Setup): boolean {
  return recipe.table.hold === 'clamps';
}

function why({ recipe }: Setup, flagged: readonly LoosePart[], height: number): string {
  const { machine, table, units } = recipe;
  if (table.hold === 'clamps') return 'held by nothing once cut free, since clamps hold the board alone';
  const least = flagged[0]!;
  const some = flagged.length > 1;
  const reasons = [
    ...(flagged.some((p) => p.small)
      ? [
          `under ${areaText(LEAST_FOOT.value, units)} (${some ? 'the smallest ' : ''}${areaText(least.area, units)})`,
        ]
      : []),
    ...(flagged.some((p) => p.narrow)
      ? [`standing on less than half of ${some ? 'their' : 'its'} ${lengthText(height, units)} of height`]
      : []),
  ].join(' or ');
  if (table.hold === 'vacuum')
    return `too small for a vacuum table${reasons === '' ? '' : `, ${reasons}`}: it holds little there, and less with every slot cut through`;
  const hold = `the tape ${some ? 'under the smallest ' : ''}holds about ${numberText(least.hold, 0)} N against ${numberText(machine.sideForce, 1)} N of side force (estimate: area x table.tape)`;
  const kind = flagged.some((p) => p.small) ? 'small' : 'narrow';
  return reasons === '' ? `weakly held: ${hold}` : `${kind} for tape, ${reasons}: ${hold}`;
}

function skinText({ recipe: { table, units } }: Setup): string {
  const range = `${numberText(ONION_SKIN.least.value, 1)} mm to ${numberText(ONION_SKIN.most.value, 1)} mm`;
  const inches = `${lengthText(ONION_SKIN.least.value, 'in')} to ${lengthText(ONION_SKIN.most.value, 'in')}`;
  const skin = `an onion skin of ${units === 'in' ? inches : range} (table.onionSkin)`;
  return table.onionSkin > 0 ? `${skin}, more than the ${lengthText(table.onionSkin, units)} now,` : skin;
}

function bySize(all: readonly LoosePart[]): LoosePart[] {
  return [...all].sort((a, b) => a.area - b.area || a.number - b.number);
}

/** Their numbers, or how many there are where the list would be long. */
function short(flagged: readonly LoosePart[], of: number): string {
  if (flagged.length === of && of > 1) return `All ${of} parts`;
  const names = partNames(
    flagged.map((p) => p.number).sort((a, b) => a - b),
    of,
  );
  return names.length > LONGEST
    ? `${flagged.length} of ${of} parts (the smallest is part ${flagged[0]!.number})`
    : names;
}

/** More letters of part numbers than this are not read. */
const LONGEST = 40;

function place(flagged: readonly LoosePart[]): Pick<Finding, 'where' | 'zone'> {
  return { where: flagged[0]!.at, zone: { areas: { contours: flagged.flatMap((p) => p.contours) } } };
}

function numbers({ recipe }: Setup, flagged: readonly LoosePart[], of: number): Record<string, number> {
  const { sideForce } = recipe.machine;
  const least = flagged[0]!;
  return {
    parts: flagged.length,
    of,
    smallest: least.area,
    narrowest: Math.min(...flagged.map((p) => p.width)),
    ...(recipe.table.hold === 'tape'
      ? { hold: least.hold, sideForce, ...(sideForce > 0 ? { ratio: least.hold / sideForce } : {}) }
      : {}),
  };
}

/** An area as people say it, mm2 in. */
function areaText(mm2: number, units: Units): string {
  return units === 'in'
    ? `${numberText(mm2 / (MM_PER_INCH * MM_PER_INCH), 2)} sq in`
    : `${numberText(mm2 / 100, 1)} cm2`;
}
