import { type Matrix, multiply, rotation } from '../matrix.js';
import { Unreadable } from '../unreadable.js';
import type { Block } from './document.js';
import type { Entity } from './entity.js';

/** Most columns or rows of one insert; group codes 70 and 71 are 16 bit. */
const MOST_ROWS = 32_767;

/**
 * Where an INSERT puts its block, once for every column and row: scaled about the block's base point, turned, moved. The
 * columns and rows run along the turned axes and are not scaled.
 */
export function* insertMatrices(entity: Entity, { x, y }: Block): Generator<Matrix> {
  const [columns, rows] = [count(entity, 70), count(entity, 71)];
  const [apartX, apartY] = [entity.number(44, 0), entity.number(45, 0)];
  const turn = rotation(entity.number(50, 0));
  const [sx, sy] = [entity.number(41, 1), entity.number(42, 1)];
  const at: Matrix = [1, 0, 0, 1, entity.number(10, 0), entity.number(20, 0)];
  const scaled: Matrix = [sx, 0, 0, sy, -x * sx, -y * sy];
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const step: Matrix = [1, 0, 0, 1, column * apartX, row * apartY];
      yield multiply(at, multiply(turn, multiply(step, scaled)));
    }
}

function count(entity: Entity, code: number): number {
  const n = entity.number(code, 1);
  if (n % 1 !== 0 || n > MOST_ROWS)
    throw new Unreadable(`has ${n} ${code === 70 ? 'columns' : 'rows'}; it may have 1 to ${MOST_ROWS}`);
  return Math.max(1, n);
}
