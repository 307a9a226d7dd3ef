import { expect, test } from 'vitest';
import { intervalIfUneven } from '../../../lib/domain/germination/interval-if-uneven';

const dishes = (normals: number[], seeds = 50) => normals.map((normal) => ({ seeds, normal }));

test('dishes as different as chance makes them keep their plain interval', () => {
  // R prop.test(c(46, 44, 49, 41), rep(50, 4))$p.value is 0.056.
  expect(intervalIfUneven(dishes([46, 44, 49, 41]))).toBeNull();
  expect(intervalIfUneven(dishes([46, 44, 50, 41]))).not.toBeNull();
});

test('the wider interval is at the level asked for', () => {
  const at = (level: number) => {
    const found = intervalIfUneven(dishes([48, 30, 49, 41]), level);
    if (!found?.ok) throw new Error('expected an interval');
    return found;
  };
  expect(at(0.8).level).toBe(0.8);
  expect(at(0.8).lower).toBeGreaterThan(at(0.95).lower);
});

test('one dish, and dishes all alive, differ in nothing', () => {
  expect(intervalIfUneven(dishes([41]))).toBeNull();
  expect(intervalIfUneven(dishes([50, 50]))).toBeNull();
});
