import { describe, expect, it } from 'vitest';
import { climateCostWords } from '@/app/_format/climate-cost-words';
import { formatDateRange } from '@/app/_format/date-range';
import { costInWords, normalTime } from '@/app/_format/normal-time';

describe('what a climate cost, in words', () => {
  const failure = { from: '2026-07-03', to: '2026-07-09', cropName: 'Leek', normalDays: 243 };

  it('says of a failure what it cost, and to which crop', () => {
    const words = climateCostWords({ from: '2026-07-03', to: '2026-07-09', whole: failure, failure });
    expect(words).toBe(
      '**The failure of 3–9 Jul 2026 cost the leek seed as much as eight normal months**, on top of these days themselves.',
    );
  });

  it('adds what the whole stretch cost, where it is longer than the failure', () => {
    const whole = { cropName: 'Leek', normalDays: 400 };
    expect(climateCostWords({ from: '2026-01-01', to: '2026-12-31', whole, failure })).toContain(
      'All in all, 1 Jan–31 Dec 2026 cost the leek seed as much as 13 normal months more',
    );
  });

  it('tells of no failure where the longest excursion cost nothing, and of a store kinder than its target', () => {
    const days = { from: '2026-01-01', to: '2026-12-31', failure: { ...failure, normalDays: 0.1 } };
    expect(climateCostWords({ ...days, whole: { cropName: 'Leek', normalDays: 0.2 } })).toBe(
      'All in all, 1 Jan–31 Dec 2026 cost no seed more than the target would have.',
    );
    expect(climateCostWords({ ...days, whole: { cropName: 'Leek', normalDays: -30 } })).toContain('kinder');
  });

  it('does not say seed twice', () => {
    const whole = { cropName: 'Potato (true seed)', normalDays: 30 };
    expect(climateCostWords({ from: '2026-01-01', to: '2026-01-31', whole, failure: null })).toContain(
      'the potato (true seed) as much',
    );
  });
});

it('says a cost in the unit that a person would', () => {
  const said = [1, 6.6, 13.4, 14, 30, 61, 243, 720, 1100, 36_525].map(normalTime);
  expect(said).toEqual([
    'one normal day',
    'seven normal days',
    '13 normal days',
    'two normal weeks',
    'four normal weeks',
    'two normal months',
    'eight normal months',
    '24 normal months',
    'three normal years',
    '100 normal years',
  ]);
  expect([0.4, -0.4, -2, 2].map(costInWords)).toEqual([
    'next to nothing',
    'next to nothing',
    'spared two normal days',
    'two normal days',
  ]);
});

it('says a range of days as short as it may be', () => {
  expect(formatDateRange('2026-07-03', '2026-07-03')).toBe('3 Jul 2026');
  expect(formatDateRange('2026-07-03', '2026-07-09')).toBe('3–9 Jul 2026');
  expect(formatDateRange('2026-06-28', '2026-07-09')).toBe('28 Jun–9 Jul 2026');
  expect(formatDateRange('2025-12-28', '2026-01-03')).toBe('28 Dec 2025–3 Jan 2026');
});
