/*
 * The day by which a share of the seeds has germinated, read off the germination curve.
 *
 * Of which seeds must be said: half of the seeds that GERMINATED (the usual T50: it describes speed alone) or half of
 * all seeds SET (which a lot of 40 % never reaches). Within an inspection's stretch the seeds are taken to germinate
 * evenly, which is what a straight line between two running totals means.
 */
import { normalQuantile } from '../../statistics/normal-distribution';
import { requireProportion } from '../../statistics/require-proportion';
import type { GerminationCurve, Rise } from './germination-curve';

/** 'germinated': of the seeds that germinated while watched; 'set': of all seeds set. */
export type ShareOf = 'germinated' | 'set';

export interface DayReached {
  ok: true;
  /** day, the sowing being day 0 */
  day: number;
  /** the inspections between which it lies: the curve rises evenly from one to the other only by assumption */
  between: { fromDay: number; toDay: number };
  /** interval for the day. null: the counts set no bound on this side (too few seeds, or not reached while watched) */
  lower: number | null;
  upper: number | null;
  /** the same interval moved outwards to inspection days: it needs no evenness between them */
  lowerByInspection: number | null;
  upperByInspection: number | null;
  level: number;
}

export type DayNotReached = { ok: false; reason: 'none-germinated' | 'not-reached' };

/**
 * Day by which a share of the seeds had germinated, by straight lines between inspections.
 *
 * With all dishes inspected on the same days and `of: 'germinated'`, share 0.5, this is the T50 of Coolbear et al. in
 * Farooq's form: t_i + (N/2 - n_i)(t_j - t_i) / (n_j - n_i), N being the final number germinated and n_i < N/2 <= n_j
 * the running totals on the inspections around it. (Coolbear wrote (N + 1)/2.)
 *
 * The interval inverts the score test: it holds the days on which the share found differs from the share asked for by
 * less than z standard errors, with the effective number of seeds at the end of the test.
 *
 * @param curve   from germinationCurve
 * @param share   in (0, 1]
 * @param of      see ShareOf
 * @param level   of the interval, probability in (0, 1); defaults to the curve's
 * @returns the day, or why there is none
 * @throws RangeError when the share or level is outside its range
 * @see Coolbear, Francis & Grierson (1984), J. Exp. Bot. 35:1609-1617; Farooq et al. (2005), J. Integr. Plant Biol.
 *      47:187-193 (from memory). Inverted test for a quantile: Brookmeyer & Crowley (1982), Biometrics 38:29-41 (from memory)
 * Checked against R arithmetic: tests/golden/germination-time-course.json
 */
export function dayReached(
  curve: GerminationCurve,
  { share, of, level = curve.level }: { share: number; of: ShareOf; level?: number },
): DayReached | DayNotReached {
  if (!(share > 0 && share <= 1)) throw new RangeError(`dayReached: share must be in (0, 1], got ${share}`);
  requireProportion('dayReached', 'level', level, true);
  if (curve.rises.length === 0) return { ok: false, reason: 'none-germinated' };
  const whole = of === 'germinated' ? curve.final.germinated : 1;
  const found = crossing(curve.rises, share * whole);
  if (!found) return { ok: false, reason: 'not-reached' };

  const z = -normalQuantile((1 - level) / 2);
  const seeds = curve.final.effectiveSeeds * whole;
  const margin = z * Math.sqrt((share * (1 - share)) / seeds);
  const lower = share - margin > 0 ? crossing(curve.rises, (share - margin) * whole) : null;
  const upper = share + margin < 1 ? crossing(curve.rises, (share + margin) * whole) : null;
  return {
    ok: true,
    day: found.day,
    between: { fromDay: found.rise.fromDay, toDay: found.rise.toDay },
    lower: lower?.day ?? null,
    upper: upper?.day ?? null,
    lowerByInspection: lower?.rise.fromDay ?? null,
    upperByInspection: upper?.rise.toDay ?? null,
    level,
  };
}

/** A running total of shares that should meet the share asked for may miss it by rounding; nothing real is this small. */
const ROUNDING = 1e-12;

/** The first day on which the running total reaches the share of all seeds; null when it never does. */
function crossing(rises: readonly Rise[], shareOfSet: number): { day: number; rise: Rise } | null {
  let before = 0;
  for (const rise of rises) {
    const after = before + rise.share;
    if (after >= shareOfSet - ROUNDING) {
      const part = Math.min(1, Math.max(0, (shareOfSet - before) / rise.share));
      return { day: rise.fromDay + part * (rise.toDay - rise.fromDay), rise };
    }
    before = after;
  }
  return null;
}
