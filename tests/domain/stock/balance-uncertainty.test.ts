import fc from 'fast-check';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import { normalQuantile } from '../../../lib/domain/statistics/normal-distribution';
import { balanceUncertainty, lotUncertainty, type SpreadLine } from '../../../lib/domain/stock/balance-uncertainty';
import {
  OWN_SEED_WEIGHT_ERROR,
  SINGLE_SEED_VARIATION,
  spreadOfAmount,
  USUAL_SEED_WEIGHT_ERROR,
} from '../../../lib/domain/stock/spread-of-amount';
import golden from '../../golden/balance-uncertainty.json';

let written = 0;
function line(seeds: number, grams: number | null = null, rest: Partial<SpreadLine> = {}): SpreadLine {
  written += 1;
  const seedsSd = spreadOfAmount({ seeds, weighedG: grams });
  return { id: `line ${written}`, reason: 'sowing', seeds, grams, seedsSd, correctsId: null, ...rest };
}
const own = { lotHasSeedWeight: true };

test('agrees with whole covariance matrices in R', () => {
  let weighedTwice = 0;
  for (const row of golden.rows) {
    const lines = row.seeds.map((seeds, index) => {
      const error = row.errors[index] as number;
      const grams = error > 0 ? (row.grams[index] as number) : null;
      if (row.errors.filter((other) => other === error && other > 0).length > 1) weighedTwice += 1;
      const seedsSd =
        error < 0
          ? (row.sds[index] as number)
          : spreadOfAmount({ seeds, weighedG: grams, seedWeightError: Math.max(0, error) });
      expect(Math.abs(seedsSd - (row.sds[index] as number)), JSON.stringify(row)).toBeLessThan(
        1e-9 * Math.max(1, seedsSd),
      );
      return line(seeds, grams, { seedsSd });
    });
    const ours = balanceUncertainty(lines, own);
    const why = JSON.stringify({ row, ours });
    expect(ours.seeds, why).toBe(row.balance);
    // what the seed weight contributes is got back as a difference of squares: half the digits stay
    expect(Math.abs(ours.sd - row.sd), why).toBeLessThan(1e-7 * Math.max(1, row.sd));
    expect(ours, why).toMatchObject({ lower: Math.floor(row.lower + 1e-6), upper: Math.ceil(row.upper - 1e-6) });
  }
  expect(golden.rows.length).toBeGreaterThan(100);
  expect(weighedTwice).toBeGreaterThan(100);
});

