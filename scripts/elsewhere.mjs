/**
 * `node scripts/elsewhere.mjs`: makes two of the recipes that ship, one in mm and one in inches, and asks Debian's own
 * programs how large the written SVG and DXF are and what they hold. One line for each answer; exit code 1 for a wrong one.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { PNG } from 'pngjs';
import { ROOT } from './setup.mjs';

/** Recipes with the size of their face, mm: 180 mm across an octagon's flats; 4 in across a hexagon's, 8/sqrt(3) across its corners. */
export const SHIPPED = [
  { name: 'star-trivet', width: 180, height: 180 },
  { name: 'hexagon-coaster', width: (4 * 25.4 * 2) / Math.sqrt(3), height: 4 * 25.4 },
];

/** How far a size may be off, mm: two pixels of a picture at ten a mm, or the digits of a number. */
const PICTURE = 0.2;
const NUMBER = 0.001;

/** Width of the lines that show the face, mm; pictures hold half of it on either side. */
const LINE = 0.1;

const output = (program, args) => {
  const { status, stdout, stderr, error } = spawnSync(program, args, { maxBuffer: 1e8 });
  return {
    ok: !error && status === 0,
    stdout: stdout ?? Buffer.alloc(0),
    said: String(stderr ?? error ?? ''),
  };
};

/**
 * Each: the file it reads, what says whether it is installed, and how it measures: sizes in mm, `parts` the number of
 * closed cut paths where it can tell, `faults` where it looks for any. Throws when the program fails.
 */
export const TOOLS = {
  'rsvg-convert': {
    reads: 'svg',
    has: () => output('rsvg-convert', ['--version']).ok,
    tolerance: PICTURE,
    /** The face alone is drawn at ten pixels a mm, and its ink measured. */
    measure(file, folder) {
      const face = join(folder, 'face.svg');
      writeFileSync(face, faceOnly(readFileSync(file, 'utf8')));
      const { ok, stdout, said } = output('rsvg-convert', ['--dpi-x', '254', '--dpi-y', '254', face]);
      if (!ok) throw new Error(said);
      const { width, height } = inked(PNG.sync.read(stdout));
      return { width: width / 10 - LINE, height: height / 10 - LINE };
    },
  },
  inkscape: {
    reads: 'svg',
    has: () => output('inkscape', ['--version']).ok,
    tolerance: PICTURE,
    /** Asked for the face's box, which it gives in CSS pixels with the line's width. */
    measure(file) {
      const side = (flag) => {
        const { ok, stdout, said } = output('inkscape', ['--query-id=outline', flag, file]);
        if (!ok) throw new Error(said);
        return (Number(stdout) / 96) * 25.4 - LINE;
      };
      return { width: side('--query-width'), height: side('--query-height') };
    },
  },
  ezdxf: {
    reads: 'dxf',
    has: () => output(PYTHON, ['-c', 'import ezdxf']).ok,
    tolerance: NUMBER,
    /** Audited, and measured with the unit that the file names. */
    measure(file) {
      const { ok, stdout, said } = output(PYTHON, ['-c', EZDXF, file]);
      if (!ok) throw new Error(said);
      return JSON.parse(String(stdout));
    },
  },
};

/** Debian's own, since only that one sees Debian's packages. */
const PYTHON = '/usr/bin/python3';

const EZDXF = `
import sys, json, ezdxf
from ezdxf import bbox, units
d = ezdxf.readfile(sys.argv[1])
a = d.audit()
mm = units.conversion_factor(d.units, units.MM)
lines = d.modelspace().query('LWPOLYLINE')
boxes = [bbox.extents([e]) for e in lines if e.dxf.layer == 'MARKS']
face = max(boxes, key=lambda b: b.size.x * b.size.y)
cut = [e for e in lines if e.dxf.layer in ('POCKET', 'PLUG')]
print(json.dumps({'width': face.size.x * mm, 'height': face.size.y * mm, 'parts': sum(e.closed for e in cut), 'open': sum(not e.closed for e in cut), 'faults': len(a.errors) + len(a.fixes)}))
`;

/** The drawing with every group but the face's taken out. */
function faceOnly(svg) {
  return svg.replace(/<g id="marks"[\s\S]*(?=<\/svg>)/, '');
}

/** Size of the box of all that is drawn, pixels. */
function inked({ data, width, height }) {
  let [left, right, top, bottom] = [width, -1, height, -1];
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (data[4 * (y * width + x) + 3] > 127) {
        left = Math.min(left, x);
        right = Math.max(right, x);
        top = Math.min(top, y);
        bottom = Math.max(bottom, y);
      }
  return { width: right - left + 1, height: bottom - top + 1 };
}

/** Closed paths that an SVG's cut group holds, each begun by one move. */
function cutPaths(svg) {
  return (/<g id="(?:pocket|plug)">([\s\S]*?)<\/g>/.exec(svg)[1].match(/M /g) ?? []).length;
}

/**
 * What a program says of one part's drawing of a made piece.
 * @param {keyof TOOLS} name
 * @returns {{ wrong: boolean, line: string }}
 */
export function checked(name, { width, height }, part, folder) {
  const tool = TOOLS[name];
  const file = join(folder, `${part}.${tool.reads}`);
  let found;
  try {
    found = tool.measure(file, folder);
  } catch (e) {
    const said = e.message.trim().split('\n').at(-1);
    return { wrong: true, line: `WRONG: ${name}: ${file}: cannot be read: ${said}` };
  }
  const parts = cutPaths(readFileSync(join(folder, `${part}.svg`), 'utf8'));
  const wrong =
    !(Math.abs(found.width - width) <= tool.tolerance && Math.abs(found.height - height) <= tool.tolerance) ||
    (found.parts !== undefined && (found.parts !== parts || found.open > 0 || found.faults > 0));
  const size = `${found.width.toFixed(3)} mm by ${found.height.toFixed(3)} mm`;
  const held =
    found.parts === undefined ? '' : `, ${found.parts} of ${parts} cut paths, ${found.faults} faults`;
  return {
    wrong,
    line: `${wrong ? 'WRONG' : 'right'}: ${name}: ${file}: face ${size} (recipe: ${width.toFixed(3)} by ${height.toFixed(3)})${held}`,
  };
}

/** Makes the recipes into a folder. */
export function makeShipped(out) {
  const recipes = SHIPPED.map(({ name }) => join(ROOT, 'patterns', `${name}.json`));
  const { status, stderr } = spawnSync(process.execPath, [
    join(ROOT, 'dist/cli.js'),
    'make',
    ...recipes,
    '--out',
    out,
  ]);
  if (status !== 0) throw new Error(String(stderr));
}

function main() {
  const out = mkdtempSync(join(tmpdir(), 'elsewhere-'));
  try {
    makeShipped(out);
    for (const [name, tool] of Object.entries(TOOLS)) {
      if (!tool.has()) {
        console.log(`skipped: ${name} is not installed`);
        continue;
      }
      for (const piece of SHIPPED)
        for (const part of ['pocket', 'plug']) {
          const { wrong, line } = checked(name, piece, part, join(out, piece.name));
          console.log(line);
          if (wrong) process.exitCode = 1;
        }
    }
  } finally {
    rmSync(out, { recursive: true });
  }
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) main();
