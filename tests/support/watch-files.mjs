import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

const LOOKS = ['readFileSync', 'readdirSync', 'lstatSync', 'statSync', 'existsSync', 'realpathSync'];
const CHANGES = [
  ...['writeFileSync', 'appendFileSync', 'mkdirSync', 'rmSync', 'rmdirSync', 'unlinkSync', 'truncateSync'],
  ...['renameSync', 'copyFileSync', 'linkSync', 'symlinkSync', 'cpSync', 'chmodSync'],
];

/**
 * From now on notes each path outside `folder` that this process looks at, and stops each change there. The library's own
 * files, in `home` (a URL), may be looked at. Returns the list, which grows.
 */
export function watchFiles(folder, home) {
  const outside = [];
  const root = fileURLToPath(home);
  const own = [root, fs.realpathSync(join(root, 'node_modules'))];
  const below = (path, top) => path === top || path.startsWith(top.endsWith(sep) ? top : top + sep);
  const check = (path, changes) => {
    if (typeof path !== 'string') return;
    const place = resolve(path);
    if (below(place, folder) || (!changes && own.some((top) => below(place, top)))) return;
    outside.push(`${changes ? 'changes' : 'reads'} ${place}`);
    if (changes) throw new Error(`stopped: ${place} is outside`);
  };
  const wrap = (key, before) => {
    const real = fs[key];
    fs[key] = Object.assign((...args) => {
      before(args);
      return real(...args);
    }, real);
  };
  for (const key of LOOKS) wrap(key, ([path]) => check(path, false));
  for (const key of CHANGES)
    wrap(key, ([a, b]) => {
      check(a, true);
      if (/^(rename|copy|link|cp)/.test(key)) check(b, true);
    });
  wrap('openSync', ([path, flags = 'r']) =>
    check(path, typeof flags === 'string' ? flags !== 'r' : (flags & (fs.constants.O_WRONLY | fs.constants.O_RDWR | fs.constants.O_CREAT)) !== 0),
  );
  syncBuiltinESMExports();
  return outside;
}
