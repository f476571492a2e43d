import type { BowlSetup } from '../bowl/vessel.js';
import type { Layer } from '../generators/layer.js';
import type { Values } from '../schema/parameter.js';
import type { OwnWoods } from '../shop/own.js';

/** A recipe as read: lengths in mm, angles in radians, every default filled in. */
export interface Recipe {
  readonly name: string;
  /** The unit the recipe is written in, and the unit of every drawing made from it. */
  readonly units: 'mm' | 'in';
  /** `runsOn`: a stave whose pattern runs on over its joints. */
  readonly outline: { readonly shape: string; readonly values: Values; readonly runsOn?: boolean };
  /** The vessel whose stave this is; without it the piece stays flat. */
  readonly bowl?: BowlSetup;
  /** One layer, or a list of them, as the recipe has it. */
  readonly pattern: Layer | readonly Layer[];
  /** Thickness of the wood the pocket is cut in, and of the wood the plug is cut from. */
  readonly stock: { readonly field: number; readonly plug: number };
  readonly cutter: CutterSetup;
  /** Null where none is named: then the one cutter clears the waste too. */
  readonly roughing: RoughingSetup | null;
  readonly passes: PassSetup;
  /** Diameters of the maker's own cutters, mm, least first; null: what shops stock. */
  readonly cutters: readonly number[] | null;
  readonly fit: FitSetup;
  readonly machine: MachineSetup;
  readonly table: TableSetup;
  readonly walls: WallSetup;
  readonly times: TimeSetup;
  /** Null where the recipe names none. */
  readonly press: PressSetup | null;
  /** What parts are laid out on. */
  readonly boards: BoardSetup;
  readonly moisture: MoistureSetup;
  readonly depth: number;
  readonly skin: number;
  readonly woods: WoodSetup;
}

/** What becomes of parts that are thinner than the cutter. */
export type Thin = 'widen' | 'drop' | 'refuse';

/** A cutter as it stands in the machine, mm. */
export interface Tool {
  readonly diameter: number;
  readonly flute: number;
  readonly flutes: number;
  /** Which way its flutes push the chips. */
  readonly spiral: 'up' | 'down' | 'compression' | 'straight';
  readonly material: 'carbide' | 'steel';
  readonly shank: number;
  /** From the collet to the tip. */
  readonly stickout: number;
  readonly rpm: number;
  /** As the recipe gives it, mm a minute; null: what suits. */
  readonly feed: number | null;
}

export interface RoughingSetup extends Tool {
  /** Whether tight places of the pattern are opened for it. */
  readonly open: boolean;
}

export interface PassSetup {
  /** Left on the walls for the finishing pass, mm. */
  readonly allowance: number;
  /** How deep a pass of the cutter that roughs goes, mm. */
  readonly roughingStep: number;
  /** How deep a pass along the walls goes, mm; null: the whole depth at once. */
  readonly finishingStep: number | null;
  /** Whether the finishing cutter first clears, in steps, what the roughing cutter cannot get into. */
  readonly clearing: boolean;
  /** How far neighbouring paths of roughing lie apart, percent of the cutter. */
  readonly stepover: number;
}

export interface CutterSetup extends Tool {
  /** Slot width measured on the machine; null when not given. */
  readonly cuts: number | null;
  readonly ease: number;
  readonly thin: Thin;
  readonly touch: 'part' | 'join';
}

export interface FitSetup {
  /** Gap per side, mm. */
  readonly clearance: number;
  readonly from: 'plug' | 'pocket' | 'both';
  readonly plug: 'loose' | 'carrier';
  /** A plug that goes in face down is drawn mirrored; one on a carrier always does. */
  readonly face: 'up' | 'down';
  /** Between the plug's foot and the pocket's floor, mm. */
  readonly glueGap: number;
  /** How much the edge of the plug's foot is eased, mm. */
  readonly foot: number;
  /** How far a loose plug stands above the face, mm; on a carrier 0: there the saw room is. */
  readonly proud: number;
  /** Height between face and carrier, mm. */
  readonly sawRoom: number;
}

