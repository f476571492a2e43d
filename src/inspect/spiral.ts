import { type Recipe, standsProud } from '../recipe/recipe.js';
import { inwards, lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { cutsOf, deepestOf, isThrough, type NamedTool, toolsOf, toolWords } from './sums/machine/cuts.js';

/** What the spiral of the flutes does to the faces and to the chips. */
export function spiral(setup: Setup): Finding[] {
  if (setup.pair.pocket.contours.length === 0) return [];
  return [...upCut(setup), ...downCut(setup), ...compression(setup)];
}

/** Of what stands proud so much is planed off that a frayed edge goes with it, mm. Common practice, no source. */
const PLANED = 0.5;

/** Up-cut flutes lift fibres along the upper edge. It is the finishing cutter that leaves the edge, so it alone counts. */
function upCut({ recipe }: Setup): Finding[] {
  if (recipe.cutter.spiral !== 'up' || recipe.table.topTape) return [];
  return [
    {
      code: 'frayed-face',
      severity: 'note',
      where: null,
      numbers: {},
      do: `Up-cut flutes lift fibres along the pocket's edge on the face that shows. Tape on top (table.topTape) keeps them down, or a down-cut for the first millimetre or two. ${plugEdge(recipe)}`,
    },
  ];
}

/** Where the edge that frays on the plug ends up. */
function plugEdge(recipe: Recipe): string {
  const { fit, units } = recipe;
  if (fit.face === 'down')
    return isThrough(recipe)
      ? 'The plug goes in with its frayed edge down, where it shows on the other face: tape it too.'
      : 'The plug goes in with its frayed edge down, unseen as long as there is wood under the pocket.';
  const proud = standsProud(recipe);
  return proud >= PLANED - 1e-9
    ? `The plug's own frayed edge is planed off with the ${lengthText(proud, units)} that stand proud.`
    : 'The plug stands too little proud to plane its own frayed edge off: tape it too.';
}

/** In slots deeper than this many diameters a down-cut packs its chips. Common practice, no source. */
const PACKS = 2;

/** Down-cut flutes press the chips into the slot, and lift fibres where they come out below. */
function downCut({ recipe, pair }: Setup): Finding[] {
  const downs = toolsOf(recipe).filter(({ tool }) => tool.spiral === 'down');
  if (downs.length === 0) return [];
  const text = (mm: number): string => lengthText(mm, recipe.units);
  const cut = deepestOf(cutsOf(recipe, pair));
  const packs = downs.filter(({ tool }) => cut.deep > PACKS * tool.diameter + 1e-9);
  const out: Finding[] = [];
  if (packs.length > 0) {
    const least = Math.min(...packs.map(({ tool }) => tool.diameter));
    out.push({
      code: 'down-cut-packs',
      severity: 'warn',
      where: null,
      numbers: { depth: cut.deep, diameter: least, most: PACKS * least },
      do: `Danger of fire: the down-cut flutes of ${words(packs)} press chips into a slot ${text(cut.deep)} deep, where they pack and heat; over 2 diameters (${text(PACKS * least)}) they do not get out. Use it for the first millimetres only, then an up-cut with a jet of air, and do not leave the machine alone.`,
    });
  }
  if (isThrough(recipe) && recipe.cutter.spiral === 'down')
    out.push({
      code: 'frayed-below',
      severity: 'note',
      where: null,
      numbers: {},
      do: "Down-cut flutes lift fibres along the pocket's lower edge, which shows on the other face. Press the wood flat onto a fresh board, with tape between them.",
    });
  return out;
}

/** A compression cutter lifts fibres as an up-cut does as long as its tip, about one diameter, is not below the face. */
function compression({ recipe, pair }: Setup): Finding[] {
  if (recipe.table.topTape) return [];
  const { passes } = recipe;
  const text = (mm: number): string => lengthText(mm, recipe.units);
  const { deep } = cutsOf(recipe, pair)[0];
  return toolsOf(recipe).flatMap((named): Finding[] => {
    const { name, tool } = named;
    const step = Math.min(deep, name === 'roughing' ? passes.roughingStep : (passes.finishingStep ?? deep));
    if (tool.spiral !== 'compression' || step >= tool.diameter - 1e-9) return [];
    return [
      {
        code: 'compression-shallow',
        severity: 'note',
        where: null,
        numbers: { step, diameter: tool.diameter },
        do: `The first pass of ${words([named])} goes ${text(step)} deep, less than the up-cut tip of its compression flutes (about one diameter): it frays the face as an up-cut does. Make that pass ${text(inwards(tool.diameter, recipe.units, Math.ceil))} deep or more, or tape the face (table.topTape).`,
      },
    ];
  });
}

function words(tools: readonly NamedTool[]): string {
  return toolWords(tools.map((t) => t.name));
}
