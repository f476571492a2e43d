import { extname } from 'node:path';
import { fileFault } from '../disk/files.js';
import { loadPictureFont, loadRenderer } from '../disk/load.js';
import { putFile } from '../disk/put.js';
import { BadInput } from '../schema/fault.js';

export type PictureKind = 'svg' | 'png';

/** Width of picture files, pixels: what they point at is small. */
const WIDTH = 1400;

/** What the file that `--picture` names is to hold, by its ending. Throws BadInput, naming `example`, for any other. */
export function pictureKind(file: string, example: string): PictureKind {
  const ending = extname(file).toLowerCase();
  if (ending === '.svg' || ending === '.png') return ending === '.svg' ? 'svg' : 'png';
  throw new BadInput([
    {
      where: '--picture',
      message: `${JSON.stringify(file)} must end in .png or .svg, such as ${example}`,
    },
  ]);
}

/** Writes a picture whose words are set in the font that `drawn` is given. Throws BadInput when it cannot. */
export async function writePicture(
  file: string,
  kind: PictureKind,
  drawn: (font: string) => string,
): Promise<void> {
  const font = loadPictureFont();
  const svg = drawn(kind === 'png' ? font.family : 'sans-serif');
  const content = kind === 'svg' ? svg : (await loadRenderer()).png(svg, WIDTH, font);
  try {
    putFile(file, content);
  } catch (e) {
    throw fileFault(e, `cannot write ${file}`, 'name a file in a folder that exists and can be written');
  }
}
