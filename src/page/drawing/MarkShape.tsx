import type { Pencilled } from '../worker/protocol.js';

/*
 * The shape tells how grave a finding is, so that no colour is needed: eight sides stop, three take care, round is a
 * note. Drawn twice and not quite the same, as a hand goes round with a pencil. For a mark of radius 12 pixels.
 */

const SHAPES: Readonly<Record<Pencilled['severity'], { paper: string; strokes: string; words: number }>> = {
  stop: {
    paper: 'M-5.2 -12.4H5.2L12.4 -5.2V5.2L5.2 12.4H-5.2L-12.4 5.2V-5.2Z',
    strokes:
      'M-5.8 -12.3L5.6 -12.6L12.6 -5L12.2 5.5L5 12.6L-5.4 12.2L-12.6 5L-12.2 -5.4L-4.9 -12.8' +
      'M-5.1 -12L5.2 -12.1L12 -5.2L12.6 5.2L5.4 12.1L-5.1 12.6L-12.1 5.3L-12.5 -5L-5.2 -12.2',
    words: 4.4,
  },
  warn: {
    paper: 'M0 -15L14.4 10.4H-14.4Z',
    strokes: 'M-0.4 -15.2L14.6 10.1L-14.2 10.7L0.5 -15.6M0.3 -14.5L14 10.7L-14.7 10.2L-0.5 -14.7',
    words: 7,
  },
  note: {
    paper: 'M0 -12A12 12 0 1 1 0 12A12 12 0 1 1 0 -12Z',
    strokes:
      'M-1.5 -12A12 12.3 0 1 1 -2.1 11.8A12.2 12 0 0 1 0.6 -12.2' +
      'M1.2 -11.9A11.8 12.1 0 1 1 0.4 12.2A12.3 12 0 0 1 2.4 -11.6',
    words: 4.4,
  },
};

/** A mark's shape with its number, about 0, 0. */
export function MarkShape({
  severity,
  number,
}: {
  severity: Pencilled['severity'];
  number: number | string;
}) {
  const { paper, strokes, words } = SHAPES[severity];
  return (
    <>
      <path class="mark-paper" d={paper} />
      <path class="mark-pencil" d={strokes} />
      <text class={String(number).length > 1 ? 'mark-number long' : 'mark-number'} y={words}>
        {number}
      </text>
    </>
  );
}
