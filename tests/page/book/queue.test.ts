import { describe, expect, it } from 'vitest';
import { Queue } from '../../../src/page/book/queue.js';

function rest(queue: Queue): string[] {
  const out: string[] = [];
  for (let key = queue.take(); key !== undefined; key = queue.take()) out.push(key);
  return out;
}

describe('what waits to be drawn', () => {
  it('is drawn in the order of the page when it came into sight at once', () => {
    const queue = new Queue();
    queue.want(['a', 'b', 'c']);
    expect(rest(queue)).toEqual(['a', 'b', 'c']);
  });

  it('comes after what came into sight later', () => {
    const queue = new Queue();
    queue.want(['a', 'b', 'c']);
    expect(queue.take()).toBe('a');
    queue.want(['x', 'y']);
    expect(rest(queue)).toEqual(['x', 'y', 'b', 'c']);
  });

  it('is drawn once, and first, when it is seen again', () => {
    const queue = new Queue();
    queue.want(['a', 'b', 'c']);
    queue.want(['c', 'c', 'a']);
    expect(rest(queue)).toEqual(['c', 'a', 'b']);
  });

  it('is not drawn when it went out of sight before its turn', () => {
    const queue = new Queue();
    queue.want(['a', 'b', 'c']);
    queue.leave(['b', 'z']);
    expect(rest(queue)).toEqual(['a', 'c']);
  });

  it('is nothing once the book is closed', () => {
    const queue = new Queue();
    queue.want(['a', 'b']);
    queue.clear();
    expect(queue.take()).toBeUndefined();
  });
});
