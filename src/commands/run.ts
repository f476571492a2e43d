import { Command, CommanderError } from 'commander';
import { quietPipes, reportError } from '../disk/report.js';
import type { Parameter } from '../schema/parameter.js';
import type { AdoptOptions } from './adopt-recipe.js';
import type { BowlOptions } from './bowl.js';
import type { CouponOptions } from './coupon-options.js';
import {
  ADOPT_EXAMPLES,
  BOWL_EXAMPLES,
  COUPON_EXAMPLES,
  EXAMPLES,
  LETTER_EXAMPLES,
  MAKE_EXAMPLES,
  PROVE_EXAMPLES,
  RECORD_EXAMPLES,
  SERVE_EXAMPLES,
} from './examples.js';
import type { NextOptions, RecordOptions } from './fit-options.js';
import type { InspectOptions } from './inspect.js';
import type { LetterOptions } from './letter-recipe.js';
import type { LimitsOptions } from './limits.js';
import type { MakeOptions } from './make.js';
import type { ProveOptions } from './prove.js';
import type { ServeOptions } from './serve.js';
import { version } from './version.js';

/** Exit codes: 0 made and proven; 1 refused, or an internal error; 2 bad input or usage. */
const USAGE = 2;

/** Runs the command line and returns the exit code. Writes results to stdout and messages to stderr. */
export async function run(args: readonly string[]): Promise<number> {
  quietPipes();
  let code = 0;
  const program = new Command('inlaywright')
    .description(
      'Draws through inlays that a round cutter can really cut, pocket and plug, and proves the drawings.',
    )
    .version(version())
    .exitOverride()
    .configureOutput({ outputError: (text, write) => write(text.replace(/^error: /, 'inlaywright: ')) })
    .addHelpText('after', EXAMPLES);

  program
    .command('make')
    .description('make pocket and plug drawings from recipes')
    .argument('<recipe...>', 'recipe files (JSON)')
    .option('-o, --out <folder>', 'folder that gets a folder for each piece', 'out')
    .option('-s, --set <key=value>', 'change a value of the recipe; may be given again', collect, [])
    .option('--parts <numbers>', 'lay out only these spoiled parts of a loose plug again: 7,12')
    .option('--threads <n>', 'how many pieces are made at a time (default: one for each core)')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', MAKE_EXAMPLES)
    .action(async (recipes: string[], options: MakeOptions) => {
      const { make } = await import('./make.js');
      code = await make(recipes, options);
    });

  program
    .command('bowl')
    .description('make a staved vessel: stave drawings, jigs, models, pictures, sheets and a coupon')
    .argument('<recipe>', 'recipe file (JSON) with a bowl in it')
    .option('-o, --out <folder>', 'folder that gets a folder for the vessel, and one for its coupon', 'out')
    .option('-s, --set <key=value>', 'change a value of the recipe; may be given again', collect, [])
    .option('--no-coupon', 'leave the coupon out')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', BOWL_EXAMPLES)
    .action(async (recipe: string, options: BowlOptions) => {
      const { makeBowl } = await import('./bowl.js');
      await makeBowl(recipe, options);
    });

  program
    .command('serve')
    .description('show recipes on a page of this machine, to turn them and make them there')
    .argument('[path]', 'a recipe to open, or the folder to serve', '.')
    .option('-o, --out <folder>', 'folder that gets a folder for each piece', 'out')
    .option('--port <number>', 'port of the page (default: any that is free)')
    .option('--no-open', 'print the address and open no browser')
    .addHelpText('after', SERVE_EXAMPLES)
    .action(async (path: string, options: ServeOptions) => {
      const { serve } = await import('./serve.js');
      await serve(path, options);
    });

  program
    .command('inspect')
    .description('tell what would spoil the piece, worst first, before any wood is cut')
    .argument('<recipe>', 'recipe file (JSON)')
    .option('-s, --set <key=value>', 'change a value of the recipe; may be given again', collect, [])
    .option('--picture <file>', 'draw the findings on the piece: a .png or .svg file')
    .option('--json', 'print the result as JSON')
    .action(async (recipe: string, options: InspectOptions) => {
      const { inspectRecipe } = await import('./inspect.js');
      await inspectRecipe(recipe, options);
    });

  program
    .command('limits')
    .description('show what each stock cutter loses of a recipe, and how small it may be drawn')
    .argument('<recipe>', 'recipe file (JSON)')
    .option('-s, --set <key=value>', 'change a value of the recipe; may be given again', collect, [])
    .option('--json', 'print the result as JSON')
    .action(async (recipe: string, options: LimitsOptions) => {
      const { showLimits } = await import('./limits.js');
      code = await showLimits(recipe, options);
    });

  program
    .command('prove')
    .description('measure whether a cutter can cut a drawing, from any source; or how a plug fits its pocket')
    .argument('<file>', 'SVG or DXF file of closed outlines; with a second one, the pocket')
    .argument('[plug]', 'SVG or DXF file of the plug')
    .option('--cutter <diameter>', 'diameter of the cutter', '1/8in')
    .option('--as <part>', 'pocket: cut inside its outlines; plug: outside (default: what it is, or pocket)')
    .option('--units <unit>', "mm or in: unit of bare numbers and of what is printed (default: the file's)")
    .option('--clearance <length>', 'gap per side that the two should have')
    .option('--join <length>', 'ends of lines nearer than this are joined (default: 0.05mm)')
    .option('--mirrored', 'the plug is drawn mirrored, for a carrier')
    .option('--picture <file>', 'draw the tightest places, or the gap all round: a .png or .svg file')
    .option('--json', 'print the result as JSON, lengths in mm')
    .addHelpText('after', PROVE_EXAMPLES)
    .action(async (file: string, plug: string | undefined, options: ProveOptions) => {
      const { proveFiles } = await import('./prove.js');
      code = await proveFiles(file, plug, options);
    });

  const letterCommand = program
    .command('letter')
    .description('make a text into pocket and plug, on a face that just holds it')
    .argument('<text>', 'the text; \\n starts a new line')
    .option('-o, --out <folder>', 'folder that gets the recipe and a folder for the piece', 'out')
    .option('--cutter <diameter>', 'diameter of the cutter', '1/8in')
    .option('--units <unit>', 'mm or in: unit of bare numbers and of the drawings', 'mm')
    .option('--margin <length>', 'wood left plain round the letters')
    .option('--width <length>', 'width of the face, if not just large enough')
    .option('--depth <length>', 'how deep the pocket is cut')
    .option('--name <name>', 'name of the piece, if not made from the text')
    .option('--replace', 'replace a recipe of that name that differs')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', LETTER_EXAMPLES)
    .action(async (text: string, options: LetterOptions) => {
      const { letter } = await import('./letter.js');
      code = await letter(text, options);
    });
  // Their parameters are those of generators, which take a moment to load: no other command waits for them.
  const letterParameters = args.includes('letter')
    ? (await import('./letter-recipe.js')).letterParameters
    : [];
  for (const p of letterParameters)
    letterCommand.option(
      p.kind === 'flag' ? (p.default ? `--no-${p.name}` : `--${p.name}`) : `--${p.name} <${p.kind}>`,
      p.meaning,
    );

  const adoptCommand = program
    .command('adopt')
    .description('make a drawing of your own into pocket and plug, on a face that just holds it')
    .argument('<file>', 'SVG or DXF file')
    .option('-o, --out <folder>', 'folder that gets recipe, drawing and a folder for the piece', 'out')
    .option('--cutter <diameter>', 'diameter of the cutter', '1/8in')
    .option('--units <unit>', 'mm or in: unit of bare numbers and of the drawings', 'mm')
    .option('--width <length>', "width of the figure, if not the drawing's own")
    .option('--margin <length>', 'wood left plain round the figure')
    .option('--depth <length>', 'how deep the pocket is cut')
    .option('--thin <how>', 'limbs thinner than the cutter: widen, drop or refuse', 'widen')
    .option('--name <name>', "name of the piece, if not the file's")
    .option('--replace', 'replace a recipe or drawing of that name that differs')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', ADOPT_EXAMPLES)
    .action(async (file: string, options: AdoptOptions) => {
      const { adopt } = await import('./adopt.js');
      code = await adopt(file, options);
    });
  const adoptParameters = args.includes('adopt') ? (await import('./adopt-recipe.js')).adoptParameters : [];
  for (const p of adoptParameters) adoptCommand.option(`--${p.name} <${valueName(p)}>`, p.meaning);

  program
    .command('list')
    .description('list the pattern generators, or the parameters of one')
    .argument('[generator]', 'name of a generator')
    .option('--json', 'print the list as JSON')
    .option('--pictures <folder>', 'write a picture of each generator, or of the one named, to a folder')
    .action(async (name: string | undefined, options: { json?: boolean; pictures?: string }) => {
      const { list } = await import('./list.js');
      if (options.pictures === undefined) return list(name, options.json === true);
      const { pictures } = await import('./pictures.js');
      await pictures(name, options.pictures);
    });

  program
    .command('coupon')
    .description('make a small trial piece that finds the clearance: the hard spots of a recipe, once a step')
    .argument('<recipe>', 'recipe file (JSON)')
    .option('-o, --out <folder>', 'folder that gets a folder for the coupon', 'out')
    .option('-s, --set <key=value>', 'change a value of the recipe; may be given again', collect, [])
    .option('--size <length>', 'most width and height of the figure in each step (default: 40mm)')
    .option('--from <length>', 'tightest clearance per side (default: 0.04mm)')
    .option('--to <length>', 'loosest clearance per side (default: 0.2mm)')
    .option('--steps <n>', 'number of steps, 1 to 9 (default: 5)')
    .option('--ladder <lengths>', 'clearance of each step instead: 0.05,0.08,0.11')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', COUPON_EXAMPLES)
    .action(async (recipe: string, options: CouponOptions) => {
      const { makeCoupon } = await import('./coupon.js');
      await makeCoupon(recipe, options);
    });

  const fit = program
    .command('fit')
    .description('keep a log of trial fits, and find the clearance with few of them');
  fit
    .command('record')
    .description('add the result of one trial to the log beside the recipe')
    .argument('<recipe>', 'recipe file (JSON)')
    .option('--step <n>', 'step of the coupon, from 1')
    .option('--clearance <length>', 'clearance per side, instead of a step: 0.08mm')
    .option('--result <how>', 'cracked, tight, good, loose or gappy')
    .option('--tried <how>', 'dry or glued')
    .option(
      '--ladder <lengths>',
      'clearances of the steps, if not those of the coupon last drawn: 0.06,0.08,0.1',
    )
    .option('--moisture <percent>', 'moisture content of the wood')
    .option('--date <day>', 'day of the trial, YYYY-MM-DD')
    .option('--note <text>', 'anything worth knowing')
    .option('--json', 'print the result as JSON')
    .addHelpText('after', RECORD_EXAMPLES)
    .action(async (recipe: string, options: RecordOptions) => {
      const { record } = await import('./fit.js');
      record(recipe, options);
    });
  fit
    .command('next')
    .description('say which clearances to try next, or which to use')
    .argument('<recipe>', 'recipe file (JSON)')
    .option('--steps <n>', 'steps of the next coupon (default: 5)')
    .option('--repeatability <length>', 'what the machine repeats (default: 0.02mm)')
    .option('--json', 'print the result as JSON')
    .action(async (recipe: string, options: NextOptions) => {
      const { next } = await import('./fit.js');
      next(recipe, options);
    });

  try {
    await program.parseAsync(args, { from: 'user' });
    return code;
  } catch (e) {
    if (e instanceof CommanderError) return e.exitCode === 0 ? 0 : USAGE;
    return reportError(e);
  }
}

function collect(value: string, before: string[]): string[] {
  return [...before, value];
}

/** What an option's value is called in the help. */
function valueName(p: Parameter): string {
  return p.kind === 'choice' ? p.options.map((o) => o.value).join('|') : p.kind;
}
