/** A symmetry operation in cell coordinates: (x, y) -> (a x + b y + e, c x + d y + f). */
export interface Operation {
  readonly matrix: readonly [a: number, b: number, c: number, d: number];
  readonly shift: readonly [e: number, f: number];
}

/**
 * Reads general positions as crystallographers write them, "x,y; -y+1/2,x-y": one operation for each, in terms of x, y
 * and halves. What it reads is data of this folder, so anything else is a mistake in the program.
 */
export function operations(positions: string): Operation[] {
  return positions.split(';').map((position) => {
    const [first, second] = position.split(',').map(row);
    if (!first || !second) throw new Error(`not a position: ${position}`);
    return { matrix: [first.x, first.y, second.x, second.y], shift: [first.shift, second.shift] };
  });
}

function row(text: string): { x: number; y: number; shift: number } {
  const out = { x: 0, y: 0, shift: 0 };
  for (const [, sign, term] of text.trim().matchAll(/([+-]?)(x|y|1\/2)/g)) {
    const s = sign === '-' ? -1 : 1;
    if (term === 'x') out.x += s;
    else if (term === 'y') out.y += s;
    else out.shift += s / 2;
  }
  return out;
}

/** The operations of a centred cell: each, and each moved by half of both sides. */
export function centred(all: readonly Operation[]): Operation[] {
  return [
    ...all,
    ...all.map(({ matrix, shift: [e, f] }): Operation => ({ matrix, shift: [e + 1 / 2, f + 1 / 2] })),
  ];
}
