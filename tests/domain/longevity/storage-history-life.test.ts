import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysThroughHistory, viabilityAfterHistory } from '../../../lib/domain/longevity/storage-history-life';
import { storageLife } from '../../../lib/domain/longevity/storage-life';
import golden from '../../golden/storage-life.json';
import { seedOf } from './seed-kinds';

const seeds = new Map(golden.seeds.map((row) => [row.crop, seedOf(row, row)]));
const maize = seedOf({ KE: 9.993, CW: 5.993, CH: 0.0322, CQ: 0.000454 }, { oil: 0.05 });
const periods = fc.array(
  fc.record({
    days: fc.double({ min: 0, max: 2000, noNaN: true }),
    moisturePercent: fc.double({ min: 3, max: 15, noNaN: true }),
    temperatureC: fc.double({ min: -25, max: 40, noNaN: true }),
  }),
  { minLength: 1, maxLength: 5 },
);
const shedRoomFreezer = (shed: number, room: number, freezer: number) => [
  { days: shed, moisturePercent: 12.5, temperatureC: 28 },
  { days: room, moisturePercent: 8, temperatureC: 18 },
  { days: freezer, moisturePercent: 5, temperatureC: -18 },
];

describe('a history of shed, room and freezer', () => {
  it('agrees with R: viability after it all to 1e-9, days to a level against uniroot to 1e-9', () => {
    for (const row of golden.history) {
      const seed = seeds.get(row.crop);
      if (!seed) throw new Error(row.crop);
      const after = viabilityAfterHistory(seed, shedRoomFreezer(row.shed, row.room, 3650), 0.95);
      if (!after.ok) throw new Error(after.reason);
      expect(Math.abs(after.viability - row.afterAll), JSON.stringify(row)).toBeLessThanOrEqual(
        1e-9 * row.afterAll + 1e-300,
      );
      const fall = { initialViability: 0.95, wantedViability: row.wanted };
      const until = daysThroughHistory(seed, shedRoomFreezer(row.shed, row.room, 0), fall);
      expect(until.ok && Math.abs(until.days / row.days - 1), JSON.stringify(row)).toBeLessThan(1e-9);
    }
  });
});

describe('viabilityAfterHistory', () => {
  it('changes nothing when a stretch is split', () => {
    fc.assert(
      fc.property(periods, fc.nat(), fc.double({ min: 0, max: 1, noNaN: true }), (history, pick, share) => {
        const split = history.flatMap((period, index) =>
          index === pick % history.length
            ? [
                { ...period, days: period.days * share },
                { ...period, days: period.days * (1 - share) },
              ]
            : [period],
        );
        const whole = viabilityAfterHistory(maize, history, 0.97);
        const parts = viabilityAfterHistory(maize, split, 0.97);
        if (!whole.ok || !parts.ok) throw new Error('a forecast was expected');
        expect(Math.abs(parts.probitsLost - whole.probitsLost)).toBeLessThanOrEqual(1e-12 * (1 + whole.probitsLost));
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('leaves the viability where it is when there is no history', () => {
    const after = viabilityAfterHistory(maize, [], 0.97);
    expect(after.ok && Math.abs(after.viability - 0.97)).toBeLessThan(1e-15);
  });

  it('says a note once, however many stretches ask for it', () => {
    const after = viabilityAfterHistory(maize, shedRoomFreezer(1, 1, 1), 0.97);
    expect(after.ok && new Set(after.notes).size).toBe(after.ok ? after.notes.length : -1);
    expect(after.ok && after.notes.length).toBeGreaterThan(0);
  });

  it('gives no forecast when one stretch has none, nor takes what cannot be', () => {
    const wet = [{ days: 3, moisturePercent: 17, temperatureC: 20 }, ...shedRoomFreezer(1, 1, 1)];
    expect(viabilityAfterHistory(maize, wet, 0.97)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('17 %'),
    });
    expect(() => viabilityAfterHistory(maize, shedRoomFreezer(-1, 1, 1), 0.97)).toThrow(/days/);
    expect(() => viabilityAfterHistory(maize, [], 1)).toThrow(/initialViability/);
  });
});

describe('daysThroughHistory', () => {
  const fall = { initialViability: 0.97, wantedViability: 0.85 };

  it('is undone by the viability after that many days', () => {
    fc.assert(
      fc.property(periods, (history) => {
        const until = daysThroughHistory(maize, history, fall);
        if (!until.ok) throw new Error(until.reason);
        let left = until.days;
        const upTo = history.map((period, index) => {
          const days = index === history.length - 1 ? left : Math.min(left, period.days);
          left -= days;
          return { ...period, days };
        });
        const after = viabilityAfterHistory(maize, upTo, 0.97);
        expect(after.ok && Math.abs(after.viability - 0.85)).toBeLessThan(1e-9);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it('is the storage life where there is one stretch, whatever its days', () => {
    const condition = { moisturePercent: 8, temperatureC: 18 };
    const life = storageLife(maize, condition, fall);
    for (const days of [0, 5, 1e6]) {
      const until = daysThroughHistory(maize, [{ ...condition, days }], fall);
      expect(until.ok && life.ok && Math.abs(until.days / life.days - 1)).toBeLessThan(1e-12);
    }
  });

  it('does not ask about stretches that come after the fall', () => {
    const answer = daysThroughHistory(
      maize,
      [...shedRoomFreezer(4000, 1, 1), { days: 1, moisturePercent: 17, temperatureC: 5 }],
      fall,
    );
    expect(answer.ok).toBe(true);
    const early = daysThroughHistory(
      maize,
      [{ days: 1, moisturePercent: 17, temperatureC: 5 }, ...shedRoomFreezer(1, 1, 1)],
      fall,
    );
    expect(early).toMatchObject({ ok: false });
  });

  it('refuses no history, and days that cannot be', () => {
    expect(() => daysThroughHistory(maize, [], fall)).toThrow(/empty/);
    expect(() => daysThroughHistory(maize, shedRoomFreezer(Number.NaN, 1, 1), fall)).toThrow(/days/);
  });
});
