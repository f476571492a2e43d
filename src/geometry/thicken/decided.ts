import { Undecided } from '../fault.js';

/** The result, or null where the kernel could not decide it: where too many boundaries all but coincide. */
export function decided<T>(make: () => T): T | null {
  try {
    return make();
  } catch (e) {
    if (e instanceof Undecided) return null;
    throw e;
  }
}
