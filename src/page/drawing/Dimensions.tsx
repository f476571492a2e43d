import { useComputed } from '@preact/signals';
import { drawn, shownIn } from '../state/card.js';
import { type Point, toScreen } from './camera.js';
import { dimension } from './dimension.js';
import { camera, room, scale, sheet } from './eye.js';
import { readOff } from './lengths.js';
import { measured } from './measuring.js';
import { barFor } from './scale-bar.js';
import { measuredText } from './words.js';

/** How far the lines of the outer size stand from the piece, pixels. */
const OFF = 27;

/** Width and height of the piece, as on a workshop drawing. In pixels. */
export function OuterSize() {
  const box = drawn.value?.figure.box;
  if (!box || sheet.value !== 'face') return null;
  const units = shownIn.value;
  const [left, top] = toScreen(camera.value, room.value, [box.minX, box.minY]);
  const [right, bottom] = toScreen(camera.value, room.value, [box.maxX, box.maxY]);
  const [x, y] = [left - OFF, bottom + OFF];
  const across = dimension([left, y], [right, y]);
  const up = dimension([x, bottom], [x, top]);
  return (
    <g class="dimension">
      <path
        class="witness"
        d={`M${left} ${bottom + 5}V${y + 5}M${right} ${bottom + 5}V${y + 5}M${left - 5} ${top}H${x - 5}M${left - 5} ${bottom}H${x - 5}`}
      />
      <path class="thin" d={across.line + up.line} />
      <path class="head" d={across.heads + up.heads} />
      <text x={(left + right) / 2} y={y + 4.5}>
        {readOff(box.maxX - box.minX, units)}
      </text>
      <text transform={`translate(${x + 4.5} ${(top + bottom) / 2}) rotate(-90)`}>
        {readOff(box.maxY - box.minY, units)}
      </text>
    </g>
  );
}

/** The dimension asked for by a resting pointer, a tap or the key m. In pixels. */
export function Width() {
  const at = measured.value;
  if (!at) return null;
  const { got } = at;
  const from = toScreen(camera.value, room.value, got.from);
  const to = toScreen(camera.value, room.value, got.to);
  const { line, heads, words } = dimension(from, to);
  const text = measuredText(got, shownIn.value);
  const [x, y] = kept(words, text.length * 7.4);
  return (
    <g class="dimension measured">
      <path class="under" d={line} />
      <path class="thin" d={line} />
      <path class="head" d={heads} />
      <text x={x} y={y + 4.5}>
        {text}
      </text>
    </g>
  );
}

/** Words that would run out of the room are moved in. */
function kept([x, y]: Point, wide: number): Point {
  const { width, height } = room.value;
  const half = Math.min(wide / 2 + 8, width / 2);
  return [Math.min(Math.max(x, half), width - half), Math.min(Math.max(y, 14), height - 14)];
}

/** How long a round length is. In pixels, in the lower left corner. */
export function ScaleBar() {
  const bar = useComputed(() =>
    // Before the paper is laid out there is no room for a bar of any length; the section is not to scale.
    room.value.width > 0 && sheet.value !== 'section'
      ? barFor(scale.value, shownIn.value, Math.min(150, room.value.width / 4))
      : null,
  );
  if (!bar.value) return null;
  const { mm, text } = bar.value;
  const long = mm * scale.value;
  const y = room.value.height - 15;
  return (
    // biome-ignore lint/a11y/noInteractiveElementToNoninteractiveRole: a group of shapes is no control
    <g class="dimension scale-bar" role="img" aria-label={`Scale bar: ${text}`}>
      <rect class="backing" x="8" y={y - 19} width={long + 20} height="28" rx="2" />
      <path class="bar" d={`M18 ${y - 5}V${y + 5}M18 ${y}H${18 + long}M${18 + long} ${y - 5}V${y + 5}`} />
      <text x={18 + long / 2} y={y - 6}>
        {text}
      </text>
    </g>
  );
}
