/** To be written. */
export function PatternBook() {
  return <p>PatternBook</p>;
}
