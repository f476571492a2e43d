/* Texts of drawings meant to harm. */

export const svg = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="90mm" height="90mm" viewBox="0 0 90 90">${inside}</svg>`;

/** A DXF of blocks and entities; every group is a code and a value. */
export const dxf = (entities: string, blocks = ''): string =>
  `0\nSECTION\n2\nBLOCKS\n${blocks}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;

export const groups = (...pairs: readonly (string | number)[]): string => `${pairs.join('\n')}\n`;

export const square = groups(
  0,
  'LWPOLYLINE',
  8,
  0,
  90,
  4,
  70,
  1,
  10,
  0,
  20,
  0,
  10,
  9,
  20,
  0,
  10,
  9,
  20,
  9,
  10,
  0,
  20,
  9,
);

/** Ten entities, each of ten of the one before, and so on. */
export const bomb = (): string => {
  const entities = Array.from({ length: 9 }, (_, k) => `<!ENTITY e${k + 1} "${`&e${k};`.repeat(10)}">`).join(
    '',
  );
  return `<!DOCTYPE svg [<!ENTITY e0 "M0 0h9v9z">${entities}]>${svg('<path d="&e9;"/>')}`;
};

export const uses = (): string => {
  const levels = Array.from(
    { length: 12 },
    (_, k) => `<g id="g${k + 1}">${`<use href="#g${k}"/>`.repeat(10)}</g>`,
  );
  return svg(`<defs><rect id="g0" width="9" height="9"/>${levels.join('')}</defs><use href="#g12"/>`);
};

export const blockBomb = (): string => {
  const block = (k: number, inside: string): string =>
    groups(0, 'BLOCK', 8, 0, 2, `B${k}`, 70, 0, 10, 0, 20, 0) + inside + groups(0, 'ENDBLK', 8, 0);
  const insert = (k: number): string => groups(0, 'INSERT', 8, 0, 2, `B${k}`, 10, 1, 20, 1);
  let blocks = block(0, square);
  for (let k = 1; k <= 12; k++) blocks += block(k, insert(k - 1).repeat(10));
  return dxf(insert(12), blocks);
};

export const inserted = (more: string): string =>
  dxf(
    groups(0, 'INSERT', 8, 0, 2, 'B', 10, 0, 20, 0) + more,
    groups(0, 'BLOCK', 8, 0, 2, 'B', 70, 0, 10, 0, 20, 0) + square + groups(0, 'ENDBLK', 8, 0),
  );

export const selfInsert = (): string =>
  dxf(
    groups(0, 'INSERT', 8, 0, 2, 'B', 10, 0, 20, 0),
    groups(0, 'BLOCK', 8, 0, 2, 'B', 70, 0, 10, 0, 20, 0) +
      groups(0, 'INSERT', 8, 0, 2, 'B', 10, 1, 20, 1) +
      groups(0, 'ENDBLK', 8, 0),
  );

export const MILLION = 1_000_000;

/** A scribble, so that points are neither few nor in a row. */
const scribble = (k: number): [number, number] => [(k * 7919) % 997, (k * 104_729) % 991];

export const manyPoints = (): string =>
  svg(`<path d="M${Array.from({ length: MILLION }, (_, k) => scribble(k).join(' ')).join('L')}z"/>`);

/** A stair, just below two megabytes. */
export const stairs = (): string => svg(`<path d="M0 0${'h1v1'.repeat(MILLION / 2 - 1000)}z"/>`);

export const manyVertices = (): string => {
  const vertices = Array.from({ length: MILLION }, (_, k) => {
    const [x, y] = scribble(k);
    return `10\n${x}\n20\n${y}\n`;
  });
  return dxf(`${groups(0, 'LWPOLYLINE', 8, 0, 90, MILLION, 70, 1)}${vertices.join('')}`);
};

export const junk = (): Uint8Array =>
  Uint8Array.from({ length: 50_000 }, (_, k) => (k * k * 31 + (k >> 3)) & 255);
