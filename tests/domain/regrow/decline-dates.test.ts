import { expect, test } from 'vitest';
import { addDays } from '../../../lib/domain/calendar/calendar-date';
import { type Decline, dateWhenLost, daysUntilLost } from '../../../lib/domain/regrow/decline-dates';

const decline: Decline = {
  today: '2026-06-01',
  probitsLostNow: 0.5,
  probitsPerDay: 0.001,
  since: { on: '2026-01-02', probitsLost: 0.2 }, // 150 days earlier
};

test('ahead of today a lot goes on ageing at the rate of its store', () => {
  expect(daysUntilLost(decline, 0.6)).toBeCloseTo(100, 9);
  expect(dateWhenLost(decline, 0.5991)).toBe('2026-09-08');
});

test('behind today it is taken to have aged evenly since the last known point', () => {
  expect(daysUntilLost(decline, 0.35)).toBeCloseTo(-75, 9);
  expect(dateWhenLost(decline, 0.3501)).toBe('2026-03-18');
  expect(daysUntilLost(decline, 0.5)).toBe(0);
  expect(dateWhenLost(decline, 0.1)).toBe('2026-01-02');
});

test('a store that does not age the seed never gets there', () => {
  expect(daysUntilLost({ ...decline, probitsPerDay: 0 }, 0.6)).toBe(Number.POSITIVE_INFINITY);
  expect(dateWhenLost({ ...decline, probitsPerDay: 1e-9 }, 0.6)).toBeNull();
  expect(dateWhenLost({ ...decline, since: { on: '2026-01-02', probitsLost: 0.5 } }, 0.3)).toBe('2026-01-02');
});

test('days ahead and the day on which so much is lost agree', () => {
  for (const days of [1, 59, 365, 20_000]) {
    expect(daysUntilLost(decline, 0.5 + days * 0.001)).toBeCloseTo(days, 6);
    expect(dateWhenLost(decline, 0.5 + days * 0.001 + 1e-9)).toBe(addDays(decline.today, days));
  }
});
