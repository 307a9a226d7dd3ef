import { expect, test } from 'vitest';
import { demoCalendar } from '@/seed-demo/generators/demo-calendar';

test('from November on the year’s own harvest is in; before that the last one is that of the year before', () => {
  expect(demoCalendar('2026-10-31').lastHarvestYear).toBe(2025);
  expect(demoCalendar('2026-11-01').lastHarvestYear).toBe(2026);
  expect(demoCalendar('2027-02-03').lastHarvestYear).toBe(2026);
});

test('seasons are counted back, and nothing happens after today', () => {
  const calendar = demoCalendar('2026-11-25');
  expect(calendar.dayIn(12, '09-10')).toBe('2014-09-10');
  expect(calendar.dayIn(0, '12-24')).toBe('2026-11-25');
  expect(calendar.notAfterToday('2026-11-26')).toBe('2026-11-25');
  expect(calendar.notAfterToday('2026-11-24')).toBe('2026-11-24');
});
