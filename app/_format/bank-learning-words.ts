import {
  asTimesAsFast,
  asViability,
  type CropLearning,
  LEAST_AGEING_BETWEEN_TESTS,
} from '@/lib/domain/longevity/bank-learning/learn-crop-prior';
import { normalCdf } from '@/lib/domain/statistics/normal-distribution';
import { formatCount, formatPercentFigure } from './figures';

type Learnt = Extract<CropLearning, { ok: true }>;

/** What a crop's own lots say, in plain words; what stands between ** is set in bold. */
export function bankLearningWords(learning: CropLearning, cropName: string): string {
  const crop = cropName.charAt(0).toLowerCase() + cropName.slice(1);
  if (!learning.ok) return nothingLearnt(learning, crop);
  const rests = `${counted(learning.tests, 'test')} of ${counted(learning.lots, 'lot')} of ${crop}`;
  return `${rests}: ${initialWords(learning)}${rateWords(learning)}`;
}

function nothingLearnt({ reason, lots }: Extract<CropLearning, { ok: false }>, crop: string): string {
  if (reason === 'lots-too-different') {
    return `The ${formatCount(lots)} tested lots of ${crop} differ so much that no one expectation fits them. Look for mistaken counts and storage histories first.`;
  }
  if (reason === 'did-not-converge') return `The tests of ${crop} lead to no clear expectation.`;
  if (lots === 0) return `No lot of ${crop} has been tested yet.`;
  return `${lots === 1 ? 'One lot' : `${formatCount(lots)} lots`} of ${crop} ${lots === 1 ? 'has' : 'have'} been tested: too few to say what this crop's lots are like here. It takes three.`;
}

function initialWords({ initial, published }: Learnt): string {
  const { estimate, lower, upper } = asViability(initial.mean);
  const before = formatPercentFigure(normalCdf(published.initial.mean));
  const now = formatPercentFigure(estimate);
  const range = `${formatPercentFigure(lower)} to ${formatPercentFigure(upper)}`;
  return now === before
    ? `a fresh lot is typically **${now}\u00a0%** alive (${range}), as expected before`
    : `a fresh lot is typically **${now}\u00a0%** alive (${range}) rather than the ${before}\u00a0% expected before`;
}

function rateWords({ logRate, lotsTellingRate, published }: Learnt): string {
  if (!logRate) {
    const have =
      lotsTellingRate === 0
        ? 'none has'
        : `only ${formatCount(lotsTellingRate)} of them ${lotsTellingRate === 1 ? 'has' : 'have'}`;
    return `. How fast they age cannot be learnt yet: ${have} two tests with enough ageing between them (${LEAST_AGEING_BETWEEN_TESTS} probits).`;
  }
  const { estimate, lower, upper } = asTimesAsFast(logRate.mean);
  const now = timesFigure(estimate);
  const before = timesFigure(Math.exp(published.logRate.mean));
  const range = `${timesFigure(lower)} to ${timesFigure(upper)} times, nine times in ten`;
  const times = now === '1.0' ? '**as fast** as' : `**${now} times as fast** as`;
  const held =
    before === '1.0' ? '' : before === now ? ', as expected before' : `; ${before} times was expected before`;
  return `; they age ${times} the published equation says (${range})${held}.`;
}

/** A factor with two figures: 0.74, 1.4, 12. */
export function timesFigure(factor: number): string {
  if (factor >= 9.95) return String(Math.round(factor));
  return factor >= 0.995 ? factor.toFixed(1) : factor.toFixed(2);
}

const counted = (count: number, thing: string): string => `${formatCount(count)} ${thing}${count === 1 ? '' : 's'}`;
