import { expect, test } from 'vitest';
import { disagreementInWords, waysToSettle } from '@/app/bench/_parts/disagreement-options';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import { benchCount, dishWith } from '@/tests/support/bench-dish';

const TODAY = '2026-11-25';

function disagreement(...counts: [string, Partial<ClassCounts> | null][]) {
  const state = dishWith(
    50,
    ...counts.map(([byName, found], index) => benchCount(`c${index}`, TODAY, found, { byName })),
  );
  const [day] = state.disagreements;
  if (!day) throw new Error('they agree');
  return day;
}

test('who counted what is said, and each number and both together can be chosen', () => {
  const day = disagreement(['Ann', { normal: 7 }], ['Ben', { normal: 5 }]);
  expect(disagreementInWords(day)).toBe('Ann counted 7, Ben counted 5');
  expect(waysToSettle(day, 50).map(({ said, found }) => [said, found?.normal])).toEqual([
    ['7', 7],
    ['5', 5],
    ['12: both, one after the other', 12],
  ]);
});

test('both together is offered only where the dish held so many', () => {
  const day = disagreement(['Ann', { normal: 7 }], ['Ben', { normal: 5 }]);
  expect(waysToSettle(day, 12)).toHaveLength(3);
  expect(waysToSettle(day, 11)).toHaveLength(2);
});

test('two who found the same are named together, and offered once', () => {
  const day = disagreement(['Ann', { normal: 7 }], ['Ben', { normal: 5 }], ['Cat', { normal: 7 }]);
  expect(disagreementInWords(day)).toBe('Ann and Cat counted 7, Ben counted 5');
  expect(waysToSettle(day, 50)).toHaveLength(3);
});

test('a count that was taken back can be left so; there is nothing to add to it', () => {
  const day = disagreement(['Ann', null], ['Ben', { normal: 5 }]);
  expect(disagreementInWords(day)).toBe('Ann took the count back, Ben counted 5');
  expect(waysToSettle(day, 50).map(({ said }) => said)).toEqual(['not counted', '5']);
});

test('none and five are no two findings that add', () => {
  const day = disagreement(['Ann', {}], ['Ben', { normal: 5 }]);
  expect(waysToSettle(day, 50).map(({ said }) => said)).toEqual(['0', '5']);
});

test('one person who counted on two phones is told so', () => {
  const day = disagreement(['Ann', { normal: 7 }], ['Ann', { normal: 5 }]);
  expect(disagreementInWords(day)).toBe('Ann counted 7 on one phone, Ann counted 5 on another');
});
