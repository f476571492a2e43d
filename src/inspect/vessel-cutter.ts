import { makeVessel, type Vessel } from '../bowl/vessel.js';
import { greatest } from '../bowl/wall.js';
import { inwards, lengthText } from '../schema/units.js';
import type { Finding } from './finding.js';
import type { Setup } from './setup.js';

/** Air above a lifted tip, mm. Common practice, no source. */
const AIR = 5;

/** The finished vessel on the machine: its height under the bridge, its mouth round the collet, its curve and the ball. */
export function vesselCutter({ recipe }: Setup): Finding[] {
  if (!recipe.bowl) return [];
  const vessel = makeVessel(recipe.bowl);
  return [...underBridge(vessel, recipe), ...inMouth(vessel, recipe), ...ballTooLarge(vessel, recipe)];
}

function underBridge({ setup }: Vessel, { machine, table, cutter, units }: Setup['recipe']): Finding[] {
  const text = (mm: number): string => lengthText(mm, units);
  const lift = setup.height + AIR;
  if (machine.lift !== null && machine.lift < lift)
    return [
      {
        code: 'vessel-short-lift',
        severity: 'warn',
        where: null,
        numbers: { lift: machine.lift, needed: lift },
        do: `From the foot of the shell the tip has to rise ${text(inwards(lift, units, Math.ceil))} to pass its rim, and the spindle goes up and down ${text(machine.lift)}. Carve it from both ends, turned over, or turn it on a lathe.`,
      },
    ];
  if (machine.bridge === null) return [];
  const high = setup.height + table.board + cutter.stickout + AIR;
  if (high <= machine.bridge) return [];
  return [
    {
      code: 'vessel-under-bridge',
      severity: 'warn',
      where: null,
      numbers: { high, bridge: machine.bridge },
      do: `The shell on its board with a cutter above it wants ${text(inwards(high, units, Math.ceil))} under the bridge, and there are ${text(machine.bridge)}. Carve it lower on the table, with a shorter cutter, or turn it on a lathe.`,
    },
  ];
}

function inMouth({ setup, wall }: Vessel, { cutter, machine, units }: Setup['recipe']): Finding[] {
  const text = (mm: number): string => lengthText(mm, units);
  const deep = setup.height - setup.floor;
  // The nut goes into the mouth by as much as the inside is deeper than the cutter stands out.
  const into = deep - cutter.stickout;
  if (into <= 0) return [];
  const narrow = greatest(setup.height - into, setup.height, (z) => -wall.inside.radius(z));
  const room = -2 * narrow.mm;
  if (room >= machine.collet + 2 * AIR - 1e-9) return [];
  return [
    {
      code: 'collet-in-mouth',
      severity: 'warn',
      where: null,
      numbers: { room, collet: machine.collet, deep },
      do: `The inside is ${text(deep)} deep, deeper than the cutter stands out: the collet nut (${text(machine.collet)}) would go into a mouth only ${text(room)} wide. Let the cutter stand out ${text(inwards(deep + AIR, units, Math.ceil))}, or open the mouth.`,
    },
  ];
}

function ballTooLarge({ setup, wall }: Vessel, { units }: Setup['recipe']): Finding[] {
  if (setup.ball === null) return [];
  const { inside } = wall;
  const tight = greatest(inside.from, inside.to, (z) => {
    const r = inside.hollow(z);
    return r > 0 ? -r : Number.NEGATIVE_INFINITY;
  });
  // Round the axis the wall is hollow too.
  const round = -greatest(inside.from, inside.to, (z) => -inside.radius(z)).mm;
  const least = Math.min(-tight.mm, round);
  if (setup.ball / 2 <= least + 1e-9) return [];
  const text = (mm: number): string => lengthText(mm, units);
  return [
    {
      code: 'ball-too-large',
      severity: 'warn',
      where: null,
      numbers: { ball: setup.ball, least },
      do: `The inside is as round as a ball of ${text(2 * least)} at a height of ${text(tight.z)}: a ball cutter of ${text(setup.ball)} leaves wood there. Use one of ${text(inwards(2 * least, units, Math.floor))} at most.`,
    },
  ];
}
