/**
 * A whole oven test: one or two samples, perhaps pre-dried, to one moisture with its uncertainty.
 */
import { moistureAfterPredrying, moistureFromDuplicates, moistureFromOven } from './oven';
import { duplicatesUncertainty, ovenUncertainty, twoStageUncertainty } from './oven-uncertainty';

export type OvenWeights = { dish: number; dishAndFresh: number; dishAndDry: number };
export type OvenSample = { moisturePercent: number; standardPoints: number };

export type OvenTest = {
  /** of the original fresh weight, pre-drying counted in; one or two */
  samples: OvenSample[];
  /** percent lost in pre-drying; null where there was none */
  predriedPercent: number | null;
  verdict: { kind: 'one-sample' } | { kind: 'agree' | 'differ'; differencePoints: number; tolerancePoints: number };
  /** mean of the samples; null when they differ by more than the tolerance */
  moisturePercent: number | null;
  /** one standard deviation of it, points; the largest error the balance alone could make, points */
  standardPoints: number;
  largestPoints: number;
};

/**
 * Moisture of an oven test.
 *
 * @param samples     one or two, grams as moistureFromOven
 * @param predrying   seed alone before and after pre-drying, grams, 0 < after <= before; null without
 * @param stepG       smallest step of the balance, grams, > 0
 * @returns each sample, whether two agree (within 0.2 points, compared as percent of the ORIGINAL fresh weight) and the
 *          moisture to report
 * @throws RangeError when weights are out of order, or there are not one or two samples
 * Checked in tests/domain/moisture/oven-test.test.ts; its parts against R
 */
export function ovenTest({
  samples,
  predrying,
  stepG,
}: {
  samples: readonly OvenWeights[];
  predrying: { beforeG: number; afterG: number } | null;
  stepG: number;
}): OvenTest {
  if (samples.length < 1 || samples.length > 2) {
    throw new RangeError(`ovenTest: samples must be one or two, got ${samples.length}`);
  }
  const first = predrying && { dish: 0, dishAndFresh: predrying.beforeG, dishAndDry: predrying.afterG };
  const predriedPercent = first && moistureFromOven(first);
  // Seed alone on a tared balance: two readings, and the dish of the formula is none.
  const predriedPoints = first ? ovenUncertainty({ ...first, stepG }).standardPoints : 0;
  const read = samples.map((weights) => {
    const oven = ovenUncertainty({ ...weights, stepG });
    if (predriedPercent === null) return oven;
    return {
      moisturePercent: moistureAfterPredrying({
        firstStagePercent: predriedPercent,
        secondStagePercent: oven.moisturePercent,
      }),
      standardPoints: twoStageUncertainty({
        firstStage: { percent: predriedPercent, standardPoints: predriedPoints },
        secondStage: { percent: oven.moisturePercent, standardPoints: oven.standardPoints },
      }),
      largestPoints: oven.largestPoints,
    };
  });
  const [one, two] = read;
  if (one === undefined) throw new RangeError('ovenTest: samples must be one or two, got 0');
  const largestPoints = Math.max(...read.map((sample) => sample.largestPoints));
  const common = {
    samples: read.map(({ moisturePercent, standardPoints }) => ({ moisturePercent, standardPoints })),
    predriedPercent,
    largestPoints,
  };
  if (two === undefined) {
    return {
      ...common,
      verdict: { kind: 'one-sample' },
      moisturePercent: one.moisturePercent,
      standardPoints: one.standardPoints,
    };
  }
  const both = moistureFromDuplicates({ firstPercent: one.moisturePercent, secondPercent: two.moisturePercent });
  const { standardPoints } = duplicatesUncertainty(one, two);
  const { differencePoints, tolerancePoints } = both;
  return {
    ...common,
    verdict: { kind: both.ok ? 'agree' : 'differ', differencePoints, tolerancePoints },
    moisturePercent: both.ok ? both.moisturePercent : null,
    standardPoints,
  };
}
