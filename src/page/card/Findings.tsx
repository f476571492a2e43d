/** To be written. */
export function Findings() {
  return <p>Findings</p>;
}
