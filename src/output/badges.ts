/** Where numbered discs go on a picture so that none hides another. */

export interface Badge {
  readonly number: number;
  /** What it points at, and where the disc is; in the picture's unit. */
  readonly at: readonly [number, number];
  readonly disc: readonly [number, number];
}

interface Room {
  /** Radius of a disc. */
  readonly radius: number;
  /** The picture's size; discs keep within it. */
  readonly width: number;
  readonly height: number;
}

/** Places tried round a point: rings of ever more, so the nearest free one is taken. */
const RINGS = 14;

/** The discs, in the order given; each takes the free place nearest to what it points at. */
export function placed(
  points: readonly { readonly number: number; readonly at: readonly [number, number] }[],
  { radius, width, height }: Room,
): Badge[] {
  const done: Badge[] = [];
  const free = (x: number, y: number): boolean =>
    x >= radius &&
    y >= radius &&
    x <= width - radius &&
    y <= height - radius &&
    done.every(({ disc: [u, v] }) => (x - u) * (x - u) + (y - v) * (y - v) >= 4.4 * radius * radius);
  for (const { number, at } of points) {
    done.push({ number, at, disc: nearestFree(at, radius, free) ?? at });
  }
  return done;
}

function nearestFree(
  [x, y]: readonly [number, number],
  radius: number,
  free: (x: number, y: number) => boolean,
): readonly [number, number] | null {
  for (let ring = 0; ring <= RINGS; ring++) {
    const far = ring * 1.1 * radius;
    for (const [ux, uy] of ring === 0 ? ([[0, 0]] as const) : AROUND)
      if (free(x + far * ux, y + far * uy)) return [x + far * ux, y + far * uy];
  }
  return null;
}

const H = Math.SQRT1_2;

/** Eight directions, upwards first. */
const AROUND = [
  [0, -1],
  [H, -H],
  [-H, -H],
  [1, 0],
  [-1, 0],
  [H, H],
  [-H, H],
  [0, 1],
] as const;
