import type { Point } from './camera.js';
import { pulling, push, under, zoom } from './eye.js';
import { clearMeasured, measureAt } from './measuring.js';

/*
 * Hands on the paper: wheel and pinch bring it nearer, a drag pushes it, two taps go nearer, a pointer that rests (or
 * a finger that taps) asks for a dimension. A mark of a finding takes its own taps.
 */

/** Pixels a pointer may stray in a tap; how soon a second tap must follow, ms; how long a pointer must rest, ms. */
const STRAY = 5;
const SOON = 320;
const REST = 130;
/** A pointer that rests is still resting within so many pixels. */
const RESTING = 3;
/** What two taps, and one notch of a wheel, zoom by. */
export const NEARER = 1.8;

/** Listens on an element until stopped. */
export function gesturesOn(el: SVGSVGElement): () => void {
  const down = new Map<number, Point>();
  let start: Point = [0, 0];
  let moved = false;
  let tapped: { at: Point; when: number } | null = null;
  let rest: ReturnType<typeof setTimeout> | undefined;
  let rested: Point | null = null;

  const here = (e: MouseEvent): Point => {
    const b = el.getBoundingClientRect();
    return [e.clientX - b.left, e.clientY - b.top];
  };
  const stopResting = (): void => {
    clearTimeout(rest);
    rested = null;
  };
  const onMark = (e: Event): boolean => e.target instanceof Element && e.target.closest('.mark') !== null;

  const wheel = (e: WheelEvent): void => {
    e.preventDefault();
    stopResting();
    clearMeasured();
    const pixels = e.deltaMode === 1 ? e.deltaY * 16 : e.deltaMode === 2 ? e.deltaY * 400 : e.deltaY;
    // A pinch on a touchpad comes as a wheel with Ctrl, in small steps.
    const step = Math.min(0.6, Math.abs(pixels) * (e.ctrlKey ? 0.01 : 0.002));
    zoom(pixels < 0 ? 1 + step : 1 / (1 + step), here(e));
  };
  const pointerDown = (e: PointerEvent): void => {
    if (e.pointerType === 'mouse' && e.button !== 0 && e.button !== 1) return;
    stopResting();
    down.set(e.pointerId, here(e));
    if (down.size === 1) {
      start = here(e);
      moved = false;
    } else moved = true;
  };
  const pointerMove = (e: PointerEvent): void => {
    const now = here(e);
    const before = down.get(e.pointerId);
    if (!before) {
      hover(e, now);
      return;
    }
    if (!moved && far(start, now) <= STRAY) return;
    if (!moved) {
      moved = true;
      pulling.value = true;
      clearMeasured();
    }
    if (!el.hasPointerCapture(e.pointerId)) el.setPointerCapture(e.pointerId);
    const other = [...down].find(([id]) => id !== e.pointerId)?.[1];
    down.set(e.pointerId, now);
    if (down.size === 1) push(now[0] - before[0], now[1] - before[1]);
    else if (down.size === 2 && other) pinch(before, now, other);
  };
  const hover = (e: PointerEvent, now: Point): void => {
    if (e.pointerType === 'touch' || e.buttons !== 0) return;
    if (rested && far(rested, now) <= RESTING) return;
    stopResting();
    rested = now;
    if (!onMark(e)) rest = setTimeout(() => measureAt(under(now)), REST);
    else clearMeasured();
  };
  const pointerUp = (e: PointerEvent): void => {
    if (!down.delete(e.pointerId)) return;
    if (down.size > 0) return;
    pulling.value = false;
    if (moved || e.type === 'pointercancel' || onMark(e)) return;
    const now = here(e);
    if (tapped && e.timeStamp - tapped.when < SOON && far(tapped.at, now) < 30) {
      tapped = null;
      clearMeasured();
      zoom(NEARER, now);
      return;
    }
    tapped = { at: now, when: e.timeStamp };
    if (e.pointerType !== 'mouse') measureAt(under(now));
  };
  const leave = (e: PointerEvent): void => {
    stopResting();
    // A finger leaves when it is lifted: what it asked for stays.
    if (e.pointerType !== 'touch') clearMeasured();
  };

  el.addEventListener('wheel', wheel, { passive: false });
  el.addEventListener('pointerdown', pointerDown);
  el.addEventListener('pointermove', pointerMove);
  el.addEventListener('pointerup', pointerUp);
  el.addEventListener('pointercancel', pointerUp);
  el.addEventListener('pointerleave', leave);
  return () => {
    stopResting();
    el.removeEventListener('wheel', wheel);
    el.removeEventListener('pointerdown', pointerDown);
    el.removeEventListener('pointermove', pointerMove);
    el.removeEventListener('pointerup', pointerUp);
    el.removeEventListener('pointercancel', pointerUp);
    el.removeEventListener('pointerleave', leave);
  };
}

/** One of two fingers moved: the paper keeps to both. */
function pinch(before: Point, now: Point, other: Point): void {
  const was = far(before, other);
  if (was < 1) return;
  zoom(far(now, other) / was, [(before[0] + other[0]) / 2, (before[1] + other[1]) / 2]);
  push((now[0] - before[0]) / 2, (now[1] - before[1]) / 2);
}

function far([x0, y0]: Point, [x1, y1]: Point): number {
  return Math.sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0));
}
