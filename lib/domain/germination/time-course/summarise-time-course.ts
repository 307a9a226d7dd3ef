/*
 * A time course in one piece: everything that a screen says about counts by day.
 */
import { type CourseCautions, courseCautions } from './course-cautions';
import type { CurveShape } from './curve-shapes';
import { type DayNotReached, type DayReached, dayReached } from './day-reached';
import type { DishCounts } from './dish-counts';
import { type CurveRefusal, type FittedCurve, fitGerminationCurve } from './fitted-curve';
import { fittedShare } from './fitted-day';
import { type GerminationCurve, germinationCurve } from './germination-curve';
import { type CountedAt, type GerminationSpeed, germinationSpeed } from './germination-speed';

export interface TimeCourse {
  ok: true;
  curve: GerminationCurve;
  /** day by which half of the seeds that germinated had done so: the T50 meant where nothing else is said */
  halfOfGerminated: DayReached | DayNotReached;
  /** day by which half of all seeds set had germinated */
  halfOfSet: DayReached | DayNotReached;
  /** days between 25 and 75 %, and between 10 and 90 %, of the seeds that germinated; null when none did */
  uniformity: { middleHalfDays: number; tenToNinetyDays: number } | null;
  speed: GerminationSpeed | { ok: false; reason: 'none-germinated' };
  /** the likelier of the two shapes, or why there is none */
  fit: FittedCurve | CurveRefusal;
  /** largest distance between the fitted curve and the counts on an inspection day, as a share of the seeds set */
  largestGap: { day: number; share: number } | null;
  cautions: CourseCautions;
}

/**
 * Summarises the counts of a test by day.
 *
 * @param dishes             see DishCounts
 * @param options.countedAt  how germinated seeds are dated for the mean; see CountedAt
 * @param options.level      of all intervals, probability in (0, 1)
 * @returns the figures; parts that cannot be known carry their reason
 * @throws RangeError as seedIntervals
 * Checked through its parts, and in tests/domain/germination/time-course/summarise-time-course.test.ts
 */
export function summariseTimeCourse(
  dishes: readonly DishCounts[],
  { countedAt = 'inspection', level = 0.95 }: { countedAt?: CountedAt; level?: number } = {},
): TimeCourse | { ok: false; reason: 'did-not-converge' } {
  const curve = germinationCurve(dishes, { level });
  if (!curve.ok) return curve;
  const fit = likelierShape(dishes, level);
  return {
    ok: true,
    curve,
    halfOfGerminated: dayReached(curve, { share: 0.5, of: 'germinated' }),
    halfOfSet: dayReached(curve, { share: 0.5, of: 'set' }),
    uniformity: uniformityOf(curve),
    speed: germinationSpeed(dishes, { countedAt }),
    fit,
    largestGap: fit.ok ? largestGap(curve, fit) : null,
    cautions: courseCautions(dishes, curve),
  };
}

function likelierShape(dishes: readonly DishCounts[], level: number): FittedCurve | CurveRefusal {
  const fitAs = (shape: CurveShape) => fitGerminationCurve(dishes, { shape, level });
  const logistic = fitAs('log-logistic');
  const normal = fitAs('log-normal');
  // Both have three figures, so the likelier one needs no penalty.
  if (logistic.ok && normal.ok) return normal.logLikelihood > logistic.logLikelihood ? normal : logistic;
  return normal.ok ? normal : logistic;
}

function uniformityOf(curve: GerminationCurve): TimeCourse['uniformity'] {
  const days = [0.1, 0.25, 0.75, 0.9].map((share) => dayReached(curve, { share, of: 'germinated' }));
  const [tenth, quarter, threeQuarters, ninth] = days.map((reached) => (reached.ok ? reached.day : null));
  if (tenth == null || quarter == null || threeQuarters == null || ninth == null) return null;
  return { middleHalfDays: threeQuarters - quarter, tenToNinetyDays: ninth - tenth };
}

function largestGap(curve: GerminationCurve, fit: FittedCurve): { day: number; share: number } {
  return curve.points.reduce(
    (worst, { day, germinated }) => {
      const share = Math.abs(fittedShare(fit, day) - germinated);
      return share > worst.share ? { day, share } : worst;
    },
    { day: 0, share: 0 },
  );
}
