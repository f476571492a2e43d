/** To be written. */
export function FileBar() {
  return <p>FileBar</p>;
}
