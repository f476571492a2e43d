/** The largest value of hundredths from `from`, which holds or is 0, up to `most` that holds; found by halving. */
export function largest(holds: (value: number) => boolean, most: number, from = 0): number {
  let lo = hundredths(from);
  let hi = hundredths(most) + 1;
  while (hi - lo > 1) {
    const middle = Math.floor((lo + hi) / 2);
    if (holds(middle / 100)) lo = middle;
    else hi = middle;
  }
  return lo / 100;
}

/** Whole hundredths in a value; one that is a hundredth but for rounding counts as that. */
function hundredths(value: number): number {
  return Math.floor(value * 100 + 1e-6);
}
