/** "1 part", "2 parts". */
export function count(n: number, what: string): string {
  return `${n} ${what}${n === 1 ? '' : 's'}`;
}
