import { expect, test } from 'vitest';
import { combinedInWords, leftOutInWords } from '@/app/(bank)/collection/lots/[number]/_parts/combined-words';
import { combineTests, type TestToCombine } from '@/lib/domain/germination/combined-tests';

const of = (name: string, normals: number[], setOnDay: number, seeds = 50): TestToCombine => ({
  ...{ name, setOnDay, probitsLost: null },
  replicates: normals.map((normal) => ({ seeds, normal })),
});

test('tests taken together say their figure, their seeds, and that the lot is taken not to have aged', () => {
  const combined = combineTests({ tests: [of('T-1', [44, 45], 0), of('T-2', [46, 43], 30)] });
  // Wilson bounds of 178 in 200, from R prop.test(178, 200, correct = FALSE): 0.8392, 0.9262; rounded outwards
  expect(combinedInWords(combined)).toBe(
    '**89 in 100 seeds germinated** in T-2 and T-1 together (200 seeds); 19 times in 20 the truth lies between 83 and 93. ' +
      'They were set 30 days apart, and are taken as if the lot had not aged in that time.',
  );
  expect(leftOutInWords(combined)).toBeNull();
});

test('what was left out is named with its reason', () => {
  const combined = combineTests({
    tests: [of('T-0', [44, 45], -400), of('T-1', [30, 31], 0), of('T-2', [46, 43], 10), of('T-3', [44, 45], 10)],
  });
  expect(combinedInWords(combined)).toMatch(/in T-3 and T-2 together.*set on one day/);
  expect(leftOutInWords(combined)).toBe(
    'Left out: T-1 (it differs from the newer ones by more than chance), T-0 (the lot has aged since).',
  );
});

test('uneven dishes widen the limits, and it is said', () => {
  const tests = [of('T-1', [86, 97, 90, 96], 0, 100), of('T-2', [97, 87, 95, 90], 3, 100)];
  expect(combinedInWords(combineTests({ tests }))).toMatch(/allowing for uneven dishes/);
});

test('a long time apart is said in months or years', () => {
  const apart = (days: number) => {
    const tests = [of('T-1', [44, 45], 0), of('T-2', [46, 43], days)].map((one) => ({ ...one, probitsLost: 0.1 }));
    return combinedInWords(combineTests({ tests }));
  };
  expect(apart(1)).toMatch(/set 1 day apart/);
  expect(apart(365)).toMatch(/set 12 months apart/);
  expect(apart(1461)).toMatch(/set 4 years apart/);
});

test('years apart nothing is said; tests that contradict one another are named', () => {
  const apart = combineTests({ tests: [of('T-1', [44, 45], 0), of('T-2', [46, 43], 800)] });
  expect([combinedInWords(apart), leftOutInWords(apart)]).toEqual([null, null]);
  const contrary = combineTests({ tests: [of('T-1', [30, 31], 0), of('T-2', [46, 43], 5)] });
  expect(combinedInWords(contrary)).toBeNull();
  expect(leftOutInWords(contrary)).toMatch(/^No two of its tests can be taken together. Left out: T-1/);
});
