import { useComputed } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { picked } from '../state/bench.js';
import { drawn, trouble } from '../state/card.js';
import { type Point, toScreen } from './camera.js';
import { camera, pencilled, room, scale, sheet } from './eye.js';
import { MarkShape } from './MarkShape.js';
import { beside, type Mark, standing } from './marks.js';
import { SEVERITIES } from './words.js';

/** The numbered marks of findings, in pixels; as large at any zoom, none hiding another. */
export function Marks() {
  const big = useComputed(() => matchMedia('(pointer: coarse)').matches);
  const radius = big.value ? 17 : 13;
  const marks = useComputed(() => {
    const now = drawn.value;
    return now?.stage === 'exact' && sheet.value === 'face'
      ? standing(now.findings, scale.value, radius)
      : [];
  });
  const origin = useComputed(() => {
    const [x, y] = toScreen(camera.value, room.value, [0, 0]);
    return `translate(${x} ${y})`;
  });
  const group = useRef<SVGGElement>(null);
  const all = marks.value;
  const tabbed = all.find((m) => m.finding.number === picked.value) ?? all[0];
  const chosen = all.find((m) => m.finding.number === picked.value);
  const go = (e: KeyboardEvent): void => {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[e.key];
    if (e.key === 'Escape') picked.value = null;
    else if (step) {
      const to = beside(drawn.peek()?.findings ?? [], picked.peek(), step as 1 | -1);
      group.current?.querySelector<SVGElement>(`[data-number="${to?.number}"]`)?.focus();
    } else return;
    e.preventDefault();
    e.stopPropagation();
  };
  return (
    <g ref={group} class={big.value ? 'marks big' : 'marks'} transform={origin}>
      {pencilled.value ? (
        <>
          {all.map((m) => (
            <Leader key={m.finding.number} mark={m} />
          ))}
          {[...all].reverse().map((m) => (
            // biome-ignore lint/a11y/useSemanticElements: SVG has no button
            <g
              key={m.finding.number}
              class={`mark ${m.finding.severity}`}
              data-number={m.finding.number}
              transform={`translate(${m.disc[0]} ${m.disc[1]})`}
              role="button"
              tabindex={m === tabbed ? 0 : -1}
              aria-label={`Finding ${m.finding.number}, ${SEVERITIES[m.finding.severity]}: ${m.finding.do}`}
              aria-pressed={picked.value === m.finding.number}
              onFocus={() => (picked.value = m.finding.number)}
              onClick={() => (picked.value = m.finding.number)}
              onKeyDown={go}
            >
              <circle class="mark-touch" r={big.value ? 22 : 13} />
              <MarkShape severity={m.finding.severity} number={m.finding.number} />
            </g>
          ))}
        </>
      ) : null}
      {chosen ? <Chosen mark={chosen} /> : null}
      <Faults />
    </g>
  );
}

/** From a mark that stands aside to what it points at. */
function Leader({ mark: { finding, at, disc } }: { mark: Mark }) {
  const [dx, dy] = [at[0] - disc[0], at[1] - disc[1]];
  if (dx * dx + dy * dy < 1) return null;
  return (
    <g class={`leader ${finding.severity}`}>
      <path class="leader-under" d={`M${disc[0]} ${disc[1]}L${at[0]} ${at[1]}`} />
      <path d={`M${disc[0]} ${disc[1]}L${at[0]} ${at[1]}`} />
      <circle cx={at[0]} cy={at[1]} r="2.5" />
    </g>
  );
}

/** The picked mark once more, larger and on top of all; the one below keeps the focus. */
function Chosen({ mark: { finding, disc } }: { mark: Mark }) {
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: nothing in it takes the focus
    <g class={`chosen ${finding.severity}`} transform={`translate(${disc[0]} ${disc[1]})`} aria-hidden="true">
      <g class="chosen-size">
        <MarkShape severity={finding.severity} number={finding.number} />
      </g>
    </g>
  );
}

/** Where what is wrong with the text lies on the piece. */
function Faults() {
  const places = (trouble.value?.faults ?? []).flatMap(({ at }): Point[] => (at ? [at] : []));
  const s = scale.value;
  return (
    <>
      {places.map(([x, y]) => (
        // biome-ignore lint/a11y/noAriaHiddenOnFocusable: as above
        <g key={`${x} ${y}`} class="mark stop" transform={`translate(${x * s} ${y * s})`} aria-hidden="true">
          <MarkShape severity="stop" number="!" />
        </g>
      ))}
    </>
  );
}
