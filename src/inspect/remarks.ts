import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** What the generators said about their drawing. */
export function remarks({ artwork }: Setup): Finding[] {
  return (artwork.remarks ?? []).map((r) => ({
    code: r.code,
    severity: r.severity ?? 'note',
    where: r.at,
    numbers: r.numbers,
    do: r.text,
  }));
}
