import { describe, expect, test } from 'vitest';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { storeClimate } from '@/lib/domain/longevity/store-climate';
import { demoCalendar } from '@/seed-demo/generators/demo-calendar';
import { storeReadings } from '@/seed-demo/generators/store-readings';
import { FRIDGE_FAILURE, STORES } from '@/seed-demo/scenarios/stores';
import type { ClimateStory, StoreKey } from '@/seed-demo/scenarios/story';

const TODAY = '2026-11-25';
const calendar = demoCalendar(TODAY);

function readingsOf(key: StoreKey) {
  const story = STORES.find((store) => store.key === key);
  return storeReadings(key, story?.climate as ClimateStory, calendar);
}

function meanBetween(values: Float64Array, seconds: Float64Array, from: string, to: string): number {
  const inside = [...values].filter((_, index) => {
    const at = seconds[index] as number;
    return at >= toEpochDay(from) * 86_400 && at < toEpochDay(to) * 86_400;
  });
  expect(inside.length).toBeGreaterThan(20);
  return inside.reduce((sum, value) => sum + value, 0) / inside.length;
}

describe('what the loggers wrote', () => {
  test('every store gives readings that a climate can be made of, the last before today', () => {
    let total = 0;
    for (const { key, climate, targetTemperatureC } of STORES) {
      if (!climate || targetTemperatureC === undefined) continue;
      const readings = readingsOf(key);
      total += readings.epochSeconds.length;
      expect(() => storeClimate(readings, { temperatureC: targetTemperatureC })).not.toThrow();
      expect(readings.epochSeconds.at(-1)).toBeLessThan(toEpochDay(TODAY) * 86_400);
    }
    expect(total).toBeGreaterThan(80_000);
    expect(total).toBeLessThanOrEqual(150_000);
  });

  test('the fridge stood warm and damp for weeks in one summer, and was cold before and after', () => {
    const { epochSeconds, temperatureC, relativeHumidity } = readingsOf('fridge');
    expect(FRIDGE_FAILURE.season).toBe(3);
    const mean = (from: string, to: string) => meanBetween(temperatureC, epochSeconds, from, to);
    expect(mean('2023-06-01', '2023-07-01')).toBeLessThan(5);
    expect(mean('2023-07-06', '2023-08-10')).toBeGreaterThan(20);
    expect(mean('2023-08-20', '2023-09-20')).toBeLessThan(5);
    expect(meanBetween(relativeHumidity, epochSeconds, '2023-07-06', '2023-08-10')).toBeGreaterThan(0.75);
  });

  test('loggers were out for longer than a gap may be bridged', () => {
    for (const key of ['freezer', 'fridge', 'pantry', 'loft'] as const) {
      const gaps = storeClimate(readingsOf(key), { temperatureC: 4 }).gaps;
      expect(gaps.length, key).toBeGreaterThan(0);
    }
  });

  test('a freezer’s logger has no humidity, a pantry is warmest in late summer', () => {
    expect([...readingsOf('freezer').relativeHumidity].every(Number.isNaN)).toBe(true);
    const { epochSeconds, temperatureC } = readingsOf('pantry');
    const summer = meanBetween(temperatureC, epochSeconds, '2025-07-20', '2025-08-20');
    const winter = meanBetween(temperatureC, epochSeconds, '2025-12-20', '2026-01-20');
    expect(summer - winter).toBeGreaterThan(3);
  });

  test('the same day gives the same readings', () => {
    expect(readingsOf('loft')).toEqual(readingsOf('loft'));
  });
});
