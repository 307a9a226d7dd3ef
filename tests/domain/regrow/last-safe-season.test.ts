import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nextSowingDates } from '../../../lib/domain/calendar/season';
import { fitLot } from '../../../lib/domain/longevity/lot-model';
import { chanceOfRaisingOn, lastSafeSeason, type SowingOutlook } from '../../../lib/domain/regrow/last-safe-season';
import { chanceOfAtLeast } from '../../../lib/domain/regrow/raising-chance';
import { normalCdf } from '../../../lib/domain/statistics/normal-distribution';

const outlook: SowingOutlook = {
  posterior: fitLot({
    tests: [{ probitsLost: 0.1, germinated: 92, sown: 100 }],
    prior: { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } },
  }),
  probitsLostNow: 0.2,
  probitsPerDay: 0.0002,
  today: '2026-11-25',
  seedsLeft: 400,
  plantsNeeded: 40,
  emergence: 0.8,
};

describe('lastSafeSeason', () => {
  test('is safe in that season and not in the next', () => {
    const season = lastSafeSeason(outlook, 4) as number;
    const sowings = nextSowingDates(outlook.today, 4, 150);
    const at = sowings.findIndex((sowing) => sowing.season === season);
    expect(at).toBeGreaterThan(0);
    expect(chanceOfRaisingOn(outlook, sowings[at]?.sowOn as string)).toBeGreaterThanOrEqual(0.95);
    expect(chanceOfRaisingOn(outlook, sowings[at + 1]?.sowOn as string)).toBeLessThan(0.95);
  });

  test('agrees with the plain equation when the lot is known exactly', () => {
    const known = {
      ...outlook,
      probitsPerDay: 0.001,
      probitsLostNow: 0,
      posterior: fitLot({ tests: [], prior: { initial: { mean: 2, sd: 0.001 }, logRate: { mean: 0, sd: 0.001 } } }),
    };
    const expected = nextSowingDates(known.today, 4, 150).filter(({ sowOn }) => {
      const days = (Date.parse(sowOn) - Date.parse(known.today)) / 86_400_000;
      return chanceOfAtLeast(40, 400, 0.8 * normalCdf(2 - 0.001 * days)) >= 0.95;
    });
    expect(lastSafeSeason(known, 4)).toBe(expected.at(-1)?.season);
  });

  test('is past when even the next sowing is not safe, and beyond the horizon when 150 are', () => {
    expect(lastSafeSeason({ ...outlook, probitsLostNow: 4 }, 4)).toBe('past');
    expect(lastSafeSeason({ ...outlook, probitsPerDay: 0 }, 4)).toBe('beyond horizon');
  });

  test('is past with fewer seeds than plants, however alive', () => {
    expect(lastSafeSeason({ ...outlook, seedsLeft: 39, probitsPerDay: 0 }, 4)).toBe('past');
    expect(lastSafeSeason({ ...outlook, seedsLeft: 0 }, 4)).toBe('past');
  });

  test('comes no later with fewer seeds, more plants, a warmer store or more assurance', () => {
    const asNumber = (season: ReturnType<typeof lastSafeSeason>) =>
      season === 'past' ? 0 : season === 'beyond horizon' ? 9999 : season;
    fc.assert(
      fc.property(
        fc.integer({ min: 60, max: 2000 }),
        fc.integer({ min: 5, max: 100 }),
        fc.double({ min: 0.00002, max: 0.002, noNaN: true }),
        (seedsLeft, plantsNeeded, probitsPerDay) => {
          const lot = { ...outlook, seedsLeft, plantsNeeded, probitsPerDay };
          const season = asNumber(lastSafeSeason(lot, 4));
          expect(asNumber(lastSafeSeason({ ...lot, seedsLeft: Math.floor(seedsLeft * 0.8) }, 4))).toBeLessThanOrEqual(
            season,
          );
          expect(asNumber(lastSafeSeason({ ...lot, plantsNeeded: plantsNeeded + 5 }, 4))).toBeLessThanOrEqual(season);
          expect(asNumber(lastSafeSeason({ ...lot, probitsPerDay: probitsPerDay * 1.5 }, 4))).toBeLessThanOrEqual(
            season,
          );
          expect(asNumber(lastSafeSeason(lot, 4, 0.98))).toBeLessThanOrEqual(season);
        },
      ),
      { seed: 20260120, numRuns: 30 },
    );
  });

  test('refuses figures outside their range', () => {
    expect(() => lastSafeSeason({ ...outlook, seedsLeft: 1.5 }, 4)).toThrow(/seedsLeft.*1\.5/);
    expect(() => lastSafeSeason({ ...outlook, probitsPerDay: -1 }, 4)).toThrow(/probitsPerDay/);
    expect(() => lastSafeSeason({ ...outlook, emergence: 0 }, 4)).toThrow(/emergence/);
    expect(() => lastSafeSeason(outlook, 4, 95)).toThrow(/assurance.*95/);
    expect(() => lastSafeSeason(outlook, 0)).toThrow(/sowingMonth/);
    expect(() => chanceOfRaisingOn(outlook, '2026-11-24')).toThrow(RangeError);
  });
});
