import { expect, test } from 'vitest';
import { dormantNextSteps } from '@/lib/domain/germination/dormancy/next-steps';

const steps = (hard: number, fresh: number, preTreatment: string | null = null) =>
  dormantNextSteps({ hard, fresh, preTreatment }).map(({ step }) => step);

test('hard seed is scarified, fresh seed is chilled, and both can be looked into', () => {
  expect(steps(0, 0)).toEqual([]);
  expect(steps(3, 0)).toEqual(['scarify', 'tetrazolium', 'cut']);
  expect(steps(0, 3)).toEqual(['pre-chill', 'tetrazolium', 'cut']);
  expect(steps(1, 1)).toEqual(['scarify', 'pre-chill', 'tetrazolium', 'cut']);
});

test('the crop’s own treatment comes before the general one, for fresh seed alone', () => {
  expect(steps(0, 2, 'potassium nitrate, 0.2 %')).toEqual(['own-treatment', 'pre-chill', 'tetrazolium', 'cut']);
  expect(steps(2, 0, 'potassium nitrate, 0.2 %')).toEqual(['scarify', 'tetrazolium', 'cut']);
  const [own] = dormantNextSteps({ hard: 0, fresh: 1, preTreatment: 'light' });
  expect(own?.text).toContain('as the method says: light.');
});
