import { Command, CommanderError } from 'commander';
import { type MakeOptions, make } from './make.js';
import { quietPipes, reportError } from './report.js';
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
    .option('--json', 'print the result as JSON')
    .addHelpText('after', MAKE_EXAMPLES)
    .action(async (recipes: string[], options: MakeOptions) => {
      code = await make(recipes, options);
    });

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

const EXAMPLES = `
Examples:
  inlaywright make patterns/tea-box-rosette.json
  inlaywright make my-lid.json --out pieces --set cutter.diameter=1/8in
  inlaywright list rosette

Exit codes: 0 made and proven, 1 cannot be cut as asked (nothing is written), 2 bad input or usage.`;

const MAKE_EXAMPLES = `
Examples:
  inlaywright make patterns/*.json
  inlaywright make lid.json --set fit.clearance=0.1 --set name=lid-looser

Each piece gets a folder with pocket and plug as SVG and DXF, pictures, a sheet to print and job.json.
It is written only when the drawings, read back, are proven to be cuttable and to fit.`;
