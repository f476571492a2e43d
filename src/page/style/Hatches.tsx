/** Hatchings of the views' looks, in pixels at any zoom: `scale` is mm a pixel. Looks differ by them in black and white too. */
export function Hatches({ scale }: { scale: number }) {
  const lines = (id: string, turn: number, step: number) => (
    <pattern
      id={id}
      width={step}
      height={step}
      patternUnits="userSpaceOnUse"
      patternTransform={`scale(${scale}) rotate(${turn})`}
    >
      <path class="hatch-ground" d={`M0 0H${step}V${step}H0Z`} />
      <path class="hatch-line" d={`M0 0V${step}`} />
    </pattern>
  );
  return (
    <defs>
      <g class="hatch-finished">{lines('hatch-finished', 45, 6)}</g>
      <g class="hatch-missed">{lines('hatch-missed', -45, 4)}</g>
      <g class="hatch-wall">{lines('hatch-wall', 45, 4)}</g>
      <g class="hatch-limb">{lines('hatch-limb', -45, 4)}</g>
    </defs>
  );
}
