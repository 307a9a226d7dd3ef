import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moistestThatReaches, warmestThatReaches } from '../../../lib/domain/longevity/reach-goal';
import { storageLife } from '../../../lib/domain/longevity/storage-life';
import golden from '../../golden/storage-goal.json';
import { seedOf } from './seed-kinds';

const seeds = new Map(golden.seeds.map((row) => [row.crop, seedOf(row, { limit: row.low })]));
const seedCalled = (crop: string) => seeds.get(crop) ?? seedOf({ KE: Number.NaN, CW: 0, CH: 0, CQ: 0 });
const barley = seedCalled('barley');
const from95to85 = { initialViability: 0.95, wantedViability: 0.85 };
const goalOf = (row: { initial: number; wanted: number; years: number }) => ({
  initialViability: row.initial,
  wantedViability: row.wanted,
  days: row.years * 365.25,
});
const aGoal = fc.record({
  initialViability: fc.double({ min: 0.6, max: 0.999, noNaN: true }),
  wantedViability: fc.double({ min: 0.05, max: 0.59, noNaN: true }),
  days: fc.double({ min: 1, max: 100_000, noNaN: true }),
});

describe('moistestThatReaches', () => {
  it('agrees with R uniroot to 1e-10 %, at the ends too', () => {
    for (const row of golden.moist) {
      const reach = moistestThatReaches(seedCalled(row.crop), row.temperature, goalOf(row));
      const kind = reach.ok ? (reach.isAtLimit ? 'all' : 'some') : 'none';
      expect(kind, JSON.stringify(row)).toBe(row.kind);
      if (reach.ok)
        expect(Math.abs(reach.moisturePercent - (row.answer ?? 0)), JSON.stringify(row)).toBeLessThan(1e-10);
    }
  });

  it('is undone by the storage life, and is the edge: a little moister does not reach it', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 45, noNaN: true }), aGoal, (temperatureC, goal) => {
        const reach = moistestThatReaches(barley, temperatureC, goal);
        if (!reach.ok || reach.isAtLimit) return;
        const at = storageLife(barley, { moisturePercent: reach.moisturePercent, temperatureC }, goal);
        expect(at.ok && Math.abs(at.days / goal.days - 1)).toBeLessThan(1e-9);
        const moister = storageLife(barley, { moisturePercent: reach.moisturePercent + 0.001, temperatureC }, goal);
        expect(moister.ok && moister.days).toBeLessThan(goal.days);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('allows moister seed the colder the store, down to freezing, where 14 % is the most', () => {
    const at = (temperatureC: number) => {
      const reach = moistestThatReaches(barley, temperatureC, { ...from95to85, days: 3652.5 });
      return reach.ok ? reach.moisturePercent : 0;
    };
    expect(at(25)).toBeLessThan(at(20));
    expect(at(20)).toBeLessThan(at(5));
    expect(moistestThatReaches(barley, -0.1, { ...from95to85, days: 1 })).toMatchObject({
      moisturePercent: 14,
      isAtLimit: true,
    });
    expect(moistestThatReaches(barley, 0, { ...from95to85, days: 1 })).toMatchObject({
      moisturePercent: 15,
      isAtLimit: true,
    });
  });

  it('reaches a goal that the driest seed just meets, and not one a trace longer', () => {
    const best = storageLife(barley, { moisturePercent: 4.2, temperatureC: 20 }, from95to85);
    const days = best.ok ? best.days : 0;
    const met = moistestThatReaches(barley, 20, { ...from95to85, days });
    expect(met.ok && Math.abs(met.moisturePercent - 4.2)).toBeLessThan(1e-9);
    const missed = moistestThatReaches(barley, 20, { ...from95to85, days: days * (1 + 1e-9) });
    expect(missed).toMatchObject({ ok: false, bestDays: days });
    expect(!missed.ok && missed.reason).toContain('drying below 4.2 % gains nothing more');
  });

  it('says of seed that dies when dried why there is no answer', () => {
    const dying = { ...barley, storageBehaviour: 'recalcitrant' as const };
    const answer = moistestThatReaches(dying, 5, { ...from95to85, days: 10 });
    expect(answer).toMatchObject({ ok: false, bestDays: null, reason: expect.stringContaining('dies when dried') });
  });
});

