import { computed, effect, signal } from '@preact/signals';
import { picked, view } from '../state/bench.js';
import { drawn } from '../state/card.js';
import type { Box, ViewName } from '../worker/protocol.js';
import {
  alike,
  type Camera,
  fitted,
  inRoom,
  matrix,
  type Point,
  pushed,
  type Room,
  toPiece,
  zoomed,
} from './camera.js';
import { answerOf } from './views.js';

/*
 * From where the drawing is looked at. All views of the face share one place; section and coupon have their own. Null:
 * the whole piece, however large the room and the piece become.
 */

export type Sheet = 'face' | 'section' | 'coupon';

export const room = signal<Room>({ width: 0, height: 0 });
const kept = signal<Readonly<Record<Sheet, Camera | null>>>({ face: null, section: null, coupon: null });

/** Are findings shown on the piece? */
export const pencilled = signal(true);
/** A value or the paper is being pulled about: nothing is measured meanwhile. */
export const pulling = signal(false);

export function sheetOf(name: ViewName): Sheet {
  return name === 'section' || name === 'coupon' ? name : 'face';
}

export const sheet = computed(() => sheetOf(view.value));

/** What is looked at, mm; null while there is nothing. */
export const box = computed<Box | null>(() =>
  sheet.value === 'face' ? (drawn.value?.figure.box ?? null) : (answerOf(view.value)?.box ?? null),
);

export const whole = computed(() => kept.value[sheet.value] === null);

export const camera = computed<Camera>(() => {
  const b = box.value;
  return kept.value[sheet.value] ?? (b ? fitted(b, room.value) : { x: 0, y: 0, scale: 1 });
});

export const transform = computed(() => matrix(camera.value, room.value));
/** Pixels a millimetre. */
export const scale = computed(() => camera.value.scale);

/** Nearer or farther about a point of the screen; about the middle when none is given. */
export function zoom(factor: number, at?: Point): void {
  const b = box.peek();
  const { width, height } = room.peek();
  if (b) keep(zoomed(camera.peek(), factor, at ?? [width / 2, height / 2], b, room.peek()));
}

export function push(dx: number, dy: number): void {
  const b = box.peek();
  if (b) keep(pushed(camera.peek(), dx, dy, b, room.peek()));
}

export function showWhole(): void {
  keep(null);
}

/** The point of the piece under a point of the screen. */
export function under(at: Point): Point {
  return toPiece(camera.peek(), room.peek(), at);
}

function keep(next: Camera | null): void {
  kept.value = { ...kept.peek(), [sheet.peek()]: next };
}

/** Another card, or another size of piece, is looked at whole. */
export function watchPiece(): () => void {
  let before: Box | null = null;
  return effect(() => {
    const now = drawn.value?.figure.box ?? null;
    if (now === null || (before && !alike(before, now)))
      kept.value = { face: null, section: null, coupon: null };
    before = now;
  });
}

/** Pixels from the edge within which a mark counts as out of sight. */
const EDGE = 24;

/** What is picked elsewhere is brought into the room. */
export function watchPicked(): () => void {
  return effect(() => {
    // Read first of all: before anything is drawn there is nothing to look for it in.
    const number = picked.value;
    const at = drawn.peek()?.findings.find((f) => f.number === number)?.at;
    if (!at || sheet.peek() !== 'face' || inRoom(camera.peek(), room.peek(), at, EDGE)) return;
    keep({ ...camera.peek(), x: at[0], y: at[1] });
  });
}
