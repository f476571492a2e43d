import { view } from '../state/bench.js';
import { drawing, drawn, shownIn, trouble } from '../state/card.js';
import type { ViewName } from '../worker/protocol.js';
import { readOff } from './lengths.js';
import { MarkShape } from './MarkShape.js';
import { answerOf, failed, isFresh, showsVessel } from './views.js';
import { SEVERITIES, shortly, TITLES } from './words.js';

/** What the chosen view shows, in a sentence, and what its looks mean. */
export function Said() {
  const what = showsVessel.value ? <OfVessel /> : view.value === 'piece' ? <OfPiece /> : <OfView />;
  return <div class="said">{what}</div>;
}

function OfVessel() {
  const bowl = drawn.value?.recipe.bowl;
  if (!bowl) return null;
  const from = bowl.sides === 1 ? 'one flat board' : `${bowl.sides} staves`;
  return (
    <p class="says">
      The finished vessel, {readOff(bowl.height, shownIn.value)} high, from {from}, as the figure really comes
      out. Pull it round, or use the arrow keys. <em>inlaywright bowl</em> writes its angles, jigs and models.
    </p>
  );
}

function OfPiece() {
  const now = drawn.value;
  if (!now) return <p class="says" />;
  const { figure, findings } = now;
  const woods = new Map([figure.field, ...figure.inlays.map((i) => i.wood)].map((w) => [w.name, w.colour]));
  return (
    <>
      <p class="says">{shortly(now, shownIn.value)}</p>
      <ul class="key">
        {[...woods].map(([name, colour]) => (
          <li key={name}>
            <svg class="swatch" viewBox="0 0 26 16" aria-hidden="true">
              <path class="swatch-wood" d="M1 1H25V15H1Z" fill={colour} />
            </svg>
            {name}
          </li>
        ))}
        {(['stop', 'warn', 'note'] as const).map((s) => {
          const many = findings.filter((f) => f.severity === s).length;
          return many === 0 ? null : (
            <li key={s}>
              <svg class={`swatch mark ${s}`} viewBox="-18 -17 36 32" aria-hidden="true">
                <MarkShape severity={s} number="" />
              </svg>
              {many} {SEVERITIES[s]}
            </li>
          );
        })}
      </ul>
    </>
  );
}

/** Why a view is not there yet. */
function waiting(name: ViewName): string {
  if (trouble.value) return `${TITLES[name]}: it waits until the fault is put right.`;
  return drawing.value || drawn.value ? `${TITLES[name]}: drawing …` : '';
}

function OfView() {
  const name = view.value;
  const got = answerOf(name);
  const wrong = failed.value.get(name);
  if (wrong !== undefined) return <p class="says">This view could not be drawn: {wrong}</p>;
  if (!got) return <p class="says">{waiting(name)}</p>;
  return (
    <>
      <p class={isFresh(name) ? 'says' : 'says old'}>{got.says}</p>
      <ul class="key">
        {got.key.map(({ look, fill, text }) => (
          <li key={text}>
            <svg class="swatch" viewBox="0 0 26 16" aria-hidden="true">
              <path class={look} d="M1 1H25V15H1Z" {...(fill ? { style: { fill } } : {})} />
            </svg>
            {text}
          </li>
        ))}
      </ul>
    </>
  );
}
