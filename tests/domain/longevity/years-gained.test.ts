import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lifeGained } from '../../../lib/domain/longevity/years-gained';
import golden from '../../golden/storage-life.json';
import { seedOf } from './seed-kinds';

const seeds = new Map(golden.seeds.map((row) => [row.crop, seedOf(row, row)]));
const onion = seedOf({ KE: 6.975, CW: 3.47, CH: 0.04, CQ: 0.000428 }, { oil: 0.23 });
const fall = { initialViability: 0.95, wantedViability: 0.85 };
const condition = fc.record({
  moisturePercent: fc.double({ min: 2, max: 15, noNaN: true }),
  temperatureC: fc.double({ min: -30, max: 45, noNaN: true }),
});
function gained(...question: Parameters<typeof lifeGained>) {
  const answer = lifeGained(...question);
  if (!answer.ok) throw new Error(answer.reason);
  return answer;
}

describe('lifeGained', () => {
  it('agrees with R to 1e-10 for seed a percent drier, and for a store 5 C cooler', () => {
    for (const row of golden.gain) {
      const seed = seeds.get(row.crop);
      if (!seed) throw new Error(row.crop);
      const from = { moisturePercent: row.moisture, temperatureC: row.temperature };
      const drier = gained(seed, from, { ...from, moisturePercent: row.moisture - 1 }, fall);
      expect(Math.abs(drier.daysGained - row.drierGain), JSON.stringify(row)).toBeLessThanOrEqual(1e-10 * row.days);
      const cooler = gained(seed, from, { ...from, temperatureC: row.temperature - 5 }, fall);
      expect(Math.abs(cooler.timesAsLong / row.coolerTimes - 1), JSON.stringify(row)).toBeLessThan(1e-10);
    }
  });

  it('to and fro: what is gained one way is lost the other, and the ratios undo each other', () => {
    fc.assert(
      fc.property(condition, condition, (from, to) => {
        const there = gained(onion, from, to, fall);
        const back = gained(onion, to, from, fall);
        expect(there.daysGained + back.daysGained).toBe(0);
        expect(Math.abs(there.timesAsLong * back.timesAsLong - 1)).toBeLessThan(1e-12);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('adds step by step, and ratios multiply', () => {
    fc.assert(
      fc.property(condition, condition, condition, (a, b, c) => {
        const whole = gained(onion, a, c, fall);
        const parts = [gained(onion, a, b, fall), gained(onion, b, c, fall)] as const;
        const scale = Math.max(whole.from.days, whole.to.days, parts[0].to.days);
        expect(Math.abs(parts[0].daysGained + parts[1].daysGained - whole.daysGained)).toBeLessThan(1e-12 * scale);
        expect(Math.abs((parts[0].timesAsLong * parts[1].timesAsLong) / whole.timesAsLong - 1)).toBeLessThan(1e-12);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('gains nothing by drying below the low-moisture limit', () => {
    const atLimit = { moisturePercent: 3, temperatureC: 5 };
    expect(gained(onion, atLimit, { ...atLimit, moisturePercent: 2 }, fall)).toMatchObject({
      daysGained: 0,
      timesAsLong: 1,
    });
  });

  it('says which condition has no forecast, whichever it is', () => {
    const fine = { moisturePercent: 8, temperatureC: 5 };
    const wet = { moisturePercent: 16, temperatureC: 5 };
    for (const answer of [lifeGained(onion, fine, wet, fall), lifeGained(onion, wet, fine, fall)]) {
      expect(answer).toEqual({ ok: false, reason: expect.stringContaining('16 %') });
    }
  });
});
