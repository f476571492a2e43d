import { useMemo } from 'preact/hooks';
import type { Figure } from '../worker/protocol.js';
import { tileFor } from './grain.js';

/** Turns of the finest grain steps, so that a size being dragged does not make the grain swim. */
const STEP = 1.3;

/**
 * The piece as it looks: woods in their colours, grain, joints, a soft edge. In mm. Elements stay when the figure
 * changes; only their data is set.
 */
export function Piece({ figure }: { figure: Figure }) {
  const size = Math.max(figure.box.maxX - figure.box.minX, figure.box.maxY - figure.box.minY);
  const stepped = useMemo(() => steppedSize(size), [size]);
  return (
    <>
      <defs>
        <clipPath id="on-face">
          <path d={figure.face} clip-rule="evenodd" />
        </clipPath>
        <Grain id="grain-field" size={stepped} seed={7} turn={figure.grain.field} ink={figure.field.grain} />
        {figure.inlays.map(({ wood }, k) => (
          <Grain
            key={k}
            id={`grain-${k}`}
            size={stepped}
            seed={1977 + 31 * k}
            turn={figure.grain.plug}
            ink={wood.grain}
          />
        ))}
      </defs>
      <path class="shade wide" d={figure.face} />
      <path class="shade" d={figure.face} />
      <path class="wood" d={figure.face} fill={figure.field.colour} />
      <path class="wood" d={figure.face} fill="url(#grain-field)" />
      <g clip-path="url(#on-face)">
        {figure.inlays.map(({ wood, pocket, plug }, k) => (
          <g key={k}>
            <path class="hollow" d={pocket} />
            <path class="let-in" d={plug || pocket} fill={wood.colour} />
            <path class="wood" d={plug || pocket} fill={`url(#grain-${k})`} />
          </g>
        ))}
      </g>
      <path class="edge" d={figure.face} />
    </>
  );
}

interface GrainOf {
  readonly id: string;
  readonly size: number;
  readonly seed: number;
  /** Radians, clockwise on the screen. */
  readonly turn: number;
  readonly ink: string;
}

function Grain({ id, size, seed, turn, ink }: GrainOf) {
  const tile = useMemo(() => tileFor(size, seed), [size, seed]);
  return (
    <pattern
      id={id}
      width={tile.width}
      height={tile.height}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${(turn / Math.PI) * 180})`}
    >
      {tile.strokes.map(({ d, width, dark }) => (
        <path key={width} d={d} fill="none" stroke={ink} stroke-width={width} stroke-opacity={dark} />
      ))}
    </pattern>
  );
}

function steppedSize(size: number): number {
  let stepped = 1;
  while (stepped < size) stepped *= STEP;
  return stepped;
}
