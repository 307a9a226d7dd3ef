import { expect, it } from 'vitest';
import { epochSecondsOf, localDate, localMinute, nowEpochSeconds, startOfLocalDay } from '@/lib/server/local-time';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

it('a moment typed by the seed room clock comes back as it was typed', () => {
  for (const typed of ['2026-11-25T00:00', '2026-06-30T23:59', '2024-02-29T12:30']) {
    expect(localMinute(epochSecondsOf(typed) ?? 0)).toBe(typed);
  }
});

it('a moment that does not exist is none', () => {
  for (const typed of ['2026-02-30T09:00', '2026-11-25T24:30', '2026-11-25', 'yesterday', '']) {
    expect(epochSecondsOf(typed), typed).toBeNull();
  }
});

it('where today is fixed, now lies on that day', () => {
  expect(localDate(nowEpochSeconds())).toBe('2026-11-25');
  expect(startOfLocalDay('2026-11-25')).toBeLessThanOrEqual(nowEpochSeconds());
  expect(localMinute(startOfLocalDay('2026-11-25'))).toBe('2026-11-25T00:00');
});
