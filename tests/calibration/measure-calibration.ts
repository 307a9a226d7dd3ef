/** How often the lot model's bands hold the truth, and its chances come true, over many simulated lots. */
import { assumedCorrelation } from '../../lib/domain/germination/assumed-correlation';
import { fitLot, type LotPosterior, probabilityBelow, viabilityAt } from '../../lib/domain/longevity/lot-model';
import { INITIAL_PRIOR } from '../../lib/domain/longevity/priors';
import { randomFor } from '../../seed-demo/random';
import type { Scenario } from './scenarios';
import { type SimulatedLot, simulateLot } from './simulate-lot';

export const LEVELS = [0.5, 0.8, 0.9, 0.95] as const;
export const BINS = 10;
/** Lots with no test, with one, with two or three, with more. */
export const TEST_GROUPS = ['no test', '1 test', '2 or 3 tests', '4 or 5 tests'] as const;

export interface Coverage {
  lots: number;
  /** lots whose band of each of LEVELS holds their true viability */
  covered: number[];
  /** lots that are worse than the whole 90 % band, and better */
  worse: number;
  better: number;
}

export interface ChanceBin {
  lots: number;
  /** sum of the chances said */
  said: number;
  /** lots that are below */
  below: number;
}

export interface Calibration {
  all: Coverage;
  byTests: Coverage[];
  chances: ChanceBin[];
}

/**
 * @param scenario  what is simulated
 * @param lots      how many lots
 * @returns the counts; the same for the same arguments, on every machine
 */
export function measureCalibration(scenario: Scenario, lots: number): Calibration {
  const random = randomFor(`calibration: ${scenario.name}`);
  const all = noCoverage();
  const byTests = TEST_GROUPS.map(noCoverage);
  const chances: ChanceBin[] = Array.from({ length: BINS }, () => ({ lots: 0, said: 0, below: 0 }));
  for (let i = 0; i < lots; i += 1) {
    const lot = simulateLot(random, scenario);
    const posterior = posteriorOf(lot, scenario);
    const sides = sidesOf(posterior, lot);
    count(all, sides);
    count(byTests[groupOf(lot)] as Coverage, sides);
    const chance = probabilityBelow(posterior, lot);
    const bin = chances[Math.min(BINS - 1, Math.floor(chance * BINS))] as ChanceBin;
    bin.lots += 1;
    bin.said += chance;
    if (lot.viability < lot.threshold) bin.below += 1;
  }
  return { all, byTests, chances };
}

/** As the product fits a lot: even dishes together, uneven ones one by one. */
function posteriorOf({ tests }: SimulatedLot, { believedLogRate, truth, correlation }: Scenario): LotPosterior {
  const intraReplicateCorrelation = {
    told: () => truth.correlation,
    'by rule': () => assumedCorrelation(tests.map(({ dishes }) => dishes)),
    ignored: () => 0,
  }[correlation]();
  return fitLot({
    tests: tests.flatMap(({ probitsLost, dishes }) =>
      dishes.map(({ seeds, counted }) => ({ probitsLost, germinated: counted, sown: seeds })),
    ),
    prior: { initial: INITIAL_PRIOR, logRate: believedLogRate },
    intraReplicateCorrelation,
  });
}

/** A viability nearer to 0 or 1 than this is not told apart from it on any screen. */
const TOLD_APART = 1e-9;
/** The least threshold that is not 0. */
const LEAST = 1e-300;

type Side = 'inside' | 'worse' | 'better';

/**
 * On which side of each of LEVELS' bands the truth lies. Among the dead (or the immortal), where bands end without being
 * told apart, the chance said of being worse than the truth decides, so that nothing is won by a tie.
 */
function sidesOf(posterior: LotPosterior, { probitsLost, viability }: SimulatedLot): Side[] {
  if (viability < TOLD_APART || viability > 1 - TOLD_APART) {
    const threshold = Math.min(1 - Number.EPSILON / 2, Math.max(LEAST, viability));
    const worseThanTruth = probabilityBelow(posterior, { probitsLost, threshold });
    return LEVELS.map((level) => {
      if (worseThanTruth < (1 - level) / 2) return 'worse';
      return worseThanTruth > (1 + level) / 2 ? 'better' : 'inside';
    });
  }
  return LEVELS.map((level) => {
    const { lower, upper } = viabilityAt(posterior, { probitsLost, level });
    if (viability < lower) return 'worse';
    return viability > upper ? 'better' : 'inside';
  });
}

const noCoverage = (): Coverage => ({ lots: 0, covered: LEVELS.map(() => 0), worse: 0, better: 0 });
const NINETY = LEVELS.indexOf(0.9);

function count(coverage: Coverage, sides: readonly Side[]): void {
  coverage.lots += 1;
  sides.forEach((side, index) => {
    if (side === 'inside') (coverage.covered[index] as number) += 1;
  });
  if (sides[NINETY] === 'worse') coverage.worse += 1;
  if (sides[NINETY] === 'better') coverage.better += 1;
}

function groupOf({ tests }: SimulatedLot): number {
  if (tests.length < 2) return tests.length;
  return tests.length < 4 ? 2 : 3;
}
