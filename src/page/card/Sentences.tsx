/** To be written. */
export function Sentences() {
  return <p>Sentences</p>;
}
