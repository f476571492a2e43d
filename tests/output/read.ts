/** One drawn edge: from, to, and for arcs radius and SVG sweep flag. */
export interface DrawnEdge {
  from: [number, number];
  to: [number, number];
  r: number;
  sweep: number;
}

/** Contours of the paths in a group of an SVG: a plain reader of M L A Z, written for these tests. */
export function svgContours(svg: string, group: string): DrawnEdge[][] {
  const body = new RegExp(`<g id="${group}">(.*?)</g>`, 's').exec(svg)![1]!;
  const out: DrawnEdge[][] = [];
  for (const [, d] of body.matchAll(/ d="([^"]*)"/g)) {
    let start: [number, number] = [0, 0];
    let at: [number, number] = [0, 0];
    let edges: DrawnEdge[] = [];
    for (const [, letter, rest] of d!.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
      const n = rest!.trim().split(/\s+/).map(Number);
      const to: [number, number] = letter === 'Z' ? start : letter === 'A' ? [n[5]!, n[6]!] : [n[0]!, n[1]!];
      if (letter === 'M') {
        start = to;
        edges = [];
        out.push(edges);
      } else if (to[0] !== at[0] || to[1] !== at[1])
        edges.push({ from: at, to, r: letter === 'A' ? n[0]! : 0, sweep: letter === 'A' ? n[4]! : 0 });
      at = to;
    }
  }
  return out;
}

/** Signed area of a contour of lines and arcs by bulges, positive when counter-clockwise with y up. */
export function bulgeArea(vertices: readonly { x: number; y: number; bulge?: number | undefined }[]): number {
  let sum = 0;
  vertices.forEach((v, i) => {
    const w = vertices[(i + 1) % vertices.length]!;
    sum += (v.x * w.y - w.x * v.y) / 2;
    const b = v.bulge ?? 0;
    if (b === 0) return;
    const angle = 4 * Math.atan(b);
    const chord = Math.hypot(w.x - v.x, w.y - v.y);
    const r = chord / (2 * Math.sin(Math.abs(angle) / 2));
    sum += (Math.sign(b) * r * r * (Math.abs(angle) - Math.sin(Math.abs(angle)))) / 2;
  });
  return sum;
}
