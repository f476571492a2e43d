import { type Island, islandsOf, isNumbered } from '../fit/islands.js';
import { shapeOf } from '../fit/shape.js';
import { alikeParts, type Turns, turnsOf, wholeShape } from '../fit/turns.js';
import { degrees } from '../geometry/trig.js';
import { numberText } from '../schema/units.js';
import type { Finding } from './finding.js';
import { listed, partNames } from './part-names.js';
import type { Setup } from './setup.js';

/** More angles than this are told by their number. */
const TOLD = 5;

/**
 * Parts that go into their pockets in other ways than the right one, and parts that can be taken for each other. A plug on
 * a carrier goes in as a whole, so there it is the whole plug that is looked at, and it cannot be turned over.
 */
export function turnedPart(setup: Setup): Finding[] {
  const { recipe, pair } = setup;
  if (pair.plug.contours.length === 0) return [];
  const { clearance } = recipe.fit;
  if (recipe.fit.plug === 'carrier') {
    const turns = { ...turnsOf(wholeShape(pair.plug), clearance), over: false };
    if (ways(turns) === 0) return [];
    return [finding(setup, turns, 1, null, 'The plug on its carrier also fits')];
  }
  const islands = islandsOf(pair);
  const shapes = islands.map((i) => shapeOf(i.plug));
  const alike = alikeParts(shapes, clearance);
  // Parts of one shape turn alike, so one of each is enough.
  const first = new Map<number, number>();
  for (const group of alike) for (const k of group.members) first.set(k, group.members[0]!);
  const known = new Map<number, Turns>();
  const groups = new Map<string, { turns: Turns; members: Island[] }>();
  islands.forEach((island, k) => {
    const like = first.get(k) ?? k;
    const turns = known.get(like) ?? turnsOf(shapes[like]!, clearance);
    known.set(like, turns);
    if (ways(turns) === 0) return;
    const key = waysText(turns);
    const group = groups.get(key);
    if (group) group.members.push(island);
    else groups.set(key, { turns, members: [island] });
  });
  const turned = [...groups.values()].map(({ turns, members }) => {
    const some = members.length > 1;
    const who = partNames(numbersOf(members), islands.length);
    return finding(setup, turns, members.length, members[0]!, `${who} also ${some ? 'fit' : 'fits'}`);
  });
  const taken = alike
    .filter((g) => g.turned)
    .map((g) =>
      mistaken(
        setup,
        g.members.map((k) => islands[k]!),
        islands.length,
      ),
    );
  return [...turned, ...taken];
}

/** In how many wrong ways: a round part counts as many. */
function ways({ angles, any, over }: Turns): number {
  return (any ? 2 : angles.length) + (over ? 1 : 0);
}

/** A wrong turn shows where the plug's wood can be told from the field's, so that its grain is looked at. */
function matters({ recipe }: Setup): boolean {
  return recipe.woods.plug !== recipe.woods.field;
}

function finding(setup: Setup, turns: Turns, count: number, at: Island | null, who: string): Finding {
  const wrong = ways(turns);
  // A part that only goes in turned over needs no more than to show which face is up.
  const side = turns.any || turns.angles.length > 0 ? 'top edge' : 'upper face';
  const mark =
    count > 1 ? `mark the ${side} of each before it is cut out` : `mark its ${side} before it is cut out`;
  return {
    code: 'turned-part',
    severity: wrong >= 2 && matters(setup) ? 'warn' : 'note',
    where: at?.at ?? null,
    numbers: { parts: count, ways: wrong, ...(turns.any ? {} : { turns: turns.angles.length }) },
    do: `${who} ${waysText(turns)}: ${grainText(turns)}; ${mark}.`,
  };
}

/** "turned by 90, 180 or 270 degrees, or turned over". */
function waysText({ angles, any, over }: Turns): string {
  const list = angles.map((a) => numberText(degrees(a), 1));
  const told =
    list.length > TOLD ? `turned to ${list.length} other places` : `turned by ${listed(list)} degrees`;
  return [
    ...(any ? ['turned by any angle'] : list.length > 0 ? [told] : []),
    ...(over ? ['turned over'] : []),
  ].join(', or ');
}

function grainText({ angles, any }: Turns): string {
  const off = (a: number, by: number): boolean => Math.abs(a - by) < 0.02;
  const along = (a: number): boolean => off(a, Math.PI);
  if (!any && angles.every(along))
    return 'the grain would run along all the same, but its figure would not match';
  const square = (a: number): boolean => along(a) || off(a, Math.PI / 2) || off(a, 1.5 * Math.PI);
  return `the grain would run ${!any && angles.every(square) ? 'across' : 'askew'}`;
}

function mistaken(setup: Setup, members: readonly Island[], of: number): Finding {
  return {
    code: 'alike-parts',
    severity: members.length > 2 && matters(setup) ? 'warn' : 'note',
    where: members[0]!.at,
    numbers: { parts: members.length },
    do: `${partNames(numbersOf(members), of)} have one shape, turned to different sides: any of them goes into the pocket of any other, and its grain would then run askew. ${
      isNumbered(of) ? 'Write the numbers of the drawing on them' : 'Number them'
    } before they are cut out, and keep each with its pocket.`,
  };
}

function numbersOf(members: readonly Island[]): number[] {
  return members.map((m) => m.number);
}
