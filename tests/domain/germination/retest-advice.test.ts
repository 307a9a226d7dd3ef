import { expect, test } from 'vitest';
import { summariseTest } from '../../../lib/domain/germination/result';
import { noTwoAgree, retestAdvice } from '../../../lib/domain/germination/retest-advice';
import { compareTwoResults } from '../../../lib/domain/germination/two-results';

const dishes = (normals: number[], { seeds = 100, fresh = 0, hard = 0, abnormal = 0 } = {}) =>
  summariseTest({
    replicates: normals.map((normal) => {
      const dead = seeds - normal - fresh - hard - abnormal;
      return { seeds, normal, abnormal, hard, fresh, dead };
    }),
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

test('from one seed in ten hard, some is to be scarified', () => {
  expect(reasons(dishes([80, 80], { hard: 10 }), null)).toEqual(['hard-seed']);
  expect(reasons(dishes([80, 80], { hard: 9 }), null)).toEqual([]);
});

test('from one seedling in ten abnormal, chemicals may have harmed them; of treated seed it is said outright', () => {
  expect(reasons(dishes([80, 80], { abnormal: 10 }), null)).toEqual(['abnormal-seedlings']);
  expect(reasons(dishes([80, 80], { abnormal: 9 }), null, { treated: true })).toEqual([]);
  const sentence = (treated: boolean) =>
    retestAdvice(dishes([80, 80], { abnormal: 10 }), null, { treated })[0]?.sentence;
  expect(sentence(true)).toMatch(/was treated.*soil or sand/);
  expect(sentence(false)).toMatch(/If chemicals.*soil or sand/);
});

test('when no two tests of one time agree, testing goes on', () => {
  const of = (germinated: number) => ({ germinated, seeds: 400 });
  expect(noTwoAgree([of(380)])).toBe(false);
  expect(noTwoAgree([of(380), of(300)])).toBe(true);
  expect(noTwoAgree([of(380), of(300), of(200)])).toBe(true);
  expect(noTwoAgree([of(380), of(300), of(302)])).toBe(false);
  expect(reasons(dishes([81, 82, 80, 81]), null, { ofOneTime: [of(324), of(380)] })).toEqual(['no-two-agree']);
});
