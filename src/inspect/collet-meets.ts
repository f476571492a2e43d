import { type Box, polygon, type Region } from '../geometry/region.js';
import { inwards, lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import {
  AIR,
  axisBox,
  clampHits,
  leastPitch,
  ownPitch,
  type Pitch,
  type Stand,
  standsOf,
  wallsNearClamps,
} from './sums/machine/collet.js';
import { deepestOf, toolsOf, toolWords } from './sums/machine/cuts.js';

type Text = (mm: number) => string;

/** Where the collet nut goes lower than something beside the cutter. */
export function colletMeets(setup: Setup): Finding[] {
  const beside = meetsNeighbour(setup);
  // The pitch that clears the collet clears the pieces too, so one of both is enough.
  const apart = beside.length > 0 ? beside : overlap(setup);
  return [...meetsFace(setup), ...meetsClamps(setup), ...apart];
}

/** The words a collision begins with: which cutter, on which drawing, how deep. */
export function atFullDepth({ name, cut }: Stand, text: Text): string {
  return `With ${toolWords([name])} at the full depth of the ${cut.side} (${text(cut.deep)})`;
}

/** "3 mm above the face", or below it. */
export function aboveText(above: number, text: Text): string {
  if (Math.abs(above) < 1e-9) return 'level with the face';
  return above < 0 ? `${text(-above)} below the face` : `${text(above)} above the face`;
}

/**
 * A collet that nearly touches the face, or would be pressed into it. A stickout just as long as the flutes is what the
 * reader takes when none is given, no measurement, so it is not judged: the flutes are (short-flute).
 */
function meetsFace({ recipe, pair }: Setup): Finding[] {
  const text: Text = (mm) => lengthText(mm, recipe.units);
  return toolsOf(recipe).flatMap(({ name, tool }): Finding[] => {
    const stands = standsOf(recipe, pair, 'collet').filter((s) => s.name === name);
    const lowest = stands.reduce((a, b) => (b.above < a.above ? b : a));
    if (Math.abs(tool.stickout - tool.flute) < 1e-9 || lowest.above >= AIR - 1e-9) return [];
    const needed = lowest.cut.deep + AIR;
    const room = text(inwards(needed, recipe.units, Math.ceil));
    const meets = lowest.above < -1e-9;
    return [
      {
        code: 'collet-meets-face',
        severity: meets ? 'warn' : 'note',
        where: null,
        numbers: { stickout: tool.stickout, depth: lowest.cut.deep, above: lowest.above, needed },
        do: `${atFullDepth(lowest, text)} the collet is ${
          meets
            ? `${aboveText(lowest.above, text)}: it runs into the wood. Let the cutter stand out ${room} or more, or cut less deep.`
            : `${lowest.above < 1e-9 ? '' : 'only '}${aboveText(lowest.above, text)}, where chips and tape catch. Let the cutter stand out ${room} if it can.`
        }`,
      },
    ];
  });
}

/** A collet lower than clamps that stand within its radius of the cutter's axis. */
function meetsClamps({ recipe, outline, pair }: Setup): Finding[] {
  const hits = clampHits(recipe, outline, pair, 'collet');
  if (hits.length === 0) return [];
  const text: Text = (mm) => lengthText(mm, recipe.units);
  const { clamps, clampsAway } = recipe.table;
  const worst = hits.reduce((a, b) => (b.away > a.away ? b : a));
  const clears = deepestOf(hits.map((h) => h.cut)).deep + clamps + AIR;
  const room = (mm: number): string => text(inwards(mm, recipe.units, Math.ceil));
  return [
    {
      code: 'collet-meets-clamps',
      severity: 'warn',
      where: worst.at,
      zone: { lines: wallsNearClamps(outline, pair, worst) },
      numbers: { above: worst.above, clamps, clampsAway, needed: worst.away, clears },
      do: `${atFullDepth(worst, text)} the collet nut, ${text(recipe.machine.collet)} wide, is ${aboveText(worst.above, text)} and meets clamps that stand ${text(clamps)} high and ${text(clampsAway)} from the outline. Keep them ${room(worst.away)} away or more, or let ${toolWords(hits.map((h) => h.name))} stand out ${room(clears)}.`,
    },
  ];
}

/** Uncut wood beside the piece that the collet is lower than, at the pitch given or at none. */
function meetsNeighbour({ recipe, outline, pair }: Setup): Finding[] {
  const { neighbours, pitch } = recipe.table;
  if (neighbours === null) return [];
  const least = leastPitch(recipe, outline, pair);
  const worst = lowest(least);
  const short = tooNear(least, pitch);
  if (!worst || !(short.x || short.y)) return [];
  const text: Text = (mm) => lengthText(mm, recipe.units);
  const room = (mm: number): string => text(inwards(mm, recipe.units, Math.ceil));
  const clears = deepestOf(least.met.map((s) => s.cut)).deep + neighbours + AIR;
  const row = short.x && short.y ? '' : ` in a row along ${short.x ? 'x' : 'y'}`;
  const what =
    pitch === null
      ? 'and meets it when the pieces are near each other'
      : `and meets it at a pitch of ${text(pitch)}${row}`;
  const pitches = [
    ...(short.x ? [`${room(least.x)} along x`] : []),
    ...(short.y ? [`${room(least.y)} along y`] : []),
  ].join(' or ');
  return [
    {
      code: 'collet-meets-neighbour',
      severity: pitch === null || !(short.x && short.y) ? 'note' : 'warn',
      where: null,
      zone: { areas: reached({ recipe, outline, pair }, least, pitch, short) },
      numbers: {
        above: worst.above,
        neighbours,
        ...(pitch === null ? {} : { pitch }),
        leastPitchX: least.x,
        leastPitchY: least.y,
        clears,
      },
      do: `${atFullDepth(worst, text)} the collet nut is ${aboveText(worst.above, text)}, lower than the uncut wood beside it (${text(neighbours)}), ${what}. From middle to middle leave at least ${pitches}; or let ${toolWords(least.met.map((s) => s.name))} stand out ${room(clears)}.`,
    },
  ];
}

/** Pieces so near to each other that they cannot all be cut out, in whichever direction they follow each other. */
function overlap({ recipe, outline: { box }, pair, outline }: Setup): Finding[] {
  const { pitch } = recipe.table;
  if (pitch === null || pair.pocket.contours.length === 0) return [];
  const least = ownPitch(recipe, outline);
  if (pitch >= Math.min(least.x, least.y) - 1e-9) return [];
  const text: Text = (mm) => lengthText(inwards(mm, recipe.units, Math.ceil), recipe.units);
  return [
    {
      code: 'pieces-overlap',
      severity: 'warn',
      where: null,
      numbers: { pitch, leastPitchX: least.x, leastPitchY: least.y },
      do: `At a pitch of ${lengthText(pitch, recipe.units)} pieces of ${text(box.maxX - box.minX)} by ${text(box.maxY - box.minY)} lie into each other or leave no slot between them. Set table.pitch to ${text(least.x)} along x or ${text(least.y)} along y, or more.`,
    },
  ];
}

/** The stand that is lowest over what it meets. */
export function lowest({ met }: Pitch): Stand | null {
  return met.length === 0 ? null : met.reduce((a, b) => (b.above < a.above ? b : a));
}

/** In which directions pieces at this pitch are too near; with no pitch known, in both. */
export function tooNear({ x, y }: Pitch, pitch: number | null): { readonly x: boolean; readonly y: boolean } {
  return { x: pitch === null || pitch < x - 1e-9, y: pitch === null || pitch < y - 1e-9 };
}

/** Where the axis must not get to: strips of its box at the ends towards a neighbour that is that near. */
function reached(
  { recipe, outline, pair }: Pick<Setup, 'recipe' | 'outline' | 'pair'>,
  { met }: Pitch,
  pitch: number | null,
  short: { readonly x: boolean; readonly y: boolean },
): Region {
  const { box } = outline;
  const radius = recipe.machine.collet / 2;
  const slot = 2 * (recipe.cutter.cuts ?? recipe.cutter.diameter);
  const strips = met.flatMap((stand): Box[] => {
    const axis = axisBox(recipe, pair, stand);
    if (!axis) return [];
    // With no pitch known the neighbour is taken to begin one cutter beyond the box.
    const x = (pitch ?? box.maxX - box.minX + slot / 2) - (box.maxX - box.minX) / 2 - radius;
    const y = (pitch ?? box.maxY - box.minY + slot / 2) - (box.maxY - box.minY) / 2 - radius;
    return [
      ...(short.x
        ? [
            { ...axis, minX: Math.max(axis.minX, x) },
            { ...axis, maxX: Math.min(axis.maxX, -x) },
          ]
        : []),
      ...(short.y
        ? [
            { ...axis, minY: Math.max(axis.minY, y) },
            { ...axis, maxY: Math.min(axis.maxY, -y) },
          ]
        : []),
    ].filter((b) => b.minX < b.maxX && b.minY < b.maxY);
  });
  return {
    contours: strips.map((b) =>
      polygon([
        [b.minX, b.minY],
        [b.maxX, b.minY],
        [b.maxX, b.maxY],
        [b.minX, b.maxY],
      ]),
    ),
  };
}
