import { expect, test } from 'vitest';
import { operatingCharacteristic } from '../../../../lib/domain/germination/sample-size/operating-characteristic';
import { PUBLISHED_SEQUENTIAL_PLAN } from '../../../../lib/domain/germination/sample-size/published-sequential-plan';
import { alwaysDecides } from './always-decides';
import { goldenPlan } from './golden-plans';

const at = (seeds: number) => PUBLISHED_SEQUENTIAL_PLAN.looks.find(({ seedsTested }) => seedsTested === seeds);

test('the first two rows are those of the printed flowchart', () => {
  // Genebank manual of 2006, flowchart 8.1 (published): 29 or less regenerate, else another 40; not more than 64 of 80
  // regenerate, more than 75 keep, else a third group.
  expect(at(40)).toEqual({ seedsTested: 40, regrowAtMost: 29, keepAtLeast: null, mark: 'published' });
  expect(at(80)).toEqual({ seedsTested: 80, regrowAtMost: 64, keepAtLeast: 76, mark: 'published' });
});

test('the other rows are marked as recalled, and the plan is the one whose rates R worked out', () => {
  // Rows 120 to 400 from memory: Ellis, Hong & Roberts 1985; Hanson 1985.
  expect(PUBLISHED_SEQUENTIAL_PLAN.looks.slice(2).every(({ mark }) => mark === 'from memory')).toBe(true);
  expect({ looks: PUBLISHED_SEQUENTIAL_PLAN.looks.map(({ mark: _, ...look }) => look) }).toEqual(
    goldenPlan('published'),
  );
  expect(alwaysDecides(PUBLISHED_SEQUENTIAL_PLAN)).toBe(true);
});

test('it leans towards regrowing: a lot at 85 % is regrown four times of five, one at 80 % is kept once of 1200', () => {
  const rates = (germination: number) => operatingCharacteristic(PUBLISHED_SEQUENTIAL_PLAN, germination);
  // R, the ways of tests/golden/sequential-plan.R.
  expect(rates(0.85).regrow).toBeCloseTo(0.814, 3);
  expect(rates(0.8).keep).toBeCloseTo(0.0008, 4);
  expect(rates(0.9).regrow).toBeCloseTo(0.0439, 4);
});
