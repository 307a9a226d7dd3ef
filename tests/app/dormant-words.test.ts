import { expect, test } from 'vitest';
import { dormantInWords } from '@/app/(bank)/reference/hard-and-dormant-seed/_parts/dormant-words';
import { dormantShare } from '@/lib/domain/germination/dormancy/dormant-share';

const between = (alive: number, aliveOf: number, germinated: number, seeds: number) =>
  dormantShare({ viability: { alive, seeds: aliveOf }, germination: { germinated, seeds } });

test('dormant seed that is shown, by its share and limits', () => {
  // From R (tests/golden/difference-interval.R): 48 of 50 less 38 of 50 is 0.2, between 0.0606 and 0.3390.
  expect(dormantInWords(between(48, 50, 38, 50), 'stained')).toMatch(
    /^20 points more are alive than germinate \(likely \d+ to \d+ points\): that much of the lot is dormant/,
  );
  expect(dormantInWords(between(48, 50, 38, 50), 'treated')).toMatch(/the treatment released it/);
});

test('limits are rounded outwards, on either side of none', () => {
  const share = between(47, 50, 44, 50);
  const text = dormantInWords(share, 'stained');
  const [, lower, upper] = text.match(/likely −(\d+) to (\d+) points/) ?? [];
  expect(-Number(lower)).toBeLessThanOrEqual(100 * share.interval.lower);
  expect(Number(upper)).toBeGreaterThanOrEqual(100 * share.interval.upper);
  expect(text).toMatch(/too little to show dormant seed, too unsure to deny it/);
});

test('more germinating than alive cannot be, and is said so', () => {
  expect(dormantInWords(between(30, 50, 190, 200), 'stained')).toMatch(/^35 points fewer.*cannot be/);
  expect(dormantInWords(between(30, 50, 190, 200), 'treated')).toMatch(/harmed the seed/);
});
