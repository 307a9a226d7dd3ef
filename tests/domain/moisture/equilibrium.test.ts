import fc from 'fast-check';
import { expect, test } from 'vitest';
import { freshBasisFromDry } from '../../../lib/domain/moisture/basis';
import { equilibriumMoisture, relativeHumidityForMoisture } from '../../../lib/domain/moisture/equilibrium';
import golden from '../../golden/equilibrium-moisture.json';

// Derived from Cromarty's form (from memory, not a published table): oil, RH, C, % dry basis, % fresh basis.
const DERIVED: [number, number, number, number, number][] = [
  [0, 0.15, 15, 6.676, 6.258],
  [0, 0.5, 25, 12.675, 11.249],
  [0.2, 0.15, 15, 5.341, 5.07],
  [0.2, 0.5, 25, 10.14, 9.207],
  [0.45, 0.5, 25, 6.971, 6.517],
  [0, 0.3, 20, 9.475, 8.655],
];

test.each(DERIVED)('oil %d, RH %d, %d C settles at %d %% dry basis = %d %% fresh basis', (oil, rh, t, dry, fresh) => {
  const moisture = equilibriumMoisture({ relativeHumidity: rh, temperatureC: t, oilFraction: oil });
  expect(Math.abs(moisture - fresh)).toBeLessThanOrEqual(0.0005001);
  expect(Math.abs(moisture - freshBasisFromDry(dry))).toBeLessThanOrEqual(0.0005001);
});

test('agrees with R over the grid, both ways, to 1e-12', () => {
  expect(golden.rows.length).toBeGreaterThan(200);
  for (const row of golden.rows) {
    const moisture = equilibriumMoisture(row);
    expect(Math.abs(moisture / row.moisturePercent - 1), JSON.stringify({ row, moisture })).toBeLessThan(1e-12);
    const humidity = relativeHumidityForMoisture(row);
    expect(Math.abs(humidity / row.relativeHumidity - 1), JSON.stringify({ row, humidity })).toBeLessThan(1e-10);
  }
});

const humidities = fc.double({ min: 0.001, max: 0.95, noNaN: true });
const temperatures = fc.double({ min: -30, max: 50, noNaN: true });
const oils = fc.double({ min: 0, max: 0.6, noNaN: true });

test('the inverse undoes it', () => {
  fc.assert(
    fc.property(humidities, temperatures, oils, (relativeHumidity, temperatureC, oilFraction) => {
      const moisturePercent = equilibriumMoisture({ relativeHumidity, temperatureC, oilFraction });
      expect(relativeHumidityForMoisture({ moisturePercent, temperatureC, oilFraction })).toBeCloseTo(
        relativeHumidity,
        9,
      );
    }),
    { seed: 20260104 },
  );
});

test('damper air means moister seed; warmer air and oilier seed mean drier seed', () => {
  fc.assert(
    fc.property(humidities, temperatures, oils, (relativeHumidity, temperatureC, oilFraction) => {
      const here = equilibriumMoisture({ relativeHumidity, temperatureC, oilFraction });
      expect(equilibriumMoisture({ relativeHumidity: relativeHumidity * 0.9, temperatureC, oilFraction })).toBeLessThan(
        here,
      );
      expect(equilibriumMoisture({ relativeHumidity, temperatureC: temperatureC + 5, oilFraction })).toBeLessThan(here);
      expect(equilibriumMoisture({ relativeHumidity, temperatureC, oilFraction: oilFraction + 0.1 })).toBeLessThan(
        here,
      );
    }),
    { seed: 20260105 },
  );
});

test('dry air means dry seed: 0 at RH 0, both ways', () => {
  expect(equilibriumMoisture({ relativeHumidity: 0, temperatureC: 20, oilFraction: 0.2 })).toBe(0);
  expect(relativeHumidityForMoisture({ moisturePercent: 0, temperatureC: 20, oilFraction: 0.2 })).toBeCloseTo(0, 15);
});

test('answers at RH 0.95 and refuses above it, where the logarithm runs away', () => {
  const climate = { temperatureC: 20, oilFraction: 0.2 };
  const atLimit = equilibriumMoisture({ relativeHumidity: 0.95, ...climate });
  expect(() => equilibriumMoisture({ relativeHumidity: 0.9501, ...climate })).toThrow(/relativeHumidity.*0\.9501/);
  expect(relativeHumidityForMoisture({ moisturePercent: atLimit, ...climate })).toBeCloseTo(0.95, 12);
  expect(() => relativeHumidityForMoisture({ moisturePercent: atLimit + 0.01, ...climate })).toThrow(RangeError);
});

test.each([
  { relativeHumidity: -0.01, temperatureC: 20, oilFraction: 0 },
  { relativeHumidity: 15, temperatureC: 20, oilFraction: 0 },
  { relativeHumidity: Number.NaN, temperatureC: 20, oilFraction: 0 },
  { relativeHumidity: 0.2, temperatureC: 81, oilFraction: 0 },
  { relativeHumidity: 0.2, temperatureC: -61, oilFraction: 0 },
  { relativeHumidity: 0.2, temperatureC: 20, oilFraction: 45 },
  { relativeHumidity: 0.2, temperatureC: 20, oilFraction: -0.1 },
])('refuses %o', (climate) => {
  expect(() => equilibriumMoisture(climate)).toThrow(RangeError);
});
