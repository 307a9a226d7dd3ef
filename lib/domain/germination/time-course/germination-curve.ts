/*
 * The share of all seeds set that has germinated by each day, with its band, and no assumption about the curve's shape.
 *
 * Counts say only between which inspections a seed germinated; seeds of a dish that was lost, or that had not germinated
 * at the end, say only that they had not until then. The curve is the likeliest one under both. With dishes inspected on
 * the same days and none lost it is simply the running total over the seeds set.
 *
 * The band is pointwise: the variance of each point comes from the observed information of the shares (Greenwood's
 * formula where all dishes share their days), is turned into the number of seeds that would give the same variance if
 * all of them had been watched (the effective number), and that number goes into the Wilson interval. So without lost
 * seed every point has exactly the interval that the germination screens show for its count, also at none and at all.
 */
import { choleskyInverse } from '../../statistics/cholesky';
import type { CoveredStretches } from './covered-stretches';
import { type DishCounts, inspectionDays, seedIntervals } from './dish-counts';
import { innermostStretches, type Stretch } from './innermost-stretches';
import { likeliestShares } from './likeliest-shares';
import { shareInformation } from './share-information';
import { wilsonForShare } from './wilson-for-share';

export interface CurvePoint {
  day: number;
  /** share of all seeds set that has germinated by this day, 0-1 */
  germinated: number;
  /** pointwise band, 0-1 */
  lower: number;
  upper: number;
  /** seeds which, all watched until this day, would tell as much; at most the seeds set */
  effectiveSeeds: number;
}

/** A stretch of days with the share of all seeds that germinated in it. Nothing is known about when within it. */
export interface Rise extends Stretch {
  /** share of all seeds set, above 0 */
  share: number;
}

export interface GerminationCurve {
  ok: true;
  seeds: number;
  /** where the curve rises, in order; finite stretches only. Empty when nothing germinated */
  rises: Rise[];
  /** day 0 and every inspection day on which the curve is known, in order */
  points: CurvePoint[];
  /** the last point: final germination */
  final: CurvePoint;
  logLikelihood: number;
  level: number;
  method: 'wilson on effective seeds';
}

/**
 * The likeliest germination curve and its pointwise band.
 *
 * @param dishes  see DishCounts; dishes may have different inspection days and different ends
 * @param options.level  of the band, probability in (0, 1)
 * @returns the curve, or { ok: false, reason: 'did-not-converge' }
 * @throws RangeError as seedIntervals, and when the level is outside (0, 1)
 * @see Turnbull (1976), J. R. Stat. Soc. B 38:290-295; Greenwood (1926); effective sample size: Dorey & Korn (1987),
 *      Stat. Med. 6:679-687 (all from memory)
 * Checked against R `survival::survfit`: tests/golden/germination-time-course.json
 */
export function germinationCurve(
  dishes: readonly DishCounts[],
  { level = 0.95 }: { level?: number } = {},
): GerminationCurve | { ok: false; reason: 'did-not-converge' } {
  const intervals = seedIntervals(dishes);
  const seeds = intervals.reduce((sum, interval) => sum + interval.seeds, 0);
  const { stretches, observations } = innermostStretches(intervals);
  const likeliest = likeliestShares(stretches.length, observations);
  if (!likeliest.ok) return likeliest;
  const { shares, logLikelihood } = likeliest;
  const variances = cumulativeVariances(shares, observations);
  if (!variances) return { ok: false, reason: 'did-not-converge' };

  const steps = stretches.map((stretch, k) => ({ ...stretch, share: shares[k] ?? 0, variance: variances[k] ?? 0 }));
  const rises = steps.filter(({ toDay, share }) => share > 0 && toDay < Number.POSITIVE_INFINITY);
  // On day 0 nothing can have germinated: that is known, not estimated.
  const points: CurvePoint[] = [{ day: 0, germinated: 0, lower: 0, upper: 0, effectiveSeeds: seeds }];
  let effectiveBefore = seeds;
  for (const day of inspectionDays(dishes)) {
    if (day === 0) continue;
    if (rises.some(({ fromDay, toDay }) => fromDay < day && day < toDay)) continue; // the curve is not known inside a rise
    const risen = rises.filter(({ toDay }) => toDay <= day);
    const watched = intervals.reduce(
      (sum, { fromDay, toDay, seeds: count }) =>
        toDay === Number.POSITIVE_INFINITY && fromDay < day ? sum - count : sum,
      seeds,
    );
    // Whole, not a sum of shares that rounds to just below 1.
    const isComplete = risen.length > 0 && steps.every(({ toDay, share }) => share === 0 || toDay <= day);
    const germinated = isComplete ? 1 : risen.reduce((sum, { share }) => sum + share, 0);
    const variance = risen.at(-1)?.variance ?? 0;
    // At none and at all the variance is 0 and says nothing: there the seeds still watched speak, or the point before.
    const effectiveSeeds =
      risen.length === 0
        ? watched
        : isComplete || variance <= 0
          ? effectiveBefore
          : Math.min(seeds, (germinated * (1 - germinated)) / variance);
    effectiveBefore = effectiveSeeds;
    points.push({
      day,
      germinated,
      ...wilsonForShare({ share: germinated, seeds: effectiveSeeds, level }),
      effectiveSeeds,
    });
  }
  const final = points[points.length - 1] as CurvePoint;
  return {
    ok: true,
    seeds,
    rises: rises.map(({ fromDay, toDay, share }) => ({ fromDay, toDay, share })),
    points,
    final,
    logLikelihood,
    level,
    method: 'wilson on effective seeds',
  };
}

/** Variance of the running total after each stretch; 0 after the last that holds a share. Null when not determined. */
function cumulativeVariances(shares: readonly number[], observations: readonly CoveredStretches[]): number[] | null {
  const kept = shares.flatMap((share, k) => (share > 0 ? [k] : []));
  const balance = kept.at(-1) ?? 0;
  const free = kept.slice(0, -1);
  const covariance = free.length === 0 ? [] : choleskyInverse(shareInformation(shares, observations, free, balance));
  if (!covariance) return null;
  return shares.map((_, stretch) => {
    if (stretch >= balance) return 0;
    const included = free.filter((k) => k <= stretch).length;
    let sum = 0;
    for (let r = 0; r < included; r++) for (let c = 0; c < included; c++) sum += covariance[r]?.[c] ?? 0;
    return sum;
  });
}
