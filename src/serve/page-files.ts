import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { extname, join, relative, sep } from 'node:path';
import { gzipSync } from 'node:zlib';
import { BadInput } from '../schema/fault.js';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.json': 'application/json',
  '.dxf': 'application/dxf',
  '.wasm': 'application/wasm',
  '.glb': 'model/gltf-binary',
  '.stl': 'model/stl',
};

export function typeOf(name: string): string {
  return TYPES[extname(name).toLowerCase()] ?? 'application/octet-stream';
}

/** A file of the page, as it is and packed. */
export interface PageFile {
  readonly type: string;
  readonly bytes: Buffer;
  readonly packed: Buffer;
  /** Its name says what is in it, so a browser may keep it. */
  readonly lasting: boolean;
}

/** All files of the built page by address. A map: no address can name a file that is not the page's. Throws BadInput. */
export function pageFiles(folder: string): ReadonlyMap<string, PageFile> {
  if (!existsSync(join(folder, 'index.html')))
    throw new BadInput([
      { where: '', message: 'the page is not built: run npm start once, or npm run build' },
    ]);
  const files = new Map<string, PageFile>();
  for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath ?? entry.path, entry.name);
    const address = `/${relative(folder, path).split(sep).join('/')}`;
    const bytes = readFileSync(path);
    const file = {
      type: typeOf(entry.name),
      bytes,
      packed: gzipSync(bytes),
      lasting: address.startsWith('/assets/'),
    };
    files.set(address, file);
    if (address === '/index.html') files.set('/', file);
  }
  return files;
}
