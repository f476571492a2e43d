/**
 * What each room of src/ may import from the others. Rooms depend downward only. `name: 'types'` allows
 * `import type` and no more. A file straight in src/ is a room of its own, named after the file.
 * @type {Readonly<Record<string, Readonly<Record<string, 'all' | 'types'>>>>}
 */
export const ROOMS = {
  schema: {},
  geometry: {},
  proof: {},
  shop: all('schema'),
  outline: all('geometry', 'schema'),
  generators: all('outline', 'geometry', 'schema'),
  /** Staves, walls and shells as sums: a recipe's reader needs them for the outline of a stave. */
  bowl: all('geometry', 'schema'),
  recipe: all('bowl', 'generators', 'outline', 'shop', 'geometry', 'schema'),
  /** Solid models of vessels. */
  solid: all('bowl', 'geometry', 'schema'),
  cutter: all('geometry', 'schema'),
  fit: { ...all('cutter', 'geometry', 'schema'), recipe: 'types' },
  inspect: all('bowl', 'fit', 'cutter', 'recipe', 'outline', 'shop', 'geometry', 'schema'),
  output: {
    ...all('bowl', 'inspect', 'fit', 'cutter', 'recipe', 'outline', 'shop', 'geometry', 'schema'),
    proof: 'types',
  },
};

const BELOW_BUILD = Object.keys(ROOMS).filter((room) => room !== 'proof');

/** The rooms that put the others together, and the entry points. */
export const TOP = {
  composed: all(...BELOW_BUILD),
  build: all(...BELOW_BUILD, 'composed'),
  limits: all(...BELOW_BUILD),
  coupon: all(...BELOW_BUILD, 'build'),
  proven: all(...Object.keys(ROOMS)),
  staved: all(...Object.keys(ROOMS), 'proven'),
  /** Recipes, fonts and drawings from the disk; pieces' folders to it. */
  disk: all(...Object.keys(ROOMS)),
  /** What page and server send each other. */
  wire: {},
  serve: all(...Object.keys(ROOMS), 'build', 'proven', 'staved', 'disk', 'wire'),
  page: all(...Object.keys(ROOMS), 'composed', 'build', 'limits', 'coupon', 'wire'),
  commands: all(...Object.keys(ROOMS), 'build', 'limits', 'coupon', 'proven', 'staved', 'disk', 'serve'),
  index: all(...Object.keys(ROOMS), 'build', 'limits', 'coupon', 'proven', 'staved'),
  cli: all('commands'),
};

/** The only rooms that may touch the machine: node:* modules, the process, the clock. */
export const HOST = new Set(['commands', 'serve', 'disk', 'cli']);

function all(...names) {
  return Object.fromEntries(names.map((name) => [name, 'all']));
}
