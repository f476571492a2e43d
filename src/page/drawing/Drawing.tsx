import { useComputed } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { drawing, drawn, shownIn, trouble } from '../state/card.js';
import { Hatches } from '../style/Hatches.js';
import { Turned } from '../vessel/Turned.js';
import { OuterSize, ScaleBar, Width } from './Dimensions.js';
import './drawing.css';
import { pencilled, room, scale, transform, watchPicked, watchPiece } from './eye.js';
import { gesturesOn } from './gestures.js';
import { keyed } from './keys.js';
import { Marks } from './Marks.js';
import { measured, watchMeasured } from './measuring.js';
import { Pencil } from './Pencil.js';
import { Sight } from './Sight.js';
import { Tools } from './Tools.js';
import { showsVessel, startViews } from './views.js';
import { measuredText, stamped, summed } from './words.js';

/** The piece on its paper: looked at from near and far, measured, with what was found pencilled on it. */
export function Drawing() {
  const paper = useRef<HTMLDivElement>(null);
  const svg = useRef<SVGSVGElement>(null);
  useEffect(() => {
    const stops = [watchPiece(), watchPicked(), watchMeasured(), startViews(), gesturesOn(svg.current!)];
    const measure = (): void => {
      const { clientWidth, clientHeight } = paper.current!;
      room.value = { width: clientWidth, height: clientHeight };
    };
    measure();
    const sizes = new ResizeObserver(measure);
    sizes.observe(paper.current!);
    return () => {
      sizes.disconnect();
      for (const stop of stops) stop();
    };
  }, []);
  return (
    <div ref={paper} class="paper">
      {/* biome-ignore lint/a11y/useSemanticElements: SVG has no element of its own for a group of controls */}
      <svg
        ref={svg}
        class={showsVessel.value ? 'sight hidden' : trouble.value ? 'sight fault' : 'sight'}
        width="100%"
        height="100%"
        // In SVG the name of an attribute is as it is written: tabIndex is none.
        tabindex={0}
        role="group"
        aria-label="Drawing of the piece"
        aria-describedby="drawing-keys"
        onKeyDown={(e) => {
          if (keyed(e)) e.preventDefault();
        }}
      >
        <Hatched />
        <Art />
        <OuterSize />
        <Marks />
        <Width />
        <path class="crosshair" d={useCross()} />
        <ScaleBar />
      </svg>
      <div class="over-paper">
        <p class="stamp">{stamped(drawn.value, trouble.value, drawing.value)}</p>
        {showsVessel.value ? null : <Tools />}
      </div>
      {showsVessel.value ? <Turned /> : null}
      <NoDrawing />
      <p class="unseen" id="drawing-keys">
        Plus and minus bring it nearer or farther, 0 shows the whole piece, arrows push the paper, m measures
        at the middle.
      </p>
      <Aloud />
    </div>
  );
}

/** What lies on the paper, in mm. */
function Art() {
  const now = drawn.value;
  return (
    // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of shapes is no control
    <g
      transform={transform}
      role="img"
      aria-label={now ? summed(now, shownIn.value) : 'Nothing is drawn yet.'}
    >
      <Sight />
      {pencilled.value ? <Pencil /> : null}
    </g>
  );
}

/** Patterns of the views' looks, as large at any zoom. */
function Hatched() {
  return <Hatches scale={1 / scale.value} />;
}

function useCross() {
  return useComputed(() => {
    const [x, y] = [room.value.width / 2, room.value.height / 2];
    return `M${x - 14} ${y}H${x - 4}M${x + 4} ${y}H${x + 14}M${x} ${y - 14}V${y - 4}M${x} ${y + 4}V${y + 14}`;
  });
}

/** Says why the paper is empty, where it is. */
function NoDrawing() {
  const fault = drawn.value === null ? trouble.value?.faults[0] : undefined;
  if (!fault) return null;
  return (
    <p class="no-drawing">
      {fault.where === '' ? '' : `${fault.where} `}
      {fault.message}
    </p>
  );
}

/** What was measured by key is read aloud; what a resting pointer shows is not. */
function Aloud() {
  const at = measured.value;
  return (
    <p class="unseen" role="status">
      {at?.aloud ? measuredText(at.got, shownIn.value) : ''}
    </p>
  );
}
