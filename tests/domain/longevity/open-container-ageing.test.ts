import { describe, expect, it } from 'vitest';
import { ageingProbits } from '../../../lib/domain/longevity/ageing';
import {
  openContainerAgeing,
  openContainerIntegral,
  openSeedIntegral,
} from '../../../lib/domain/longevity/open-container-ageing';
import { storeClimate } from '../../../lib/domain/longevity/store-climate';
import { equilibriumMoisture } from '../../../lib/domain/moisture/equilibrium';

const barley = { KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 };
const moistureAt = (relativeHumidity: number, temperatureC: number) =>
  equilibriumMoisture({ relativeHumidity, temperatureC, oilFraction: 0.02 });
const hourly = (days: number, temperatureAt: (hour: number) => number, humidityAt: (hour: number) => number) => {
  const hours = Array.from({ length: days * 24 }, (_, hour) => hour);
  return {
    epochSeconds: Float64Array.from(hours, (hour) => hour * 3600),
    temperatureC: Float64Array.from(hours, temperatureAt),
    relativeHumidity: Float64Array.from(hours, humidityAt),
  };
};
const integralOf = (...args: Parameters<typeof openContainerIntegral>) => {
  const integral = openContainerIntegral(...args);
  if (!integral.ok) throw new Error(integral.reason);
  return integral;
};

describe('openContainerAgeing', () => {
  it('agrees with the equation at constant climate to 1e-12', () => {
    const climate = storeClimate(
      hourly(
        40,
        () => 20,
        () => 0.5,
      ),
      { temperatureC: 20, relativeHumidity: 0.5 },
    );
    const moisturePercent = moistureAt(0.5, 20);
    const expected = ageingProbits(barley, [{ days: 100, temperatureC: 20, moisturePercent }]);
    const found = openContainerAgeing(integralOf(climate, barley, moistureAt), -20, 80);
    expect(Math.abs(found.probits / expected - 1)).toBeLessThan(1e-12);
    expect(found.daysTooMoist).toBe(0);
  });

  it('follows humidity and temperature as a fine sum does, and is additive', () => {
    const temperature = (hour: number) => 15 + 5 * Math.sin((2 * Math.PI * hour) / 24);
    const humidity = (hour: number) => 0.45 + 0.2 * Math.sin((2 * Math.PI * hour) / 240);
    const climate = storeClimate(hourly(41, temperature, humidity), { temperatureC: 15, relativeHumidity: 0.45 });
    const fine = Array.from({ length: 40 * 24 * 12 }, (_, i) => {
      const hour = (i + 0.5) / 12;
      return {
        days: 1 / 288,
        temperatureC: temperature(hour),
        moisturePercent: moistureAt(humidity(hour), temperature(hour)),
      };
    });
    const integral = integralOf(climate, barley, moistureAt);
    const found = openContainerAgeing(integral, 0, 40).probits;
    expect(Math.abs(found / ageingProbits(barley, fine) - 1)).toBeLessThan(0.001);
    const parts = openContainerAgeing(integral, 0, 13).probits + openContainerAgeing(integral, 13, 40).probits;
    expect(Math.abs(parts / found - 1)).toBeLessThan(1e-12);
  });

  it('counts the days in which seed was above 15 % moisture', () => {
    const climate = storeClimate(
      hourly(
        11,
        () => 20,
        () => 0.85,
      ),
      { temperatureC: 20, relativeHumidity: 0.3 },
    );
    const found = openContainerAgeing(integralOf(climate, barley, moistureAt), 0, 30);
    expect(found.daysTooMoist).toBeCloseTo(11 - 1 / 24, 9);
  });

  it('takes the target humidity where none was read', () => {
    const climate = storeClimate(
      hourly(
        10,
        () => 20,
        () => Number.NaN,
      ),
      { temperatureC: 20, relativeHumidity: 0.4 },
    );
    const expected = ageingProbits(barley, [{ days: 10, temperatureC: 20, moisturePercent: moistureAt(0.4, 20) }]);
    const found = openContainerAgeing(integralOf(climate, barley, moistureAt), 0, 10).probits;
    expect(Math.abs(found / expected - 1)).toBeLessThan(1e-12);
  });

  it('gives a reason, not a number, for a store without a humidity target', () => {
    const climate = storeClimate(
      hourly(
        10,
        () => 20,
        () => 0.5,
      ),
      { temperatureC: 20 },
    );
    expect(openContainerIntegral(climate, barley, moistureAt)).toEqual({
      ok: false,
      reason: expect.stringContaining('humidity target'),
    });
  });
});

describe('openSeedIntegral', () => {
  const climate = storeClimate(
    hourly(
      60,
      (hour) => 12 + 6 * Math.sin((2 * Math.PI * hour) / 240),
      (hour) => (hour % 50 === 0 ? Number.NaN : 0.5 + 0.49 * Math.sin((2 * Math.PI * hour) / 500)),
    ),
    { temperatureC: 12, relativeHumidity: 0.45 },
  );

  it.each([
    [0, 4.5],
    [0.2, 3],
    [0.45, 0.1],
  ])('is what moisture by moisture comes out too, with oil %d and moisture held at %d %', (oilFraction, limit) => {
    const one = integralOf(climate, barley, (relativeHumidity, temperatureC) =>
      Math.max(
        limit,
        equilibriumMoisture({ relativeHumidity: Math.min(0.95, relativeHumidity), temperatureC, oilFraction }),
      ),
    );
    const other = openSeedIntegral(climate, { constants: barley, oilFraction, lowMoistureLimitPercent: limit });
    if (!other.ok) throw new Error(other.reason);
    for (const [from, to] of [
      [-30, 0],
      [0, 17],
      [17, 60],
      [60, 200],
    ] as const) {
      const expected = openContainerAgeing(one, from, to);
      const found = openContainerAgeing(other, from, to);
      expect(Math.abs(found.probits / expected.probits - 1)).toBeLessThan(1e-12);
      expect(found.daysTooMoist).toBeCloseTo(expected.daysTooMoist, 9);
    }
  });

  it('tells crops apart in one store, whichever comes first', () => {
    const dry = openSeedIntegral(climate, { constants: barley, oilFraction: 0, lowMoistureLimitPercent: 3 });
    const oily = openSeedIntegral(climate, { constants: barley, oilFraction: 0.4, lowMoistureLimitPercent: 3 });
    if (!dry.ok || !oily.ok) throw new Error('refused');
    expect(openContainerAgeing(dry, 0, 60).probits).toBeGreaterThan(3 * openContainerAgeing(oily, 0, 60).probits);
  });

  it('gives the reason for a store without a humidity target', () => {
    const blind = storeClimate(climate.readings, { temperatureC: 12 });
    const seed = { constants: barley, oilFraction: 0, lowMoistureLimitPercent: 3 };
    expect(openSeedIntegral(blind, seed)).toEqual({ ok: false, reason: expect.stringContaining('humidity target') });
  });
});
