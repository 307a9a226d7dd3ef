/*
 * The usual figures for how fast and how evenly seed germinated: mean time, spread, speed and synchrony.
 *
 * They describe the seeds that germinated and nothing else. A seed that germinated between two inspections is dated to
 * the inspection that found it (the custom, and what published figures use) or to the middle of the stretch (closer to
 * the truth where inspections are far apart); the caller chooses and screens say which.
 */
import { type DishCounts, isGerminated, seedIntervals } from './dish-counts';

/** 'inspection': the day on which it was found; 'middle': half-way between that and the inspection before. */
export type CountedAt = 'inspection' | 'middle';

export interface GerminationSpeed {
  ok: true;
  /** seeds that germinated, count */
  germinated: number;
  /** mean germination time, days from sowing */
  meanDays: number;
  /** variance of the germination times, days squared, divisor germinated - 1; null for a single seed */
  varianceDays: number | null;
  standardDeviationDays: number | null;
  /** of the mean, days: standard deviation / sqrt(germinated) */
  standardErrorDays: number | null;
  /** standard deviation / mean, 0 and up (not percent) */
  coefficientOfVariation: number | null;
  /** 1 / mean: per day */
  meanRatePerDay: number;
  /** sum of germinated / day: seeds per day. Twice the seed gives twice the figure */
  seedsPerDay: number;
  /** the same per seed set: comparable between tests of different size, still mixing speed and final germination */
  seedsPerDayPerSeedSet: number;
  /** chance that two germinated seeds were dated to the same day, 0-1; null for a single seed */
  synchrony: number | null;
  /** first and last dates used */
  firstDay: number;
  lastDay: number;
  countedAt: CountedAt;
}

/**
 * Mean germination time, its spread, and the speed indices.
 *
 * With n_i seeds dated to day t_i and G their sum: mean = sum(n_i t_i) / G; variance = sum(n_i (t_i - mean)^2) / (G - 1);
 * speed = sum(n_i / t_i); synchrony = sum(n_i (n_i - 1)) / (G (G - 1)).
 *
 * Seeds of a lost dish that might have germinated later are not in them: where dishes were lost the mean is too early.
 *
 * @param dishes     see DishCounts
 * @param countedAt  see CountedAt; 'inspection' unless told otherwise
 * @returns the figures, or that nothing germinated
 * @throws RangeError as seedIntervals
 * @see Mean time and variance: Ranal & Santana (2006), Rev. Bras. Bot. 29:1-11; speed: Maguire (1962), Crop Sci.
 *      2:176-177; synchrony: Primack (1985), Ann. Mo. Bot. Gard. 72:538 ff. (all from memory)
 * Checked against R arithmetic: tests/golden/germination-time-course.json
 */
export function germinationSpeed(
  dishes: readonly DishCounts[],
  { countedAt = 'inspection' }: { countedAt?: CountedAt } = {},
): GerminationSpeed | { ok: false; reason: 'none-germinated' } {
  const intervals = seedIntervals(dishes);
  const byDay = new Map<number, number>();
  for (const { fromDay, toDay, seeds } of intervals.filter(isGerminated)) {
    const day = countedAt === 'inspection' ? toDay : (fromDay + toDay) / 2;
    byDay.set(day, (byDay.get(day) ?? 0) + seeds);
  }
  if (byDay.size === 0) return { ok: false, reason: 'none-germinated' };
  const dated = [...byDay].sort(([a], [b]) => a - b);
  const sum = (figure: (day: number, seeds: number) => number) =>
    dated.reduce((total, [day, seeds]) => total + figure(day, seeds), 0);

  const set = intervals.reduce((total, { seeds }) => total + seeds, 0);
  const germinated = sum((_, seeds) => seeds);
  const meanDays = sum((day, seeds) => day * seeds) / germinated;
  const isSingle = germinated === 1;
  const varianceDays = isSingle ? null : sum((day, seeds) => seeds * (day - meanDays) ** 2) / (germinated - 1);
  const standardDeviationDays = varianceDays === null ? null : Math.sqrt(varianceDays);
  const seedsPerDay = sum((day, seeds) => seeds / day);
  return {
    ok: true,
    germinated,
    meanDays,
    varianceDays,
    standardDeviationDays,
    standardErrorDays: standardDeviationDays === null ? null : standardDeviationDays / Math.sqrt(germinated),
    coefficientOfVariation: standardDeviationDays === null ? null : standardDeviationDays / meanDays,
    meanRatePerDay: 1 / meanDays,
    seedsPerDay,
    seedsPerDayPerSeedSet: seedsPerDay / set,
    synchrony: isSingle ? null : sum((_, seeds) => seeds * (seeds - 1)) / (germinated * (germinated - 1)),
    firstDay: dated[0]?.[0] ?? meanDays,
    lastDay: dated.at(-1)?.[0] ?? meanDays,
    countedAt,
  };
}
