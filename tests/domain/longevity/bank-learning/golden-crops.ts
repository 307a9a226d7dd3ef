import type { TestedLot } from '../../../../lib/domain/longevity/bank-learning/lot-evidence';
import type { LotPrior } from '../../../../lib/domain/longevity/lot-model';
import { goldenRows } from '../../../support/golden-table';

interface TestRow {
  crop: string;
  lot: number;
  rho: number;
  probitsLost: number;
  germinated: number;
  sown: number;
  priorInitialMean: number;
  priorInitialSd: number;
  priorRateMean: number;
  priorRateSd: number;
  countsAs: number;
}

/** The lots of one crop of tests/golden/bank-learning.json, and what is believed of them before. */
export function goldenCrop(name: string): { lots: TestedLot[]; published: LotPrior; publishedCountsAs: number } {
  const rows = goldenRows<TestRow>('bank-learning', 'tests').filter(({ crop }) => crop === name);
  const [first] = rows;
  if (!first) throw new Error(`no golden crop ${name}`);
  const lots = [...new Set(rows.map(({ lot }) => lot))].map((number) => {
    const tests = rows.filter(({ lot }) => lot === number);
    return {
      tests: tests.map(({ probitsLost, germinated, sown }) => ({ probitsLost, germinated, sown })),
      intraReplicateCorrelation: tests[0]?.rho,
    };
  });
  return {
    lots,
    published: {
      initial: { mean: first.priorInitialMean, sd: first.priorInitialSd },
      logRate: { mean: first.priorRateMean, sd: first.priorRateSd },
    },
    publishedCountsAs: first.countsAs,
  };
}
