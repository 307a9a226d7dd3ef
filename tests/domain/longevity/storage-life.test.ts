import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  probitsToLose,
  storageLife,
  usableCondition,
  viabilityAfter,
} from '../../../lib/domain/longevity/storage-life';
import golden from '../../golden/storage-life.json';
import equation from '../../golden/viability-equation.json';
import { seedOf } from './seed-kinds';

const seeds = new Map(golden.seeds.map((row) => [row.crop, seedOf(row, row)]));
const barley = seeds.get('barley') ?? seedOf({ KE: 9.983, CW: 5.896, CH: 0.04, CQ: 0.000428 });
/** Below this a double loses its digits. */
const LEAST_NORMAL = 1e-300;
const inside = fc.record({
  moisturePercent: fc.double({ min: 2, max: 15, noNaN: true }),
  temperatureC: fc.double({ min: -30, max: 45, noNaN: true }),
});

function lifeOf(...question: Parameters<typeof storageLife>) {
  const life = storageLife(...question);
  if (!life.ok) throw new Error(life.reason);
  return life;
}

describe('storageLife', () => {
  it('agrees with R to 1e-9 over crops, moistures, temperatures and falls, held at the low limit', () => {
    for (const row of golden.life) {
      const seed = seeds.get(row.crop);
      if (!seed) throw new Error(row.crop);
      const condition = { moisturePercent: row.moisture, temperatureC: row.temperature };
      const life = lifeOf(seed, condition, { initialViability: row.initial, wantedViability: row.wanted });
      // From 98 to 97.99 % the difference of two probits keeps about twelve digits.
      expect(Math.abs(life.days - row.days), JSON.stringify(row)).toBeLessThanOrEqual(1e-10 * row.days);
      for (const [years, expected] of [
        [1, row.after1],
        [10, row.after10],
        [100, row.after100],
      ] as const) {
        const after = viabilityAfter(seed, condition, { initialViability: row.initial, days: years * 365.25 });
        expect(after.ok).toBe(true);
        if (after.ok)
          expect(Math.abs(after.viability - expected), JSON.stringify(row)).toBeLessThanOrEqual(
            1e-9 * expected + LEAST_NORMAL,
          );
      }
    }
  });

  // DERIVED values: arithmetic in R from the constants; years and percents printed to five and four digits.
  const derived = readFileSync(new URL('../../golden/viability-check-values.tsv', import.meta.url), 'utf8');
  it('agrees with the 114 derived years from 98 to 85 % and viabilities after a year, at the digits printed', () => {
    const rows = derived.trim().split('\n').slice(1);
    expect(rows).toHaveLength(114);
    for (const line of rows) {
      const [crop, moisture, temperature, , , , afterOne, years, ofInitial] = line.split('\t');
      const constants = equation.rows.find((row) => row.crop === crop);
      if (!constants) throw new Error(`no constants for ${crop}`);
      // These are of the bare equation, so no low limit stands in the way.
      const seed = seedOf(constants, { limit: 1 });
      const condition = { moisturePercent: Number(moisture), temperatureC: Number(temperature) };
      for (const [wantedViability, printed] of [
        [0.85, years],
        [0.85 * 0.98, ofInitial],
      ] as const) {
        const life = lifeOf(seed, condition, { initialViability: 0.98, wantedViability });
        expect(Math.abs(life.days / 365.25 / Number(printed) - 1), line).toBeLessThan(5.1e-5);
      }
      const after = viabilityAfter(seed, condition, { initialViability: 0.98, days: 365.25 });
      if (!after.ok) throw new Error(after.reason);
      expect(Math.abs(100 * after.viability - Number(afterOne)), line).toBeLessThan(0.0051);
    }
  });

  it('is undone by the viability after that many days', () => {
    fc.assert(
      fc.property(
        inside,
        fc.double({ min: 0.5, max: 0.999, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (condition, initialViability, share) => {
          const wantedViability = initialViability * share;
          const { days } = lifeOf(barley, condition, { initialViability, wantedViability });
          const after = viabilityAfter(barley, condition, { initialViability, days });
          expect(after.ok && Math.abs(after.viability - wantedViability)).toBeLessThan(1e-12);
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });

  it('adds: from 95 to 90 and on to 70 takes as long as from 95 to 70', () => {
    const step = (initialViability: number, wantedViability: number) =>
      lifeOf(barley, { moisturePercent: 8, temperatureC: 10 }, { initialViability, wantedViability }).days;
    expect(Math.abs((step(0.95, 0.9) + step(0.9, 0.7)) / step(0.95, 0.7) - 1)).toBeLessThan(1e-12);
  });

  it('never shortens when seed is dried or cooled', () => {
    fc.assert(
      fc.property(inside, fc.double({ min: 0, max: 1.9, noNaN: true }), (condition, less) => {
        const fall = { initialViability: 0.95, wantedViability: 0.85 };
        const { days } = lifeOf(barley, condition, fall);
        const drier = { ...condition, moisturePercent: condition.moisturePercent - less };
        const cooler = { ...condition, temperatureC: condition.temperatureC - less };
        expect(lifeOf(barley, drier, fall).days).toBeGreaterThanOrEqual(days);
        expect(lifeOf(barley, cooler, fall).days).toBeGreaterThanOrEqual(days);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('takes no time to fall to where it is', () => {
    expect(
      lifeOf(barley, { moisturePercent: 8, temperatureC: 10 }, { initialViability: 0.9, wantedViability: 0.9 }).days,
    ).toBe(0);
  });

  it('refuses a viability above the initial one, and proportions that are none', () => {
    expect(() => probitsToLose({ initialViability: 0.9, wantedViability: 0.91 })).toThrow(/wantedViability/);
    for (const bad of [0, 1, -0.1, Number.NaN]) {
      expect(() => probitsToLose({ initialViability: bad, wantedViability: 0.5 })).toThrow(RangeError);
      expect(() => probitsToLose({ initialViability: 0.9, wantedViability: bad })).toThrow(RangeError);
    }
  });
});

describe('viabilityAfter', () => {
  it('refuses days that cannot be', () => {
    for (const days of [-1, Number.NaN, Number.POSITIVE_INFINITY]) {
      const question = { initialViability: 0.9, days };
      expect(() => viabilityAfter(barley, { moisturePercent: 8, temperatureC: 10 }, question)).toThrow(/days/);
    }
  });
});

describe('usableCondition', () => {
  it('gives no pace above 15 % moisture, nor for seed that dies when dried', () => {
    expect(usableCondition(barley, { moisturePercent: 15.1, temperatureC: 5 })).toMatchObject({ ok: false });
    const dying = { ...barley, storageBehaviour: 'recalcitrant' as const };
    expect(usableCondition(dying, { moisturePercent: 8, temperatureC: 5 })).toMatchObject({ ok: false });
    expect(
      storageLife(dying, { moisturePercent: 8, temperatureC: 5 }, { initialViability: 0.9, wantedViability: 0.5 }),
    ).toMatchObject({ ok: false });
    expect(
      viabilityAfter(dying, { moisturePercent: 8, temperatureC: 5 }, { initialViability: 0.9, days: 5 }),
    ).toMatchObject({ ok: false });
  });

  it('holds moisture at the limit of the seed and says so', () => {
    const usable = usableCondition(seedOf(barley.constants, { limit: 5 }), { moisturePercent: 3, temperatureC: 5 });
    expect(usable).toMatchObject({ ok: true, moistureUsedPercent: 5, heldAtLowLimit: true });
  });

  it('warns of freezing moist seed, with the moisture it has and not the one it is held at', () => {
    const warned = usableCondition(barley, { moisturePercent: 14.5, temperatureC: -5 });
    expect(warned.ok && warned.freezing).toContain('14.5 %');
    const heldMoister = usableCondition(seedOf(barley.constants, { limit: 14.5 }), {
      moisturePercent: 5,
      temperatureC: -5,
    });
    expect(heldMoister.ok && heldMoister.freezing).toBeNull();
    const safe = usableCondition(barley, { moisturePercent: 14, temperatureC: -5 });
    expect(safe.ok && safe.freezing).toBeNull();
  });
});