describe('balanceUncertainty', () => {
  test('seed counted one by one is known to the seed', () => {
    const known = balanceUncertainty([line(1000), line(-250)], own);
    expect(known).toEqual({ seeds: 750, sd: 0, lower: 750, upper: 750, level: 0.9, assumed: false });
  });

  test('what went in and came out by the same thousand-seed weight is off the same way', () => {
    // 4000 in by weight, 3000 out by weight: the seed weight is 3 % off on the 1000 left, not on 7000.
    const fine = { ownShare: OWN_SEED_WEIGHT_ERROR * 1000, alone: SINGLE_SEED_VARIATION ** 2 * 7000 };
    const { sd } = balanceUncertainty([line(4000, 10.00001), line(-3000, -7.50001)], own);
    expect(sd).toBeCloseTo(Math.sqrt(fine.ownShare ** 2 + fine.alone), 2);
  });

  test('what went in by weight and came out by count keeps the whole error of the seed weight', () => {
    const { sd } = balanceUncertainty([line(4000, 10.00001), line(-3000)], own);
    expect(sd).toBeCloseTo(Math.sqrt((OWN_SEED_WEIGHT_ERROR * 4000) ** 2 + SINGLE_SEED_VARIATION ** 2 * 4000), 2);
  });

  test("the lot's own seed weight and the crop's usual one are off each by itself", () => {
    const seedsSd = spreadOfAmount({ seeds: 1000, weighedG: 2.5, seedWeightError: USUAL_SEED_WEIGHT_ERROR });
    const deposit = line(1000, 2.5, { seedsSd });
    const out = line(-500, -1.25);
    const { sd } = balanceUncertainty([deposit, out], own);
    expect(sd ** 2).toBeCloseTo((deposit.seedsSd as number) ** 2 + (out.seedsSd as number) ** 2, 6);
  });

  test('a count says afresh what is there', () => {
    const before = [line(4000, 10.5), line(-500, -1.2)];
    const counted = [...before, line(-37, null, { reason: 'count', seedsSd: 0 })];
    expect(balanceUncertainty(before, own).sd).toBeGreaterThan(90);
    expect(balanceUncertainty(counted, own)).toMatchObject({ seeds: 3463, sd: 0, lower: 3463, upper: 3463 });
    const takenSince = balanceUncertainty([...counted, line(-100, -0.25)], own);
    expect(takenSince.sd).toBeCloseTo(spreadOfAmount({ seeds: 100, weighedG: 0.25 }), 9);
  });

  test('a packet weighed anew keeps the spread of that weighing, also where nothing was different', () => {
    const seedsSd = spreadOfAmount({ seeds: 4000, weighedG: 10.00001 });
    const lines = [line(4000), line(0, null, { reason: 'count', seedsSd })];
    expect(balanceUncertainty(lines, own).sd).toBeCloseTo(seedsSd, 9);
    // and what is then taken out by the same seed weight is off the same way
    const { sd } = balanceUncertainty([...lines, line(-4000 + 100, -9.75001)], own);
    expect(sd).toBeLessThan(0.3 * seedsSd);
  });

  test('a count that was taken back counts no more', () => {
    const deposit = line(4000, 10.5);
    const count = line(-37, null, { reason: 'count', seedsSd: 0 });
    const back = line(37, null, { reason: 'correction', correctsId: count.id });
    expect(balanceUncertainty([deposit, count, back], own)).toEqual(balanceUncertainty([deposit], own));
  });

  test('seed that was put back by a counter-entry leaves no trace in the spread', () => {
    const deposit = line(4000, 10.5);
    const out = line(-900, -2.3);
    const back = line(900, 2.3, { reason: 'correction', correctsId: out.id });
    expect(balanceUncertainty([deposit, out, back], own)).toEqual(balanceUncertainty([deposit], own));
  });

  test('a packet that was emptied holds nothing for sure', () => {
    const emptied = [line(4000, 10.5), line(-4000, -10.5)];
    expect(balanceUncertainty(emptied, own)).toMatchObject({ seeds: 0, sd: 0, lower: 0, upper: 0 });
  });

  test('the band does not go below no seed at all', () => {
    const { seeds, sd, lower, upper } = balanceUncertainty([line(4000, 10), line(-3990)], own);
    expect(seeds).toBe(10);
    expect(sd).toBeGreaterThan(100);
    expect(lower).toBe(0);
    expect(upper).toBeGreaterThan(170);
  });

  test('lines from before spreads were kept: counted where only seeds were written, weighed where grams were', () => {
    const old = { seedsSd: null };
    expect(balanceUncertainty([line(500, null, old)], own)).toMatchObject({ sd: 0, assumed: true });
    const weighed = [line(500, 1.25, old)];
    expect(balanceUncertainty(weighed, own).sd).toBe(spreadOfAmount({ seeds: 500, weighedG: 1.25 }));
    expect(balanceUncertainty(weighed, { lotHasSeedWeight: false }).sd).toBeGreaterThan(125);
    const countedSince = line(0, null, { reason: 'count', seedsSd: 0 });
    expect(balanceUncertainty([...weighed, countedSince], own).assumed).toBe(false);
  });

  test('refuses a level that is none and a spread below 0', () => {
    expect(() => balanceUncertainty([], { ...own, level: 1 })).toThrow(/level/);
    expect(() => balanceUncertainty([line(5, null, { seedsSd: -1 })], own)).toThrow(/seedsSd/);
    expect(balanceUncertainty([], own)).toMatchObject({ seeds: 0, sd: 0, lower: 0, upper: 0 });
  });
});

test('the packets of a lot are off the same way where they were weighed by its seed weight', () => {
  const [one, two] = [[line(4000, 10.00001)], [line(2000, 5.00001)]];
  const whole = lotUncertainty([one, two], own);
  expect(whole.seeds).toBe(6000);
  expect(whole.sd).toBeCloseTo(balanceUncertainty([...one, ...two], own).sd, 9);
  expect(whole.sd).toBeGreaterThan(Math.hypot(balanceUncertainty(one, own).sd, balanceUncertainty(two, own).sd));
  expect(lotUncertainty([], own)).toMatchObject({ seeds: 0, sd: 0, assumed: false });
});

