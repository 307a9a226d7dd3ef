import fc from 'fast-check';
import { expect, test } from 'vitest';
import { equilibriumMoisture } from '../../../lib/domain/moisture/equilibrium';
import { humidityToSettleAt, settlingMoisture, temperatureToSettleAt } from '../../../lib/domain/moisture/settling';
import golden from '../../golden/moisture-settling.json';

// Derived from the equation (which is from memory): oil 0 settles at 6.258 %, oil 0.20 at 5.070 % in air of 15 C and 15 %.
test('dry at 15 C and 15 % RH: seed with 0 to 20 % oil reaches 5.1 to 6.3 %', () => {
  const reached = settlingMoisture({ relativeHumidity: 0.15, temperatureC: 15, oil: { lower: 0, upper: 0.2 } });
  expect(reached.ok && reached.lowerPercent).toBeCloseTo(5.07, 3);
  expect(reached.ok && reached.upperPercent).toBeCloseTo(6.258, 3);
});

test('the span holds the figure between, and closes when the oil is known exactly', () => {
  const air = { relativeHumidity: 0.3, temperatureC: 20 };
  const spread = settlingMoisture({ ...air, oil: { lower: 0.1, upper: 0.3 } });
  expect(
    spread.ok && spread.lowerPercent < spread.moisturePercent && spread.moisturePercent < spread.upperPercent,
  ).toBe(true);
  const known = settlingMoisture({ ...air, oil: { lower: 0.2, upper: 0.2 } });
  expect(known.ok && known.upperPercent - known.lowerPercent).toBe(0);
});

test('near saturated air gives no moisture: up to a humidity of 0.95 it answers, above it says so', () => {
  const oil = { lower: 0.2, upper: 0.2 };
  expect(settlingMoisture({ relativeHumidity: 0.95, temperatureC: 20, oil }).ok).toBe(true);
  expect(settlingMoisture({ relativeHumidity: 0.951, temperatureC: 20, oil })).toEqual({
    ok: false,
    reason: 'air-too-humid',
  });
});

test('the temperature agrees with R root finding, and so do the refusals', () => {
  let solved = 0;
  for (const row of golden.rows) {
    const ours = temperatureToSettleAt(row);
    if (row.temperatureC === null) {
      const reason = row.beyond === 1 ? 'warmer-than-the-equation-goes' : 'colder-than-the-equation-goes';
      expect(ours, JSON.stringify(row)).toEqual({ ok: false, reason });
    } else {
      solved += 1;
      expect(ours.ok && Math.abs(ours.temperatureC - row.temperatureC), JSON.stringify({ row, ours })).toBeLessThan(
        1e-9,
      );
    }
  }
  expect(solved).toBeGreaterThan(25);
  expect(golden.rows.length - solved).toBeGreaterThan(25);
});

const air = {
  relativeHumidity: fc.double({ min: 0.01, max: 0.95, noNaN: true }),
  temperatureC: fc.double({ min: -55, max: 75, noNaN: true }),
  oilFraction: fc.double({ min: 0, max: 0.6, noNaN: true }),
};

test('each question undoes the first: the air found brings the seed back to the moisture asked for', () => {
  fc.assert(
    fc.property(fc.record(air), ({ relativeHumidity, temperatureC, oilFraction }) => {
      const moisturePercent = equilibriumMoisture({ relativeHumidity, temperatureC, oilFraction });
      const humidity = humidityToSettleAt({ moisturePercent, temperatureC, oilFraction });
      expect(humidity.ok && Math.abs(humidity.relativeHumidity - relativeHumidity)).toBeLessThan(1e-9);
      const temperature = temperatureToSettleAt({ moisturePercent, relativeHumidity, oilFraction });
      expect(temperature.ok && Math.abs(temperature.temperatureC - temperatureC)).toBeLessThan(1e-8);
    }),
    { seed: 20260311 },
  );
});

test('no air is named for seed wetter than the equation goes', () => {
  expect(humidityToSettleAt({ moisturePercent: 40, temperatureC: 20, oilFraction: 0 })).toEqual({
    ok: false,
    reason: 'wetter-than-the-equation-goes',
  });
});

test('refuses what is not an air or a moisture', () => {
  const oil = { lower: 0.2, upper: 0.3 };
  expect(() => settlingMoisture({ relativeHumidity: 15, temperatureC: 15, oil })).toThrow(/relativeHumidity.*got 15/);
  expect(() => settlingMoisture({ relativeHumidity: 0.15, temperatureC: 15, oil: { lower: 0.3, upper: 0.2 } })).toThrow(
    /oil/,
  );
  expect(() => temperatureToSettleAt({ moisturePercent: 0, relativeHumidity: 0.2, oilFraction: 0 })).toThrow(
    /moisture/,
  );
  expect(() => temperatureToSettleAt({ moisturePercent: 5, relativeHumidity: 0, oilFraction: 0 })).toThrow(/Humidity/);
  expect(() => humidityToSettleAt({ moisturePercent: 100, temperatureC: 20, oilFraction: 0 })).toThrow(/got 100/);
});
