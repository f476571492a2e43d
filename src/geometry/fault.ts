/** The kernel met a place that it cannot decide consistently, even after changing radii by hairs. Not the caller's fault. */
export class Undecided extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'Undecided';
  }
}
