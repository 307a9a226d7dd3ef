import { expect, test } from 'vitest';
import { formatMoment, formatPoints, formatStretch } from '@/app/_format/moisture';
import { formatOnBalance } from '../../app/(bank)/reference/_parts/on-balance';
import { progressWords } from '../../app/(bank)/reference/moisture-and-drying/_parts/progress-words';
import type { DryingProgress, DryingVerdict } from '../../lib/domain/moisture/drying-progress';

const FIT = { plateau: 470, drop: 30, rate: 0.03, squares: 0.01, straight: false };
const ASKED = { targetPercent: 7, hourZero: '2026-11-18', lastHours: 81 };

function words(verdict: DryingVerdict): string {
  const progress: DryingProgress = {
    ok: true,
    moistureNowPercent: 8.34,
    moistureNowErrorPoints: 0.01,
    dryMatterG: 440,
    targetWeightG: 473.1,
    level: 0.9,
    verdict,
  };
  return progressWords(progress, ASKED);
}

test('on the way: how long after the last weighing, when that is, and between what', () => {
  expect(words({ kind: 'on-the-way', hours: 109, lowerHours: 100, upperHours: 121, fit: FIT })).toBe(
    '8.3 % now. It will be at 7.0 % **about 28 hours after the last weighing**, at 22 Nov 2026, about 13:00; likely between 19 hours and 40 hours.',
  );
});

test('a time that may lie behind already begins now; one without an end says so', () => {
  expect(words({ kind: 'on-the-way', hours: 82, lowerHours: 81, upperHours: 90, fit: FIT })).toMatch(
    /between now and 9 hours/,
  );
  const open = words({ kind: 'on-the-way', hours: 130, lowerHours: 95, upperHours: null, fit: FIT });
  expect(open).toMatch(/may also level off before that\. Not sooner than 14 hours after it\. Weigh again/);
});

test('levels off above the target: sure, or only perhaps', () => {
  const level = {
    kind: 'levels-off-above',
    settlesAtPercent: 8.1,
    lowerPercent: 8,
    upperPercent: 8.2,
    fit: FIT,
  } as const;
  expect(words({ ...level, sure: true })).toMatch(
    /\*\*It is not going to reach 7\.0 %: the air is too moist\*\*.*8\.1 % \(likely 8\.0 to 8\.2 %\)/,
  );
  expect(words({ ...level, sure: false, lowerPercent: null })).toMatch(/may not reach 7\.0 %.*\(at most 8\.2 %\)/);
});

test('what cannot be said is said to be so', () => {
  expect(words({ kind: 'cannot-say', reason: 'fewer-than-3-weighings', soonestHours: null })).toMatch(/at least three/);
  expect(words({ kind: 'cannot-say', reason: 'no-levelling-off-seen', soonestHours: 120 })).toMatch(
    /straight line.*not be reached before 23 Nov 2026, about 00:00/,
  );
  expect(progressWords({ ok: false, reason: 'lighter-than-its-dry-matter', hours: 81 }, ASKED)).toMatch(
    /21 Nov 2026.*spilled/,
  );
  expect(progressWords({ ok: false, reason: 'air-too-moist', settlesAtPercent: 8.1 }, ASKED)).toMatch(
    /brings the seed to 8\.1 %/,
  );
});

test('moments on a clock without dates are hours; the last hour of a day does not become 24:00', () => {
  expect(formatMoment(38.04, null)).toBe('hour 38');
  expect(formatMoment(23.7, '2026-11-18')).toBe('19 Nov 2026, about 00:00');
});

test('figures: a stretch of time, points with one figure that counts, grams as the balance shows them', () => {
  expect([0.4, 1, 47, 60, 300].map(formatStretch)).toEqual([
    'under an hour',
    '1 hour',
    '47 hours',
    '2.5 days',
    '13 days',
  ]);
  expect([0, 0.0079, 0.12, 1.4].map(formatPoints)).toEqual(['0', '0.008', '0.1', '1']);
  expect([1, 0.1, 0.001, 0.5].map((step) => formatOnBalance(470.43012, step))).toEqual([
    '470 g',
    '470.4 g',
    '470.430 g',
    '470.4 g',
  ]);
});
