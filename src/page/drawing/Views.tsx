/** To be written. */
export function Views() {
  return <p>Views</p>;
}