describe('laws', () => {
  const lines = fc
    .array(fc.record({ seeds: fc.integer({ min: 1, max: 500 }), weighed: fc.boolean() }), { maxLength: 12 })
    .map((out) => [
      line(10_000, 25.4),
      ...out.map(({ seeds, weighed }) => line(-seeds, weighed ? -Math.max(0.01, seeds / 400) : null)),
    ]);

  test('the balance is the sum; the band holds it; a higher level never narrows it', () => {
    fc.assert(
      fc.property(lines, fc.double({ min: 0.5, max: 0.98, noNaN: true }), (ledger, level) => {
        const here = balanceUncertainty(ledger, { ...own, level });
        expect(here.seeds).toBe(ledger.reduce((sum, { seeds }) => sum + seeds, 0));
        expect(here.lower).toBeLessThanOrEqual(here.seeds);
        expect(here.upper).toBeGreaterThanOrEqual(here.seeds);
        const surer = balanceUncertainty(ledger, { ...own, level: level + 0.01 });
        expect(surer.lower).toBeLessThanOrEqual(here.lower);
        expect(surer.upper).toBeGreaterThanOrEqual(here.upper);
      }),
      { seed: 20261130 },
    );
  });

  test('between two counts the order of the lines does not matter', () => {
    fc.assert(
      fc.property(lines, (ledger) => {
        const [deposit, ...out] = ledger as [SpreadLine, ...SpreadLine[]];
        const other = balanceUncertainty([deposit, ...out.reverse()], own);
        expect(other.sd).toBeCloseTo(balanceUncertainty(ledger, own).sd, 6);
      }),
      { seed: 20261131 },
    );
  });

  test('one more counted line leaves the spread as it was, one more weighing never makes it exact', () => {
    fc.assert(
      fc.property(lines, (ledger) => {
        const { sd } = balanceUncertainty(ledger, own);
        expect(balanceUncertainty([...ledger, line(-1)], own).sd).toBe(sd);
        expect(balanceUncertainty([...ledger, line(-3, -0.01)], own).sd).toBeGreaterThan(0);
      }),
      { seed: 20261132 },
    );
  });
});

describe('simulated packets whose truth is known', () => {
  // Seeds of 2.5 mg, variation 30 % a seed; the thousand-seed weight from one hundred seeds, on a balance of 0.001 g.
  const generator = xoroshiro128plus(20261201);
  const normal = () => normalQuantile(Math.min(1 - 1e-12, Math.max(1e-12, uniformFloat64(generator))));
  const MEAN_G = 0.0025;
  const seedsWeigh = (seeds: number) => MEAN_G * (seeds + SINGLE_SEED_VARIATION * Math.sqrt(seeds) * normal());
  const read = (grams: number, decimals: number) => Number(grams.toFixed(decimals));
  const RUNS = 6000;

  /** A packet filled by weight; each withdrawal by weight or by count; perhaps weighed anew in the middle. */
  function coverage(withdrawals: readonly ('weight' | 'count' | 'stock-take')[]): number {
    let inside = 0;
    for (let run = 0; run < RUNS; run += 1) {
      const thousandSeedWeightG = seedsWeigh(100) * 10;
      const inSeeds = (grams: number) => Math.round((grams * 1000) / thousandSeedWeightG);
      let truth = 4130;
      let held = inSeeds(read(seedsWeigh(truth), 1));
      const ledger = [line(held, read((held * thousandSeedWeightG) / 1000, 1))];
      for (const how of withdrawals) {
        if (how === 'count') {
          truth -= 700;
          held -= 700;
          ledger.push(line(-700));
        } else if (how === 'weight') {
          const grams = read(seedsWeigh(700), 2);
          truth -= 700;
          held -= inSeeds(grams);
          ledger.push(line(-inSeeds(grams), -grams));
        } else {
          const grams = read(seedsWeigh(truth), 2);
          const found = inSeeds(grams);
          ledger.push(
            line(found - held, null, { reason: 'count', seedsSd: spreadOfAmount({ seeds: found, weighedG: grams }) }),
          );
          held = found;
        }
      }
      const { lower, upper } = balanceUncertainty(ledger, own);
      if (lower <= truth && truth <= upper) inside += 1;
    }
    return inside / RUNS;
  }

  // 6000 packets: standard error 0.4 points. A weight that ends in 0 is taken for a coarser one, so the bands are a little wide.
  test.each([
    { story: 'counted out', withdrawals: ['count', 'count', 'count'] },
    { story: 'weighed out', withdrawals: ['weight', 'weight', 'weight', 'weight', 'weight'] },
    { story: 'weighed and counted', withdrawals: ['weight', 'count', 'weight', 'count'] },
    { story: 'weighed anew, then weighed out', withdrawals: ['count', 'stock-take', 'weight', 'weight'] },
  ] as const)('the 90 % band holds the true number in 88 to 92 of 100: $story', ({ withdrawals }) => {
    const share = coverage(withdrawals);
    expect(share).toBeGreaterThan(0.88);
    expect(share).toBeLessThan(0.92);
  });
});
