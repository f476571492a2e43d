import fc from 'fast-check';
import { expect, test } from 'vitest';
import { begun, closed, redone, stepped, undone } from '../../../src/page/state/history.js';

test('steps of one drag are one step to undo; letting go ends it', () => {
  let h = begun('0');
  for (const t of ['1', '2', '3']) h = stepped(h, t, 'pattern.gap');
  h = closed(h);
  h = stepped(h, '4', 'pattern.gap');
  expect(undone(h).now).toBe('3');
  expect(undone(undone(h)).now).toBe('0');
  expect(undone(undone(undone(h))).now).toBe('0');
});

test('a step of another value is its own, and so is one of no drag', () => {
  const h = stepped(stepped(stepped(stepped(begun('0'), '1', 'a'), '2', 'b'), '3', null), '4', null);
  const back = [h, undone(h), undone(undone(h)), undone(undone(undone(h)))].map((x) => x.now);
  expect(back).toEqual(['4', '3', '2', '1']);
});

test('the same text is no step', () => {
  const h = begun('0');
  expect(stepped(h, '0', null)).toBe(h);
});

test('a new step after undoing forgets what was undone', () => {
  const h = stepped(undone(stepped(begun('0'), '1', null)), '2', null);
  expect(redone(h)).toBe(h);
  expect(undone(h).now).toBe('0');
});

test('going back and forth as often as one likes ends where it began', () => {
  fc.assert(
    fc.property(
      fc.array(fc.string({ maxLength: 3 }), { minLength: 1, maxLength: 20 }),
      fc.nat(25),
      (texts, n) => {
        let h = begun('start');
        for (const t of texts) h = stepped(h, t, null);
        const end = h.now;
        const most = h.past.length;
        for (let i = 0; i < n; i++) h = undone(h);
        if (n >= most) expect(h.now).toBe('start');
        for (let i = 0; i < n; i++) h = redone(h);
        expect(h.now).toBe(end);
      },
    ),
  );
});

test('five hundred steps are kept and no more', () => {
  let h = begun('0');
  for (let i = 1; i <= 600; i++) h = stepped(h, String(i), null);
  expect(h.past).toHaveLength(500);
  for (let i = 0; i < 500; i++) h = undone(h);
  expect(h.now).toBe('100');
});
