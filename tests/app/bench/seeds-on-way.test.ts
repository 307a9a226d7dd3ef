import { expect, test } from 'vitest';
import { dishPlaces } from '@/app/(bank)/germination/_parts/dish-positions';
import { placesOnWay } from '@/app/bench/_parts/seeds-on-way';

const row = { places: [0, 10, 20, 30, 40].map((x) => ({ x, y: 0 })), spacing: 10 };

test('a tap finds the nearest seed within reach, and none beyond it', () => {
  expect(placesOnWay(row, { x: 13, y: 2 }, { x: 13, y: 2 }, 8)).toEqual([1]);
  expect(placesOnWay(row, { x: 13, y: 9 }, { x: 13, y: 9 }, 8)).toEqual([]);
});

test('a swipe reported in one leap passes over no seed', () => {
  expect(placesOnWay(row, { x: 0, y: 1 }, { x: 40, y: 1 }, 4.5)).toEqual([0, 1, 2, 3, 4]);
});

test('a swipe between two rows touches neither', () => {
  expect(placesOnWay(row, { x: 0, y: 6 }, { x: 40, y: 6 }, 4.5)).toEqual([]);
});

test('each seed of a dish of 100 is found by a tap on it', () => {
  const lying = dishPlaces(100);
  const found = lying.places.map((at) => placesOnWay(lying, at, at, lying.spacing * 0.8));
  expect(found).toEqual(lying.places.map((_, place) => [place]));
});
