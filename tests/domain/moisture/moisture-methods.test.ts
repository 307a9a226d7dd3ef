import { expect, test } from 'vitest';
import {
  AIR_METHOD_ERROR_POINTS,
  MOISTURE_METHODS,
  moistureMethod,
} from '../../../lib/domain/moisture/moisture-methods';

test('an oven is surer than a meter, and a meter than the air over the seed', () => {
  const points = (key: string) => moistureMethod(key).standardPoints;
  expect(points('oven-low')).toBe(points('oven-high'));
  expect(points('oven-low')).toBeLessThan(points('meter'));
  expect(points('meter')).toBeLessThan(points('air'));
  // What docs/methods/moisture.md measured of the equation, and not less.
  expect(points('air')).toBeGreaterThanOrEqual(AIR_METHOD_ERROR_POINTS.rootMeanSquare);
});

test('only ovens have dishes', () => {
  expect(MOISTURE_METHODS.filter(({ oven }) => oven).map(({ key }) => key)).toEqual(['oven-low', 'oven-high']);
});

test('a method that does not exist is refused by name', () => {
  expect(() => moistureMethod('tongue')).toThrow(/moistureMethod: key .*got tongue/);
});
