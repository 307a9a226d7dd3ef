import { formatChance, formatPercent } from '@/app/_format/figures';
import type { DayReached } from '@/lib/domain/germination/time-course/day-reached';
import type { TimeCourse } from '@/lib/domain/germination/time-course/summarise-time-course';

/** 4.23 -> '4.2', 196.05 -> '196', 0.83 -> '0.83': what the counts can carry. */
export function formatDays(days: number): string {
  if (days >= 100) return String(Math.round(days));
  return days >= 1 ? String(Math.round(days * 10) / 10) : String(Number(days.toPrecision(2)));
}

/** '3.9–4.5'; an open side in words. */
export function dayRange({ lower, upper }: Pick<DayReached, 'lower' | 'upper'>): string {
  if (lower === null && upper === null) return 'too few seeds to say how sure';
  if (upper === null) return `not before day ${formatDays(lower ?? 0)}`;
  if (lower === null) return `not after day ${formatDays(upper)}`;
  return `${formatDays(lower)}–${formatDays(upper)}`;
}

/** The finding in a sentence. */
export function courseInWords({ curve, halfOfGerminated: half, cautions }: TimeCourse): string {
  const { final, seeds } = curve;
  const range = `likely between ${formatPercent(final.lower)} and ${formatPercent(final.upper)} of the lot`;
  if (!half.ok) return `None of ${seeds} seeds germinated by day ${formatDays(final.day)}: ${range} would have.`;
  const { fromDay, toDay } = half.between;
  const speed = cautions.isOneStretch
    ? `All seed that germinated did so **between day ${formatDays(fromDay)} and day ${formatDays(toDay)}**`
    : `Half of the seeds that germinated did so by **day ${formatDays(half.day)}** (${dayRange(half)})`;
  return `${speed}; **${formatPercent(final.germinated)}** germinated by day ${formatDays(final.day)}, ${range}.`;
}

/** What speaks against taking the figures at their word, a sentence each. */
export function cautionsInWords({ cautions, fit, largestGap }: TimeCourse): string[] {
  const words: string[] = [];
  if (cautions.isStillRising) {
    words.push('Seed was still germinating at the last inspection: more would have followed.');
  }
  if (cautions.doDishesDiffer && cautions.betweenDishes) {
    const chance = formatChance(cautions.betweenDishes.pValue);
    words.push(`The dishes differ more than chance makes them (${chance}): every range here is too narrow.`);
  }
  if (fit.ok && largestGap && largestGap.share > FAR_OFF) {
    words.push(
      `The fitted curve is off by ${formatPercent(largestGap.share)} of the seed on day ${formatDays(largestGap.day)}: trust the counted stairs instead.`,
    );
  }
  if (!fit.ok) words.push(fit.message);
  return words;
}

/** A tenth of all seed: plainly seen in the picture. */
const FAR_OFF = 0.1;
