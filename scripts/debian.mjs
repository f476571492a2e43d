import { spawnSync } from 'node:child_process';

/**
 * Debian packages that tests need beyond what npm installs, with what each is for.
 * @type {readonly { name: string, program: string, purpose: string }[]}
 */
export const NEEDED = [
  { name: 'chromium', program: 'chromium', purpose: 'using the page and printing the sheet' },
  { name: 'librsvg2-bin', program: 'rsvg-convert', purpose: 'measuring our SVG files by librsvg' },
  { name: 'python3-ezdxf', program: 'ezdxf', purpose: 'auditing our DXF files by ezdxf' },
];

const machine = {
  has: (program) => spawnSync('which', [program], { stdio: 'ignore' }).status === 0,
  isRoot: () => process.getuid?.() === 0,
  install: (names) =>
    ['update', `install -y --no-install-recommends ${names.join(' ')}`].every(
      (words) =>
        spawnSync('apt-get', ['-qq', ...words.split(' ')], {
          stdio: ['ignore', 2, 2],
          env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
        }).status === 0,
    ),
};

/**
 * Installs the packages whose program is missing where that is possible; otherwise says which tests will be skipped.
 * @returns {string[]} one line for each package that is still missing
 */
export function ensure(needed = NEEDED, { has, isRoot, install } = machine) {
  const missing = needed.filter((p) => !has(p.program));
  if (missing.length === 0) return [];
  if (isRoot() && has('apt-get')) install(missing.map((p) => p.name));
  return missing
    .filter((p) => !has(p.program))
    .map((p) => `${p.program} is missing, so ${p.purpose} will be skipped: apt-get install ${p.name}`);
}
