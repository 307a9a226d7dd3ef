import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { connections } from '@/lib/server/database/connections';
import { climateSeries, MOST_SPANS, type SeriesSpan, spanSeconds } from '@/lib/server/queries/climate-series';
import { makeStore } from '@/tests/support/create-store';
import { logReadings } from '@/tests/support/log-readings';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

const DAY = 86_400;
const FIRST = 20_000 * DAY;

/** The same by adding up one reading after another. */
function naive(readings: readonly (readonly [number, number, number | null])[], span: number): SeriesSpan[] {
  const groups = new Map<number, (readonly [number, number, number | null])[]>();
  for (const reading of readings) {
    const key = Math.floor(reading[0] / span);
    groups.set(key, [...(groups.get(key) ?? []), reading]);
  }
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return [...groups.entries()]
    .sort(([a], [b]) => a - b)
    .map(([key, group]) => {
      const temperatures = group.map(([, temperature]) => temperature);
      const humidities = group.flatMap(([, , humidity]) => (humidity === null ? [] : [humidity]));
      const none = humidities.length === 0;
      return {
        fromEpochSeconds: key * span,
        toEpochSeconds: (key + 1) * span,
        readings: group.length,
        lowestTemperatureC: Math.min(...temperatures),
        meanTemperatureC: mean(temperatures),
        highestTemperatureC: Math.max(...temperatures),
        lowestHumidity: none ? null : Math.min(...humidities),
        meanHumidity: none ? null : mean(humidities),
        highestHumidity: none ? null : Math.max(...humidities),
      };
    });
}

function expectSame(found: SeriesSpan[], expected: SeriesSpan[]) {
  const rounded = (spans: SeriesSpan[]) =>
    spans.map((span) =>
      Object.fromEntries(
        Object.entries(span).map(([key, value]) => [
          key,
          value === null ? null : Number(Number(value).toPrecision(10)),
        ]),
      ),
    );
  expect(rounded(found)).toEqual(rounded(expected));
}

/** At any second, and often at a midnight, where stretches begin and end. */
const anyTime = fc.oneof(
  fc.integer({ min: 0, max: 40 * DAY - 1 }),
  fc.integer({ min: 0, max: 39 }).map((day) => day * DAY),
);
const anyReadings = fc
  .uniqueArray(anyTime, { minLength: 1, maxLength: 60 })
  .chain((times) =>
    fc.tuple(
      ...times.map((time) =>
        fc.tuple(
          fc.constant(FIRST + time),
          fc.integer({ min: -300, max: 400 }).map((tenths) => tenths / 10),
          fc.option(fc.integer({ min: 0, max: 100 }).map((percent) => percent / 100)),
        ),
      ),
    ),
  )
  .map((readings) => readings.toSorted((a, b) => a[0] - b[0]));

describe('readings put together by the database', () => {
  it('equal a sum over the readings one by one, from the readings and from the days alike', async () => {
    const { bulk } = connections();
    await fc.assert(
      fc.asyncProperty(
        anyReadings,
        fc.constantFrom(600, 3600, 6 * 3600, 12 * 3600, DAY, 3 * DAY, 7 * DAY),
        fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 })),
        async (readings, span, ends) => {
          // Readings are append-only: each run has a store of its own.
          const { id } = await makeStore();
          logReadings(id, readings);
          const [from, to] = ends.map((day) => FIRST + day * DAY).toSorted((a, b) => a - b) as [number, number];
          const within = readings.filter(([at]) => at >= from && at < to);
          expectSame(climateSeries(bulk, id, from, to, span), naive(within, span));
        },
      ),
      { seed: 12, numRuns: 60 },
    );
  });

  it('leave out readings that were taken back', async () => {
    const { id } = await makeStore();
    logReadings(id, [
      [FIRST, 4],
      [FIRST + 60, 30],
    ]);
    const { bulk } = connections();
    bulk.prepare(`UPDATE "Reading" SET "takenBack" = 1 WHERE "storeId" = ? AND "temperatureC" = 30`).run(id);
    expect(climateSeries(bulk, id, FIRST, FIRST + DAY, 3600)).toMatchObject([{ readings: 1, highestTemperatureC: 4 }]);
  });
});

describe('how long a span is', () => {
  it('leaves at most 801 of them, and not needlessly few, for an hour and for a century', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3600, max: 36_525 * DAY }), (seconds) => {
        const span = spanSeconds(seconds);
        expect(seconds / span).toBeLessThanOrEqual(MOST_SPANS);
        if (seconds > 2 * DAY) expect(seconds / span).toBeGreaterThan(100);
        expect(span < DAY ? DAY % span : span % DAY).toBe(0);
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  it('is some hours for a season and whole days for a year', () => {
    expect(spanSeconds(92 * DAY)).toBe(3 * 3600);
    expect(spanSeconds(365 * DAY)).toBe(DAY);
    expect(spanSeconds(5 * 365 * DAY)).toBe(3 * DAY);
  });
});
