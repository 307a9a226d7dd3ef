import { expect, test } from 'vitest';
import { dormantShare } from '../../../../lib/domain/germination/dormancy/dormant-share';

const share = (alive: number, stained: number, germinated: number, set: number) =>
  dormantShare({ viability: { alive, seeds: stained }, germination: { germinated, seeds: set } });

test('more alive than germinate, by more than chance: dormant seed is shown', () => {
  const found = share(190, 200, 164, 200);
  expect(found.verdict).toBe('shown');
  expect(found.interval.difference).toBeCloseTo(0.13, 12);
  // tests/golden/difference-interval.json, from R: 190 of 200 less 164 of 200.
  expect(found.interval.lower).toBeGreaterThan(0.06);
});

test('a few more, as chance makes them: not shown, and not denied', () => {
  const found = share(47, 50, 44, 50);
  expect(found.verdict).toBe('not-shown');
  expect(found.interval.lower).toBeLessThan(0);
  expect(found.interval.upper).toBeGreaterThan(0.1);
});

test('fewer alive than germinate, by more than chance: one of the two tests is wrong', () => {
  expect(share(30, 50, 190, 200).verdict).toBe('contradiction');
});

test('all alive and none germinating is a wholly dormant lot', () => {
  const found = share(50, 50, 0, 50);
  expect(found).toMatchObject({ verdict: 'shown', interval: { difference: 1, upper: 1 } });
});
