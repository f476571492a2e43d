import { describe, expect, it } from 'vitest';
import { planOf } from '../../src/inspect/sums/plan/plan.js';
import { reachBlock } from '../../src/output/sheet-reach.js';
import { settingsBlock } from '../../src/output/sheet-settings.js';
import { workOrder } from '../../src/output/work-order.js';
import type { Recipe } from '../../src/recipe/recipe.js';
import { CARRIER, sampleJob, sampleRecipe } from './sample-job.js';

const order = (change: Partial<Recipe> = {}) => workOrder(sampleJob(change));
const items = (title: string, change: Partial<Recipe> = {}): string =>
  order(change)
    .filter((g) => g.title === title)
    .flatMap((g) => g.items)
    .join('\n');
const plain = (html: string): string => html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');

describe('the order of work', () => {
  it('goes from the boards to the last coat', () => {
    expect(order().map((g) => g.title)).toEqual([
      'Material',
      'Cutters',
      'Set-up',
      'Pocket',
      'Plug',
      'Dry fit',
      'Glue and press',
      'Flush',
      'Sand and finish',
    ]);
  });

  it('takes one wood after the other, and the back last of all', () => {
    const job = sampleJob();
    const [inlay] = job.inlays;
    const groups = workOrder({ ...job, inlays: [inlay!, { ...inlay!, wood: 'teak' }] });
    const titles = groups.map((g) => g.title);
    expect(titles.slice(3, 13)).toEqual(
      ['1. black walnut', '2. teak'].flatMap((w) =>
        ['pocket', 'plug', 'dry fit', 'glue and press', 'flush'].map((t) => `${w}: ${t}`),
      ),
    );
    const back = groups.filter((g) => g.items.join(' ').includes('show the figure on the back'));
    expect(back.map((g) => g.title)).toEqual(['2. teak: flush']);
  });

  it('carries the job’s quantities', () => {
    // A face of 96 mm; stock 11 and 12.
    expect(items('Material')).toContain('white ash, 11 mm thick, at least 96 mm by 96 mm');
    expect(items('Material')).toContain('8 % in the field and 8 % in the plug');
    expect(items('Cutters')).toContain('Roughing: 6.35 mm, 2 flutes, up-cut, carbide');
    expect(items('Cutters')).toContain('the drawing reckons with 3.19 mm');
    // 8 mm in steps of at most 6.35.
    expect(items('Pocket')).toMatch(/Roughing: 6\.35 mm cutter, 2 steps of 4 mm, leaving 0\.3 mm/);
    expect(items('Pocket')).toMatch(/Finishing: 3\.175 mm cutter, 8 mm in one pass/);
    // Through 12 mm and 0.5 mm into the board: twice 6.25.
    expect(items('Plug')).toMatch(/Roughing: 6\.35 mm cutter, 2 steps of 6\.25 mm/);
    expect(items('Set-up')).toContain('run 0.5 mm into the board');
  });

  it('takes the times from the recipe', () => {
    const times = { glueOpen: 9, glueSet: 30, coats: 4, coatDry: 6 };
    expect(items('Glue and press', { times })).toContain('there are 9 minutes');
    expect(items('Glue and press', { times })).toContain('30 hours');
    expect(items('Sand and finish', { times })).toContain('4 coats of finish, 6 hours each to dry: 24 hours');
    expect(items('Sand and finish', { times: { ...times, coats: 0 } })).toContain('No finish');
  });

  it('says both datums of a mirrored plug, and of an onion skin what is left and sanded', () => {
    const carrier = { fit: CARRIER, stock: { field: 11, plug: 16 } };
    expect(items('Set-up', carrier)).toContain('mirrored drawing the datum is at the lower right');
    expect(items('Set-up')).not.toContain('lower right');
    const table = { ...sampleRecipe().table, onionSkin: 0.4 };
    expect(items('Plug', { table })).toContain('stopping 0.4 mm above the lower face; sand that skin off');
    // Nothing then goes through, on the sheet as on the machine.
    expect(items('Plug', { table })).not.toContain('right through');
    expect(items('Plug')).toContain('right through its wood');
    expect(items('Set-up', { table })).not.toContain('into the board');
    expect(items('Plug', { table })).toContain('2 steps of 5.8 mm');
    // 12 - 0.4 - (8 - 0.5) stand proud.
    expect(items('Flush', { table })).toContain('Plane off the 4.1 mm');
    expect(items('Flush')).toContain('Plane off the 4.5 mm');
  });

  it('keeps hands, rags and dust in mind', () => {
    expect(items('Glue and press')).toContain('Hands clear');
    expect(items('Sand and finish')).toContain('catch fire');
    expect(items('Set-up')).toContain('eyes and ears covered');
  });
});

describe('cutters and settings', () => {
  const job = sampleJob();
  const rows = settingsBlock(job).match(/<tr>.*?<\/tr>/gs)!;
  const { stages } = planOf(job.recipe, job.outline, job.pair);

  it('have a row a stage with its cutter, steps, turns, feed and chip', () => {
    expect(rows.length).toBe(1 + stages.length);
    stages.forEach((s, k) => {
      const row = plain(rows[k + 1]!);
      expect(row.toLowerCase()).toContain(`${s.part} ${s.name}`);
      expect(row).toContain(`${s.tool.diameter} mm`);
      expect(row).toContain(` ${s.rpm} `);
      expect(row).toContain(`${Math.round(s.feed)} mm/min`);
      const fine = (mm: number): number => Number(mm.toFixed(3));
      const { least, most, real } = s.chip;
      expect(row).toContain(`${real === null ? '' : fine(real)} (${fine(least)} to ${fine(most)} mm)`);
    });
  });

  it('say that they are estimates, with formula and source', () => {
    const text = plain(settingsBlock(job));
    for (const part of ['Estimates', 'Feed = rpm × flutes × chip load', 'published', 'nothing is published'])
      expect(text).toContain(part);
    expect(plain(settingsBlock(sampleJob({ units: 'in' })))).toMatch(/in\/min.* in\)/);
  });
});

it('the table of where cutters get to has the recipe’s own two on the sheet', () => {
  const text = plain(reachBlock(sampleJob()));
  expect(text).toMatch(/3\.175 mm 100 % .*finishing cutter, no allowance/);
  expect(text).toMatch(/6\.35 mm [\d.]+ % .*roughing cutter/);
  expect(text).not.toContain('4 mm');
});
