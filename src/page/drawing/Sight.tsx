import { useRef } from 'preact/hooks';
import { view } from '../state/bench.js';
import { drawn } from '../state/card.js';
import type { Figure, View, ViewName } from '../worker/protocol.js';
import { Piece } from './Piece.js';
import { answerOf, isFresh } from './views.js';

/**
 * What is looked at, in mm: the piece itself, or the worker's view of it. Until the worker has drawn a view anew, the
 * figure stands in plainly so that it still follows a drag; what cannot follow is dimmed.
 */
export function Sight() {
  const now = drawn.value;
  const name = view.value;
  const followed = useRef(false);
  if (!now) return null;
  if (name === 'piece') return <Piece figure={now.figure} />;
  const got = answerOf(name);
  if (got && isFresh(name)) {
    followed.current = false;
    return <Shapes view={got} />;
  }
  const onFace = name !== 'section' && name !== 'coupon';
  if (now.stage !== 'exact') followed.current = true;
  if (onFace && (followed.current || !got)) return <Plainly figure={now.figure} name={name} />;
  return got ? (
    <g class="past">
      <Shapes view={got} />
    </g>
  ) : null;
}

/** A view's shapes and labels. */
export function Shapes({ view: { box, picture, shapes, labels } }: { view: View }) {
  return (
    <>
      {picture === '' ? null : (
        <image
          href={`data:image/svg+xml,${encodeURIComponent(picture)}`}
          x={box.minX}
          y={box.minY}
          width={box.maxX - box.minX}
          height={box.maxY - box.minY}
        />
      )}
      {shapes.map(({ d, look, fill, title }, k) => (
        <path key={k} d={d} class={look} {...(fill ? { style: { fill } } : {})}>
          {title ? <title>{title}</title> : null}
        </path>
      ))}
      {labels.map(({ x, y, text, size }, k) => (
        <text key={k} class="label" x={x} y={y} font-size={size}>
          {text}
        </text>
      ))}
    </>
  );
}

/** The figure's lines and no more. */
export function Plainly({ figure, name }: { figure: Figure; name: ViewName }) {
  return (
    <>
      <path class="plain-face" d={figure.face} />
      {figure.inlays.map(({ pocket, plug }, k) => (
        <path
          key={k}
          class={name === 'plug' ? 'plain-plug' : 'plain-pocket'}
          d={name === 'plug' ? plug || pocket : pocket}
        />
      ))}
    </>
  );
}
