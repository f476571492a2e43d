/** To be written. */
export function Drawing() {
  return <p>Drawing</p>;
}
