import { formatDateRange } from './date-range';
import { LEAST_NORMAL_DAYS, normalTime } from './normal-time';

interface CostFigures {
  /** first and last day that were looked at */
  from: string;
  to: string;
  /** the crop that lost most over all these days; null: no seed lay there, or no cost can be told */
  whole: { cropName: string; normalDays: number } | null;
  /** the single failure that cost most, and the crop that it cost most */
  failure: { from: string; to: string; cropName: string; normalDays: number } | null;
}

/** The finding in a sentence or two; what stands between ** is set in bold. */
export function climateCostWords({ from, to, whole, failure }: CostFigures): string {
  if (!whole) return '';
  const sentences: string[] = [];
  if (failure && failure.normalDays >= LEAST_NORMAL_DAYS) {
    sentences.push(
      `**The failure of ${formatDateRange(failure.from, failure.to)} cost the ${seedOf(failure.cropName)} as much as ${normalTime(failure.normalDays)}**, on top of these days themselves.`,
    );
    if (failure.from === from && failure.to === to) return sentences.join(' ');
  }
  const days = formatDateRange(from, to);
  if (whole.normalDays >= LEAST_NORMAL_DAYS) {
    sentences.push(
      `All in all, ${days} cost the ${seedOf(whole.cropName)} as much as ${normalTime(whole.normalDays)} more than the target would have.`,
    );
  } else if (whole.normalDays <= -LEAST_NORMAL_DAYS) {
    sentences.push(`All in all the store was kinder than its target over ${days}: no seed in it lost anything by it.`);
  } else sentences.push(`All in all, ${days} cost no seed more than the target would have.`);
  return sentences.join(' ');
}

/** 'Leek' -> 'leek seed'. */
function seedOf(cropName: string): string {
  const name = cropName.charAt(0).toLowerCase() + cropName.slice(1);
  return /seed\)?$/.test(name) ? name : `${name} seed`;
}
