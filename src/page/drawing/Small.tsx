import { effect, signal } from '@preact/signals';
import { useEffect, useId } from 'preact/hooks';
import { drawn } from '../state/card.js';
import type { Box, Drawn, Figure, ViewName } from '../worker/protocol.js';
import { Plainly, Shapes } from './Sight.js';
import { answerOf, idle, isFresh } from './views.js';

/** What the small drawings show: the newest drawing, once the large one has had its turn. */
const late = signal<Drawn | null>(null);

/** A view as small as a stamp. It follows a drag as the page finds time. */
export function Small({ name }: { name: ViewName }) {
  useEffect(() => (name === 'piece' ? followLate() : undefined), [name]);
  const now = late.value;
  if (name === 'piece' || name === 'pocket' || name === 'plug') {
    if (!now) return <Blank />;
    return (
      <Stamp box={now.figure.box}>
        {name === 'piece' ? <Coloured figure={now.figure} /> : <Plainly figure={now.figure} name={name} />}
      </Stamp>
    );
  }
  const got = answerOf(name);
  if (!got) return name === 'coupon' ? <CouponMark /> : <Blank />;
  return (
    <Stamp box={got.box} past={!isFresh(name)}>
      <Shapes view={{ ...got, labels: [] }} />
    </Stamp>
  );
}

function followLate(): () => void {
  let waiting = false;
  return effect(() => {
    if (drawn.value === null) late.value = null;
    else if (!waiting) {
      waiting = true;
      void idle(250).then(() => {
        waiting = false;
        late.value = drawn.peek();
      });
    }
  });
}

/** A piece in its woods' colours, without grain; what a cutter takes beyond its edge is not seen. */
export function Coloured({ figure }: { figure: Figure }) {
  const id = useId();
  return (
    <>
      <clipPath id={id}>
        <path d={figure.face} clip-rule="evenodd" />
      </clipPath>
      <path class="wood" d={figure.face} fill={figure.field.colour} />
      <g clip-path={`url(#${id})`}>
        {figure.inlays.map(({ wood, pocket, plug }, k) => (
          <path key={k} class="wood" d={plug || pocket} fill={wood.colour} />
        ))}
      </g>
      <path class="edge" d={figure.face} />
    </>
  );
}

/** A small drawing of a box (mm) with a little room round it. */
export function Stamp({
  box,
  past,
  children,
}: {
  box: Box;
  past?: boolean;
  children: preact.ComponentChildren;
}) {
  const [w, h] = [box.maxX - box.minX, box.maxY - box.minY];
  const rim = 0.03 * Math.max(w, h, 0.01);
  return (
    <svg
      class={past ? 'stamp-size past' : 'stamp-size'}
      viewBox={`${box.minX - rim} ${box.minY - rim} ${w + 2 * rim} ${h + 2 * rim}`}
      aria-hidden="true"
    >
      {children}
    </svg>
  );
}

function Blank() {
  return <svg class="stamp-size" viewBox="0 0 10 10" aria-hidden="true" />;
}

/** A coupon is built only when it is looked at: until then, a strip with steps. */
function CouponMark() {
  return (
    <svg class="stamp-size" viewBox="-1 -1 52 34" aria-hidden="true">
      <path class="plain-face" d="M0 4H50V28H0Z" />
      <path class="plain-pocket" d="M5 11H13V21H5ZM16 11H24V21H16ZM27 11H35V21H27ZM38 11H46V21H38Z" />
    </svg>
  );
}
