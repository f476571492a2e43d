/** Makes the text of drawings from points and bulges, for the proof's tests: code of its own, not the product's writer. */

/** A corner and the bulge, tan(sweep / 4), of the edge that leaves it. */
export type Vertex = readonly [x: number, y: number, bulge: number];
export type Chain = readonly Vertex[];

export interface Sheet {
  readonly unit: 'mm' | 'in';
  readonly width: number;
  readonly height: number;
}

export const SHEET: Sheet = { unit: 'mm', width: 200, height: 160 };

const digits = (x: number) => String(Number(x.toFixed(6)));

/** SVG with one path for all chains; coordinates given y up, in the sheet's unit. */
export function svgOf(name: 'pocket' | 'plug', chains: readonly Chain[], sheet: Sheet = SHEET): string {
  const { unit, width, height } = sheet;
  const point = (x: number, y: number) => `${digits(x)} ${digits(height - y)}`;
  const d = chains.map((chain) => {
    const parts = [`M${point(chain[0]![0], chain[0]![1])}`];
    chain.forEach(([x, y, b], i) => {
      const [u, v] = chain[(i + 1) % chain.length]!;
      const chord = Math.hypot(u - x, v - y);
      const r = digits((chord * (1 + b * b)) / (4 * Math.abs(b)));
      parts.push(
        b === 0
          ? `L${point(u, v)}`
          : `A${r} ${r} 0 ${Math.abs(b) > 1 ? 1 : 0} ${b > 0 ? 0 : 1} ${point(u, v)}`,
      );
    });
    return `${parts.join('')}Z`;
  });
  return `<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${width}${unit}" height="${height}${unit}" viewBox="0 0 ${width} ${height}">
<g id="${name}"><path fill-rule="evenodd" d="${d.join(' ')}"/></g>
<g id="marks"><rect x="1" y="1" width="20" height="20"/></g>
</svg>
`;
}

export function dxfOf(name: 'pocket' | 'plug', chains: readonly Chain[], unit: 'mm' | 'in' = 'mm'): string {
  const g: (string | number)[] = [
    0,
    'SECTION',
    2,
    'HEADER',
    9,
    '$INSUNITS',
    70,
    unit === 'mm' ? 4 : 1,
    0,
    'ENDSEC',
  ];
  g.push(0, 'SECTION', 2, 'ENTITIES', 0, 'LINE', 8, 'MARKS', 10, 0, 20, 0, 11, 5, 21, 5);
  for (const chain of chains) {
    g.push(
      0,
      'LWPOLYLINE',
      100,
      'AcDbEntity',
      8,
      name.toUpperCase(),
      100,
      'AcDbPolyline',
      90,
      chain.length,
      70,
      1,
    );
    for (const [x, y, b] of chain) g.push(10, digits(x), 20, digits(y), 42, String(Number(b.toFixed(12))));
  }
  g.push(0, 'ENDSEC', 0, 'EOF');
  return `${g.join('\n')}\n`;
}

/** A circle of three arcs, counter-clockwise. */
export function circle(x: number, y: number, r: number): Chain {
  const b = Math.tan(Math.PI / 6);
  return [0, 1, 2].map((k) => {
    const a = (k * 2 * Math.PI) / 3;
    return [x + r * Math.cos(a), y + r * Math.sin(a), b] as const;
  });
}

/** A corner of a polygon, and its radius if it is to differ from the others'. */
export type Point = readonly [x: number, y: number, radius?: number];

/**
 * A polygon, counter-clockwise, with every corner rounded by a tangent arc: radius `convex` where it turns left,
 * `concave` (by default the same) where right; 0 leaves a corner sharp.
 */
export function rounded(points: readonly Point[], convex: number, concave = convex): Chain {
  const n = points.length;
  return points.flatMap(([x, y, own], i): Vertex[] => {
    const [ax, ay] = points[(i + n - 1) % n]!;
    const [bx, by] = points[(i + 1) % n]!;
    const [ux, uy] = unit(x - ax, y - ay);
    const [vx, vy] = unit(bx - x, by - y);
    const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    const set = (own ?? (turn > 0 ? convex : concave)) * Math.tan(Math.abs(turn) / 2);
    if (set < 1e-7) return [[x, y, 0]];
    return [
      [x - ux * set, y - uy * set, Math.tan(turn / 4)],
      [x + vx * set, y + vy * set, 0],
    ];
  });
}

/** A star of n points with its outer corners at R and its inner ones at q. */
export function starPoints(x: number, y: number, n: number, R: number, q: number): [number, number][] {
  return Array.from({ length: 2 * n }, (_, k) => {
    const a = (k * Math.PI) / n + 0.1;
    const r = k % 2 === 0 ? R : q;
    return [x + r * Math.cos(a), y + r * Math.sin(a)];
  });
}

export const moved = (chain: Chain, dx: number, dy: number): Chain =>
  chain.map(([x, y, b]) => [x + dx, y + dy, b]);

export const turned = (chain: Chain, angle: number): Chain => {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return chain.map(([x, y, b]) => [x * c - y * s, x * s + y * c, b]);
};

/** The same outline travelled the other way. */
export const reversed = (chain: Chain): Chain =>
  chain.map((_, i) => {
    const n = chain.length;
    const [x, y] = chain[(n - i) % n]!;
    return [x, y, 0 - chain[(2 * n - i - 1) % n]![2]];
  });

function unit(x: number, y: number): [number, number] {
  const l = Math.hypot(x, y);
  return [x / l, y / l];
}
