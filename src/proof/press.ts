/** A ball may press this far into the boundary, mm: what the kinks of a written file need (design: reach). */
export const PRESS = 0.0005;