describe('warmestThatReaches', () => {
  it('agrees with R uniroot to 1e-9 C, at the ends too', () => {
    for (const row of golden.warm) {
      const reach = warmestThatReaches(seedCalled(row.crop), row.moisture, goalOf(row));
      const kind = reach.ok ? (reach.isAtLimit ? 'all' : 'some') : 'none';
      expect(kind, JSON.stringify(row)).toBe(row.kind);
      if (reach.ok) expect(Math.abs(reach.temperatureC - (row.answer ?? 999)), JSON.stringify(row)).toBeLessThan(1e-9);
    }
  });

  it('is undone by the storage life, and is the edge: a little warmer does not reach it', () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 15, noNaN: true }), aGoal, (moisturePercent, goal) => {
        const reach = warmestThatReaches(barley, moisturePercent, goal);
        if (!reach.ok || reach.isAtLimit) return;
        const at = storageLife(barley, { moisturePercent, temperatureC: reach.temperatureC }, goal);
        expect(at.ok && Math.abs(at.days / goal.days - 1)).toBeLessThan(1e-9);
        const warmer = storageLife(barley, { moisturePercent, temperatureC: reach.temperatureC + 0.001 }, goal);
        expect(warmer.ok && warmer.days).toBeLessThan(goal.days);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('and the moistest seed lead back to each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 4.3, max: 13.9, noNaN: true }), aGoal, (moisturePercent, goal) => {
        const warm = warmestThatReaches(barley, moisturePercent, goal);
        if (!warm.ok || warm.isAtLimit) return;
        const moist = moistestThatReaches(barley, warm.temperatureC, goal);
        expect(moist.ok && Math.abs(moist.moisturePercent - moisturePercent)).toBeLessThan(1e-9);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('answers with the best temperature itself where only that reaches the goal', () => {
    const squareOnly = seedCalled('square only');
    const best = storageLife(squareOnly, { moisturePercent: 8, temperatureC: 0 }, from95to85);
    const reach = warmestThatReaches(squareOnly, 8, { ...from95to85, days: best.ok ? best.days : 0 });
    expect(reach.ok && Math.abs(reach.temperatureC)).toBeLessThan(1e-6);
  });

  it('does not send seed above 14 % into the freezer, and says why', () => {
    const goal = { ...from95to85, days: 30 * 365.25 };
    const answer = warmestThatReaches(barley, 14.5, goal);
    expect(!answer.ok && answer.reason).toContain('freezing can kill seed');
    expect(warmestThatReaches(barley, 14, { ...goal, days: 1500 })).toMatchObject({ ok: true });
  });

  it('gives no store above 15 % moisture', () => {
    const answer = warmestThatReaches(barley, 16, { ...from95to85, days: 10 });
    expect(answer).toMatchObject({ ok: false, bestDays: null, reason: expect.stringContaining('does not hold') });
  });
});

describe('both', () => {
  it('refuse a goal without a fall or without days, and constants with the wrong sign', () => {
    const goal = { ...from95to85, days: 10 };
    for (const ask of [moistestThatReaches, warmestThatReaches]) {
      expect(() => ask(barley, 8, { ...goal, days: 0 })).toThrow(/days/);
      expect(() => ask(barley, 8, { ...goal, days: Number.POSITIVE_INFINITY })).toThrow(/days/);
      expect(() => ask(barley, 8, { ...goal, wantedViability: 0.95 })).toThrow(/wantedViability/);
      for (const name of ['CW', 'CH', 'CQ']) {
        const odd = { ...barley, constants: { ...barley.constants, [name]: -1 } };
        expect(() => ask(odd, 8, goal)).toThrow(name);
      }
    }
  });
});
