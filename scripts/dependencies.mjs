/**
 * `node scripts/dependencies.mjs`: checks what the lockfile brings in, and writes docs/dependencies.md, the packages
 * that are installed with this one and their licences. One line for each fault; exit code 1 if there is any.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ROOT } from './setup.mjs';

const LIST = join(ROOT, 'docs/dependencies.md');

/**
 * Licences under which a package may be installed with this one and passed on, by their SPDX names. MPL-2.0 asks that
 * changes to its own files stay open: none are made.
 */
const FREE = [
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BlueOak-1.0.0',
  'CC0-1.0',
  'ISC',
  'MIT',
  'MPL-2.0',
  'OFL-1.1',
];

/** Further ones for what only tests and builds use, which is passed on to nobody. */
const FOR_WORK = ['BSL-1.0', 'EDL-1.0', 'EPL-1.0', 'LGPL-3.0-or-later'];

/** @typedef {{ name: string, version: string, licence: string, dev: boolean, scripts: boolean, resolved?: string }} Package */

/** @returns {Package[]} by name, as the lockfile has them */
export function packages(lock = JSON.parse(readFileSync(join(ROOT, 'package-lock.json'), 'utf8'))) {
  return Object.entries(lock.packages)
    .filter(([path]) => path !== '')
    .map(([path, p]) => ({
      name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      version: p.version,
      licence: p.license ?? '',
      dev: p.dev === true || p.devOptional === true,
      scripts: p.hasInstallScript === true,
      ...(p.resolved ? { resolved: p.resolved } : {}),
    }))
    .sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}

/** Whether an SPDX expression is met: of names joined by OR one must be allowed, of names joined by AND each. */
export function allowed(expression, names) {
  return expression
    .replace(/[()]/g, '')
    .split(' OR ')
    .some((some) => some.split(' AND ').every((name) => names.includes(name)));
}

/** @returns {string[]} a line each: a licence that does not do, a script on installing, an address of one registry */
export function faults(list) {
  return list.flatMap(({ name, version, licence, dev, scripts, resolved }) => [
    ...(allowed(licence, dev ? [...FREE, ...FOR_WORK] : FREE)
      ? []
      : [
          `${name} ${version}: licence ${licence || 'unknown'} is not one that we may ${dev ? 'work with' : 'pass on'}`,
        ]),
    ...(scripts && !dev ? [`${name} ${version}: wants to run a script when it is installed`] : []),
    ...(resolved ? [`${name} ${version}: the lockfile names where it was fetched: ${resolved}`] : []),
  ]);
}

/** The list as a page. */
export function page(list) {
  const shipped = list.filter((p) => !p.dev);
  const once = [...new Set(shipped.map((p) => `| ${p.name} | ${p.version} | ${p.licence} |`))];
  return [
    '# What is installed with Inlaywright',
    '',
    'Written by `node scripts/dependencies.mjs` from the lockfile; a test keeps it true. Licences by their SPDX names; each',
    'package holds its own text. What is built into the page (preact, signals, three and jsonc-parser, all MIT) has its licences beside it,',
    "in `dist/page/licences.md`. Packages that only tests and builds use are in the lockfile's other entries.",
    '',
    '| package | version | licence |',
    '|---|---|---|',
    ...once,
    '',
  ].join('\n');
}

export const written = () => readFileSync(LIST, 'utf8');

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  const list = packages();
  writeFileSync(LIST, page(list));
  const lines = faults(list);
  for (const line of lines) console.error(line);
  if (lines.length > 0) process.exitCode = 1;
}
