import { expect, test } from 'vitest';
import { summariseTest } from '../../../lib/domain/germination/result';
import { retestAdvice } from '../../../lib/domain/germination/retest-advice';
import { compareTwoResults } from '../../../lib/domain/germination/two-results';

const dishes = (normals: number[], { seeds = 100, fresh = 0 } = {}) =>
  summariseTest({
    replicates: normals.map((normal) => ({ seeds, normal, abnormal: 0, hard: 0, fresh, dead: seeds - normal - fresh })),
  });
const reasons = (...arguments_: Parameters<typeof retestAdvice>) =>
  retestAdvice(...arguments_).map((one) => one.reason);
const compared = (now: number, before: number) => ({
  ...compareTwoResults({ germinated: now, seeds: 400 }, { germinated: before, seeds: 400 }),
  rose: now > before,
});

test('a test of agreeing replicates stands by itself', () => {
  expect(reasons(dishes([81, 82, 80, 81]), null)).toEqual([]);
});

test('replicates further apart than tolerated are tested again', () => {
  expect(reasons(dishes([95, 60, 90, 85]), null)).toEqual(['replicates-disagree']);
});

test('germination that rose beyond tolerance is doubted, germination that fell is not: seed ages', () => {
  expect(reasons(dishes([81, 82, 80, 81]), compared(324, 260))).toEqual(['differs-from-before']);
  expect(reasons(dishes([81, 82, 80, 81]), compared(324, 380))).toEqual([]);
  expect(reasons(dishes([81, 82, 80, 81]), compared(324, 320))).toEqual([]);
});

test('from one seed in ten still fresh, dormancy is to be broken', () => {
  expect(reasons(dishes([80, 80], { fresh: 10 }), null)).toEqual(['dormant-seed']);
  expect(reasons(dishes([80, 80], { fresh: 9 }), null)).toEqual([]);
});

test('fewer than a hundred seeds are few', () => {
  expect(reasons(dishes([40, 40], { seeds: 50 }), null)).toEqual([]);
  expect(reasons(dishes([40, 40], { seeds: 49 }), null)).toEqual(['few-seeds']);
});
