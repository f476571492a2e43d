/** Brings the focus to the picked value's field, its rule or its choices. */
export function toDock(): void {
  // A finger wants the rule; a keyboard that slides in over half the screen would hide the piece.
  const fine = matchMedia('(pointer: fine)').matches;
  const wanted = fine ? '.dock .typed, .dock .tiles :checked' : '.dock .slide';
  const to = document.querySelector<HTMLInputElement>(wanted);
  to?.focus({ preventScroll: true });
  if (fine) to?.select?.();
}
