import { useComputed } from '@preact/signals';
import { picked, view } from '../state/bench.js';
import { drawn } from '../state/card.js';
import type { Pencilled } from '../worker/protocol.js';
import { scale, sheet } from './eye.js';

/**
 * Where findings lie, pencilled on the piece: hatched areas and lines. In mm, the worst on top. On other views than the
 * piece only the picked one is, since they have hatchings of their own.
 */
export function Pencil() {
  const now = drawn.value;
  if (now?.stage !== 'exact' || sheet.value !== 'face') return null;
  const shown = view.value === 'piece' ? now.findings : now.findings.filter((f) => f.number === picked.value);
  return (
    <g class="pencil">
      <Hatching />
      {[...shown].reverse().map((f) => (
        <Zone key={f.number} finding={f} />
      ))}
    </g>
  );
}

function Zone({ finding: { number, severity, areas, lines } }: { finding: Pencilled }) {
  if (areas === '' && lines === '') return null;
  return (
    <g class={`zone ${severity}${picked.value === number ? ' picked' : ''}`}>
      {areas === '' ? null : (
        <>
          <path class="veil" d={areas} />
          <path class="hatched" d={areas} fill={`url(#pencil-${severity})`} />
        </>
      )}
      {lines === '' ? null : (
        <>
          <path class="line-under" d={lines} />
          <path class="line" d={lines} />
        </>
      )}
    </g>
  );
}

/** Crossed lines: stop; slanting ones: take care; dots: note. As large on the screen at any zoom. */
function Hatching() {
  const back = useComputed(() => `scale(${1 / scale.value}) rotate(45)`);
  return (
    <defs>
      <pattern
        id="pencil-stop"
        class="stop"
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform={back}
      >
        <path class="hatch" d="M0 3.5H7M3.5 0V7" />
      </pattern>
      <pattern
        id="pencil-warn"
        class="warn"
        width="7"
        height="7"
        patternUnits="userSpaceOnUse"
        patternTransform={back}
      >
        <path class="hatch" d="M3.5 0V7" />
      </pattern>
      <pattern
        id="pencil-note"
        class="note"
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform={back}
      >
        <circle class="dot" cx="3" cy="3" r="1.1" />
      </pattern>
    </defs>
  );
}