export interface MachineSetup {
  /** How far a cut wall may be off its drawing, either way, mm. */
  readonly accuracy: number;
  /** How nearly the same cut comes out twice, mm. */
  readonly repeatability: number;
  /** On the cutter in its finishing pass, N: an assumption behind the estimate of how walls lean. */
  readonly sideForce: number;
  /** mm/s2. */
  readonly acceleration: number;
  /** The fastest it cuts, mm a minute. */
  readonly feed: number;
  /** Turns a minute of the spindle, fewest and most. */
  readonly slowest: number;
  readonly fastest: number;
  /** Outside diameter of the collet nut, mm. */
  readonly collet: number;
  /** Clear height from the table to the bridge, and how far the spindle goes up and down, mm; null: not looked at. */
  readonly bridge: number | null;
  readonly lift: number | null;
  /** Width of the dust shoe, mm; null: none. */
  readonly shoe: number | null;
  /** Its underside above the cutter's tip, mm. */
  readonly shoeAbove: number;
}

/** How the wood lies on the machine, mm. */
export interface TableSetup {
  /** The sacrificial board under the work, and how far a cut that goes through runs into it. */
  readonly board: number;
  readonly over: number;
  readonly hold: 'tape' | 'clamps' | 'vacuum';
  /** Shear that the tape holds against, kPa. */
  readonly tape: number;
  /** Height of clamps above the face, and how far they stay away from its outline. */
  readonly clamps: number;
  readonly clampsAway: number;
  /** Height of uncut wood beside the piece above its face; null: no such wood. */
  readonly neighbours: number | null;
  /** From the middle of one piece to the next; null: one alone. */
  readonly pitch: number | null;
  /** Left under loose parts and sanded off; 0: none. */
  readonly onionSkin: number;
  readonly topTape: boolean;
}

/** Least thickness of walls and of limbs, mm; null: as drawn. */
export interface WallSetup {
  readonly least: number | null;
  readonly limbs: number | null;
}

export interface TimeSetup {
  /** Minutes. */
  readonly glueOpen: number;
  /** Hours. */
  readonly glueSet: number;
  readonly coats: number;
  /** Hours a coat. */
  readonly coatDry: number;
}

export interface PressSetup {
  /** Rated load, in tons of that kind. */
  readonly tons: number;
  readonly kind: 'us' | 'metric';
}

/** A board, mm. The grain runs along its length. */
export interface Board {
  readonly length: number;
  readonly width: number;
}

export interface BoardSetup {
  /** For the parts of a loose plug; null: no layout of them. */
  readonly plug: Board | null;
  /** For the pockets; null: no layout of them. */
  readonly field: Board | null;
  /** How many pieces are laid out on each. */
  readonly pieces: number;
}

/** Percent of the wood's dry weight. */
export interface MoistureSetup {
  readonly field: number;
  readonly plug: number;
  readonly driest: number;
  readonly dampest: number;
}

export interface WoodSetup {
  readonly field: string;
  readonly plug: string;
  /** Grain direction on the piece, radians counter-clockwise from x. */
  readonly fieldGrain: number;
  readonly plugGrain: number;
  /** Woods of pieces by name, in the order written; left out when all are of one wood. */
  readonly plugs?: readonly PlugWood[];
  /** Woods that the recipe describes itself; left out when it describes none. */
  readonly own?: OwnWoods;
}

/** The wood of every piece whose name begins with some words, or of a layer ("layer 1"). */
export interface PlugWood {
  readonly pieces: string;
  readonly wood: string;
}

/** Radius that the cutter really cuts, mm: half the measured slot, or half the nominal diameter. */
export function cutterRadius(cutter: CutterSetup): number {
  return (cutter.cuts ?? cutter.diameter) / 2;
}

/** How high the plug's walls are cut, mm: a loose plug through its wood, one on a carrier down to the carrier. */
export function plugHeight({ depth, fit, stock }: Pick<Recipe, 'depth' | 'fit' | 'stock'>): number {
  return fit.plug === 'carrier' ? depth - fit.glueGap + fit.sawRoom : stock.plug;
}

/** How far the plug stands above the face until it is planed, mm: an onion skin under it is sanded off before. */
export function standsProud({ fit, table }: Pick<Recipe, 'fit' | 'table'>): number {
  return fit.plug === 'loose' ? fit.proud - table.onionSkin : fit.proud;
}

/** The least radius any inside corner may have, mm. */
export function cornerRadius(cutter: CutterSetup): number {
  return cutterRadius(cutter) + cutter.ease;
}
