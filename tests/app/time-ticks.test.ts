import fc from 'fast-check';
import { expect, it } from 'vitest';
import { timeTicks } from '@/app/_format/time-ticks';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';

const labels = (from: string, to: string) => timeTicks(toEpochDay(from), toEpochDay(to)).map(({ label }) => label);

it('are years over years, months over months, days over weeks and hours over a day', () => {
  expect(labels('2021-11-26', '2026-11-26')).toEqual(['2022', '2023', '2024', '2025', '2026']);
  expect(labels('2025-11-26', '2026-11-26')).toEqual(['Jan 2026', 'Apr 2026', 'Jul 2026', 'Oct 2026']);
  expect(labels('2026-07-02', '2026-07-09')).toEqual(['2 Jul', '4 Jul', '6 Jul', '8 Jul']);
  expect(labels('2026-07-02', '2026-07-03')).toEqual(['00:00', '06:00', '12:00', '18:00']);
});

it('are some but never too many, within the axis and rising, from a day to a century', () => {
  fc.assert(
    fc.property(fc.integer({ min: -10_000, max: 25_000 }), fc.integer({ min: 1, max: 18_300 }), (from, length) => {
      const ticks = timeTicks(from, from + length);
      expect(ticks.length).toBeGreaterThan(0);
      expect(ticks.length).toBeLessThanOrEqual(7);
      ticks.reduce(
        (before, { epochSeconds }) => {
          expect(epochSeconds).toBeGreaterThan(before);
          expect(epochSeconds).toBeLessThan((from + length) * 86_400);
          return epochSeconds;
        },
        from * 86_400 - 1,
      );
    }),
    { seed: 8, numRuns: 300 },
  );
});
