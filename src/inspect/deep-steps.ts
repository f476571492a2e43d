import { lengthText, numberText } from '../schema/units.js';
import { equalSteps } from '../shop/passes.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';
import { upperFirst } from './stage-words.js';
import { planOf } from './sums/plan/plan.js';

/** A step that much deeper than the cutter is wide is the same, mm. */
const SAME = 1e-6;

/** Roughing passes deeper than the cutter is wide. Common practice, no source: one diameter at most. */
export function deepSteps({ recipe, outline, pair }: Setup): Finding[] {
  const { units } = recipe;
  const deep = planOf(recipe, outline, pair).stages.filter(
    (s) => s.name === 'roughing' && s.step > s.tool.diameter + SAME,
  );
  if (deep.length === 0) return [];
  const worst = deep.reduce((a, b) => (b.step > a.step ? b : a));
  const { depth, step, tool } = worst;
  const { steps } = equalSteps(depth, tool.diameter);
  const parts = deep.map((s) => `the ${s.part}`).join(' and ');
  return [
    {
      code: 'deep-steps',
      severity: 'warn',
      where: null,
      numbers: { step, diameter: tool.diameter, enoughStep: tool.diameter, enoughSteps: steps },
      do:
        `${upperFirst(`roughing ${parts}`)} goes ${lengthText(step, units)} deep a pass, ${numberText(step / tool.diameter, 1)} diameters of its cutter: it bends, packs chips in the slot, and may break. ` +
        `One diameter is usual: set passes.roughingStep to ${lengthText(tool.diameter, units)} or less, ${steps} passes.`,
    },
  ];
}
