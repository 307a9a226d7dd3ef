import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { TestedLot } from '../../../../lib/domain/longevity/bank-learning/lot-evidence';
import { normalCdf, normalQuantile } from '../../../../lib/domain/statistics/normal-distribution';

/** Lots drawn from a crop whose truth is known, and tests drawn from the lots. */
export function simulatedLots({
  rngSeed,
  count,
  initial = { mean: 1.5, sd: 0.5 },
  logRate = { mean: 0, sd: 0.3 },
  testedAt = [0, 0.4, 0.8],
  seeds = 100,
}: {
  rngSeed: number;
  count: number;
  initial?: { mean: number; sd: number };
  logRate?: { mean: number; sd: number };
  /** ageing at each test, probits */
  testedAt?: readonly number[];
  seeds?: number;
}): TestedLot[] {
  const random = xoroshiro128plus(rngSeed);
  for (let skipped = 0; skipped < 20; skipped += 1) random.next(); // the first numbers of neighbouring seeds are alike
  const uniform = () => ((random.next() >>> 0) + 0.5) / 2 ** 32;
  const gauss = () => normalQuantile(uniform());
  return Array.from({ length: count }, () => {
    const lotInitial = initial.mean + initial.sd * gauss();
    const rate = Math.exp(logRate.mean + logRate.sd * gauss());
    return {
      tests: testedAt.map((probitsLost) => {
        const viability = normalCdf(lotInitial - rate * probitsLost);
        let germinated = 0;
        for (let seed = 0; seed < seeds; seed += 1) if (uniform() < viability) germinated += 1;
        return { probitsLost, germinated, sown: seeds };
      }),
    };
  });
}
