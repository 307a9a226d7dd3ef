import { expect, test } from 'vitest';
import { ISOLATION_KEYS, ISOLATIONS, isKeptTrue, truenessRank } from '../../../lib/domain/pollination/isolation';
import { POLLINATIONS } from '../../../lib/domain/reference/crop-facts';

// The order is common practice, not a published ranking.
test('bags and hands keep seed truer than cages, cages than distance, distance than time, anything than nothing', () => {
  const order = ['bagged flowers', 'cage', 'distance', 'time', 'unknown', 'none'];
  const ranks = order.map((isolation) => truenessRank(isolation, 'insect'));
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  expect(new Set(ranks).size).toBe(order.length);
  expect(truenessRank('hand pollination', 'insect')).toBe(truenessRank('bagged flowers', 'insect'));
});

test('open-pollinated seed is kept true only in a wholly selfing crop', () => {
  expect(POLLINATIONS.filter((pollination) => isKeptTrue('none', pollination))).toEqual(['self']);
  expect(POLLINATIONS.filter((pollination) => isKeptTrue('unknown', pollination))).toEqual(['self']);
  expect(POLLINATIONS.every((pollination) => isKeptTrue('distance', pollination))).toBe(true);
});

test('a mostly selfing crop gains one step and never more than the best', () => {
  expect(truenessRank('none', 'mostly self')).toBe(5);
  expect(truenessRank('cage', 'mostly self')).toBe(1);
  expect(truenessRank('bagged flowers', 'mostly self')).toBe(1);
  expect(truenessRank('none', 'self')).toBe(1);
});

test('every isolation has its own key; an unknown word is refused', () => {
  expect(new Set(ISOLATION_KEYS).size).toBe(ISOLATIONS.length);
  expect(() => truenessRank('fence', 'insect')).toThrow(/fence/);
  expect(() => isKeptTrue('fence', 'insect')).toThrow(RangeError);
});
