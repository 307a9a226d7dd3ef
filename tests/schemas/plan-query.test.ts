import { expect, test } from 'vitest';
import { planQuery, traysSetQuery } from '@/lib/schemas/plan-query';

test('lots are named by ticks, one or many, or joined by commas, each once', () => {
  expect(planQuery.parse({ lot: 'L-2020-001' }).chosen).toEqual(['L-2020-001']);
  expect(planQuery.parse({ lot: ['L-1', 'L-2', 'L-1', ' '], lots: 'L-3, L-2' }).chosen).toEqual(['L-3', 'L-2', 'L-1']);
  expect(planQuery.parse({})).toMatchObject({ chosen: [], q: '', group: '', page: 1, tooMany: false });
});

test('what cannot be read is left out', () => {
  expect(planQuery.parse({ lot: 'x'.repeat(50), page: 'first', q: ['kale', 'leek'], group: {} })).toMatchObject({
    chosen: [],
    page: 1,
    q: 'kale',
    group: '',
  });
});

test('more lots than can be set at once are cut off, and it is said', () => {
  const lot = Array.from({ length: 61 }, (_, index) => `L-${index}`);
  expect(planQuery.parse({ lot })).toMatchObject({ tooMany: true, chosen: lot.slice(0, 60) });
  expect(traysSetQuery.parse({ trays: 'T-0204,T-0205' })).toEqual(['T-0204', 'T-0205']);
});
