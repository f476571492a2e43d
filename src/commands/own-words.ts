import { BadInput, type Fault, Refusal } from '../schema/fault.js';

/** The paths of a recipe that an option sets, and the option. */
export type OptionOf = ReadonlyMap<string, string>;

/** Runs `work`; what it says of the recipe's paths is said of the options instead. */
export async function inOwnWords<T>(optionOf: OptionOf, work: () => T | Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (e) {
    if (e instanceof BadInput) throw new BadInput(e.faults.map((f) => ownFault(f, optionOf)));
    if (e instanceof Refusal) throw new Refusal(e.code, ownText(e.message, optionOf), e.at);
    throw e;
  }
}

/** A fault keeps the place in a file that it names, unless that file is the recipe that nobody wrote. */
function ownFault({ where, message, source }: Fault, optionOf: OptionOf): Fault {
  const own = { where: optionOf.get(where) ?? where, message: ownText(message, optionOf) };
  return source === undefined || source.startsWith(UNWRITTEN) ? own : { ...own, source };
}

/** Stands for the file of a recipe that was made up from options. */
export const UNWRITTEN = 'recipe made of options';

function ownText(text: string, optionOf: OptionOf): string {
  let own = text;
  for (const [path, option] of optionOf) if (path.includes('.')) own = own.replaceAll(path, option);
  return own;
}
