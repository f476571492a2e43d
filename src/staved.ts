import { type Jig, jigsOf } from './bowl/jig.js';
import { makeVessel, type Vessel } from './bowl/vessel.js';
import { workOf } from './bowl/work.js';
import { jigFiles } from './output/jig-drawing.js';
import type { Files, Job } from './output/job.js';
import type { Renderer } from './output/renderer.js';
import { vesselSheet } from './output/vessel-sheet.js';
import { DARK, PALE, woodOr } from './output/wood-looks.js';
import { certifyDrawing, readSvg } from './proof/index.js';
import { type Proven, proven } from './proven.js';
import { cornerRadius, cutterRadius } from './recipe/recipe.js';
import { BadInput, Refusal } from './schema/fault.js';
import { glb } from './solid/glb.js';
import type { Kernel, Mesh } from './solid/kernel.js';
import { elevation, plan, type Raster, type Seen, unrolled } from './solid/picture.js';
import { png } from './solid/png.js';
import { stl } from './solid/stl.js';
import { stockOf } from './solid/stock.js';
import { type Body, type VesselModel, vesselModel } from './solid/vessel.js';

/** Steps of the work, as they begin. */
export type StavedStep = 'drawing' | 'proving' | 'modelling';

/** Width of the pictures, pixels. */
const WIDE = 900;
const UNROLLED = 1600;

/**
 * Everything for a vessel: the proven drawings of one inlaid stave, jigs, models, stock, pictures and the sheet; job.json
 * last. Throws BadInput for a recipe without a bowl, Refusal when a drawing does not pass its proof.
 */
export async function staved(
  job: Job,
  renderer: Renderer,
  kernel: Kernel,
  tell: (step: StavedStep) => void,
): Promise<Proven> {
  const { recipe } = job;
  if (!recipe.bowl)
    throw new BadInput([
      {
        where: 'bowl',
        message:
          'is missing: this recipe is of a flat piece, which inlaywright make makes; a vessel has "bowl": { "sides": 12, "height": 90, "outside": { ... } }',
      },
    ]);
  const { files, proofs } = proven(job, renderer, tell);
  tell('modelling');
  const vessel = makeVessel(recipe.bowl);
  const work = workOf(vessel);
  const jigs = jigsOf(vessel, cornerRadius(recipe.cutter));
  const model = vesselModel(kernel, {
    vessel,
    field: recipe.woods.field,
    figures: job.inlays.map(({ wood, pair }) => ({ wood, region: pair.pocket })),
    foot: recipe.depth - recipe.fit.glueGap,
  });
  const seen = (bodies: readonly Body[]): Seen[] =>
    bodies.map((b) => ({ mesh: b.mesh, colour: colourOf(job, b) }));
  const pictures = (vessel.stave.sides === 1 ? ofPlate : ofVessel)(vessel, model, seen).map(
    ({ file, title, raster }) => ({ file, title, png: png(raster) }),
  );
  const [job_, ...rest] = [...files].reverse();
  const whole: Files = new Map<string, string | Uint8Array>([
    ...rest.reverse(),
    ...jigDrawings(job, jigs),
    ...pictures.map((p) => [p.file, p.png] as const),
    ['vessel.glb', await glb(coloured(job, model.bodies), recipe.name)],
    ...model.bodies.map((b, k): [string, Uint8Array] => [
      k === 0 ? 'vessel-field.stl' : `vessel-inlay-${k}.stl`,
      stl([b.mesh], `${recipe.name} ${b.name}, ${b.wood}, mm`),
    ]),
    ...stockFiles(job, vessel, work.fillers, kernel),
    ['vessel.html', vesselSheet({ job, vessel, work, jigs, pictures })],
    job_!,
  ]);
  return { files: whole, proofs };
}

interface Picture {
  readonly file: string;
  readonly title: string;
  readonly raster: Raster;
}

/** A flat board has no wall to unroll or to look at level: it is looked at from above and below. */
function ofPlate(_: Vessel, { bodies }: VesselModel, seen: Look): Picture[] {
  return [
    { file: 'vessel-inside.png', title: 'From above', raster: plan(seen(bodies), 'above', WIDE) },
    { file: 'vessel-outside.png', title: 'From below', raster: plan(seen(bodies), 'below', WIDE) },
  ];
}

function ofVessel({ wall }: Vessel, { bodies, cutAway }: VesselModel, seen: Look): Picture[] {
  const { outside } = wall;
  const radius = outside.radius((outside.from + outside.to) / 2);
  return [
    { file: 'vessel-outside.png', title: 'Outside', raster: elevation(seen(bodies), WIDE) },
    {
      file: 'vessel-inside.png',
      title: 'Inside, cut through the middle',
      raster: elevation(seen(cutAway), WIDE),
    },
    ...(['outside', 'inside'] as const).map((face) => ({
      file: `unrolled-${face}.png`,
      title: `Unrolled, ${face}`,
      raster: unrolled(seen(bodies), face, radius, UNROLLED),
    })),
  ];
}

type Look = (bodies: readonly Body[]) => Seen[];

function colourOf({ recipe }: Job, body: Body): string {
  return woodOr(body.wood, body.name === 'field' ? PALE : DARK, recipe.woods.own).colour;
}

function coloured(job: Job, bodies: readonly Body[]): { name: string; mesh: Mesh; colour: string }[] {
  return bodies.map((b) => ({ name: `${b.name}, ${b.wood}`, mesh: b.mesh, colour: colourOf(job, b) }));
}

/** The jigs' drawings, once they were read back and the cutter was found to get everywhere in them. */
function jigDrawings({ recipe }: Job, jigs: readonly Jig[]): [string, string][] {
  return jigs.flatMap((jig, k): [string, string][] => {
    const name = k === 0 ? 'jig-low' : 'jig-high';
    const { svg, dxf } = jigFiles(jig, `${recipe.name}: ${name}`, recipe.units);
    const proof = certifyDrawing(readSvg(svg), {
      radius: cutterRadius(recipe.cutter) - 0.0005,
      side: 'inside',
      top: 1,
    });
    if (!proof.holds)
      throw new Refusal(
        'proof-failed',
        `the drawing of ${name} does not pass its proof: ${proof.failures.join('; ')}. Nothing is written`,
      );
    return [
      [`${name}.svg`, svg],
      [`${name}.dxf`, dxf],
    ];
  });
}

function stockFiles(
  { recipe }: Job,
  vessel: Vessel,
  fillers: ReturnType<typeof workOf>['fillers'],
  kernel: Kernel,
): [string, Uint8Array][] {
  if (vessel.stave.sides === 1) return [];
  const stock = stockOf(kernel, vessel, fillers);
  const of = (what: string): string => `${recipe.name} ${what}, mm`;
  return [
    ['stock-stave.stl', stl([stock.stave], of('stave'))],
    ...stock.fillers.map((m, k): [string, Uint8Array] => [
      `stock-block-${k + 1}.stl`,
      stl([m], of(`block ${k + 1}`)),
    ]),
    ['stock-shell.stl', stl([stock.shell], of('shell'))],
  ];
}
