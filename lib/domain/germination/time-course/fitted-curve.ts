/*
 * A smooth germination curve: the share able to germinate, the day by which half of those have, and how spread they are.
 *
 *   F(day) = limit * H(steepness * log(day / middleDay)),   H logistic (log-logistic curve) or normal (log-normal)
 *
 * Maximum likelihood on the counts between inspections, not least squares on running totals: running totals repeat the
 * same seeds at every inspection, which makes errors look far smaller than they are. Seeds that had not germinated when
 * last seen count as that and no more. Assumes that seeds are independent and alike: dishes that differ by more than
 * chance make the intervals too narrow.
 */
import { choleskyInverse } from '../../statistics/cholesky';
import { inverseLogOdds } from '../../statistics/log-odds';
import { normalQuantile } from '../../statistics/normal-distribution';
import { requireProportion } from '../../statistics/require-proportion';
import { climbCurve } from './climb-curve';
import { type CurveCoordinates, curveLikelihoodAt } from './curve-likelihood';
import { type CurveShape, STANDARD_DISTRIBUTIONS } from './curve-shapes';
import { type DishCounts, isGerminated, type SeedInterval, seedIntervals } from './dish-counts';
import { likelyLimits } from './likely-limits';

export interface FittedCurve {
  ok: true;
  shape: CurveShape;
  /** share of the seeds set that is able to germinate under these conditions, (0, 1] */
  limit: number;
  /** day by which half of those able to germinate have; > 0 */
  middleDay: number;
  /** b: the larger, the more alike the seeds; > 0, without unit */
  steepness: number;
  /** the likeliest limit is 1 itself: no share unable to germinate shows in the counts */
  isLimitAtOne: boolean;
  /** null for a limit at 1, where the curve's slope towards it is no top */
  standardErrors: { limit: number | null; middleDay: number; steepness: number };
  limitInterval: { lower: number; upper: number };
  middleDayInterval: { lower: number; upper: number };
  level: number;
  logLikelihood: number;
  /** where the climb ended, and the covariance there of log middle, log spread and (unless at 1) logit limit */
  coordinates: CurveCoordinates;
  covariance: number[][];
}

export interface CurveRefusal {
  ok: false;
  reason: 'none-germinated' | 'one-stretch' | 'too-few-stretches' | 'too-flat' | 'did-not-converge';
  /** one sentence for the steward */
  message: string;
}

/** Three figures need three stretches of days in which seed germinated; with fewer the curve is only partly determined. */
const LEAST_STRETCHES = 3;

/** T90 / T10 of those able to germinate: tests run from 1.1 to some tens. Beyond this the curve is no finding; own choice. */
const WIDEST_SPREAD = 1000;

const MESSAGES: Record<CurveRefusal['reason'], string> = {
  'none-germinated': 'No seed germinated, so there is no curve to fit.',
  'one-stretch': 'All seed germinated between the same two inspections: inspect more often to see a curve.',
  'too-few-stretches': 'Seed germinated in two stretches of days only; a curve needs at least three.',
  'too-flat':
    'These counts follow no smooth curve: much had germinated by the first inspection, and the rest trickled in.',
  'did-not-converge': 'No smooth curve could be fitted to these counts.',
};

/**
 * Maximum-likelihood germination curve.
 *
 * The day gets its interval on a logarithmic scale from the observed information, the limit from the profile of the
 * likelihood: it is often close to 1, or at 1, where standard errors say little.
 *
 * @param dishes         see DishCounts
 * @param options.shape  'log-logistic' (the default) or 'log-normal'
 * @param options.level  of the intervals, probability in (0, 1)
 * @returns the fit, or a refusal with its reason; 'too-few-stretches' below three stretches with germination; 'too-flat'
 *          where the likeliest curve takes a thousand times longer to 90 % than to 10 % of those able to germinate
 * @throws RangeError as seedIntervals, and when the level is outside (0, 1)
 * @see Ritz, Pipper & Streibig (2013), Eur. J. Agron. 45:1-6; Onofri et al. (2022), Weed Sci. 70:259-271 (from memory)
 * Checked against R: symbolic derivatives, `survival::survreg`: tests/golden/germination-time-course.json
 */
export function fitGerminationCurve(
  dishes: readonly DishCounts[],
  { shape = 'log-logistic', level = 0.95 }: { shape?: CurveShape; level?: number } = {},
): FittedCurve | CurveRefusal {
  requireProportion('fitGerminationCurve', 'level', level, true);
  const intervals = seedIntervals(dishes);
  const stretches = intervals.filter(isGerminated).length;
  if (stretches === 0) return refuse('none-germinated');
  if (stretches === 1) return refuse('one-stretch');
  if (stretches < LEAST_STRETCHES) return refuse('too-few-stretches');

  const top = likeliestTop(shape, intervals);
  if (!top) return refuse('did-not-converge');
  const { coordinates, logLikelihood, isLimitFree } = top;
  if (isTooFlat(shape, coordinates.logSpread)) return refuse('too-flat');
  const { curvature } = curveLikelihoodAt(shape, intervals, coordinates, isLimitFree);
  const covariance = choleskyInverse(curvature.map((row) => row.map((value) => -value)));
  if (!covariance) return refuse('did-not-converge');

  const z = -normalQuantile((1 - level) / 2);
  const errorOf = (index: number) => Math.sqrt(covariance[index]?.[index] ?? 0);
  const { logMiddle, logSpread, limit, logitLimit } = coordinates;
  const middleDay = Math.exp(logMiddle);
  const steepness = Math.exp(-logSpread);
  return {
    ok: true,
    shape,
    limit,
    middleDay,
    steepness,
    isLimitAtOne: !isLimitFree,
    standardErrors: {
      limit: isLimitFree ? limit * inverseLogOdds(-logitLimit) * errorOf(2) : null,
      middleDay: middleDay * errorOf(0),
      steepness: steepness * errorOf(1),
    },
    limitInterval: likelyLimits(shape, intervals, top, z),
    middleDayInterval: {
      lower: Math.exp(logMiddle - z * errorOf(0)),
      upper: Math.exp(logMiddle + z * errorOf(0)),
    },
    level,
    logLikelihood,
    coordinates,
    covariance,
  };
}

/** A limit below 1 wins only if it is likelier than 1: the climb towards 1 never arrives and would stop anywhere. */
function likeliestTop(shape: CurveShape, intervals: readonly SeedInterval[]) {
  const seeds = intervals.reduce((sum, interval) => sum + interval.seeds, 0);
  const germinated = intervals.filter(isGerminated).reduce((sum, interval) => sum + interval.seeds, 0);
  const atOne = climbCurve(shape, intervals, { limit: 1, isLimitFree: false });
  const below =
    germinated < seeds ? climbCurve(shape, intervals, { limit: germinated / seeds, isLimitFree: true }) : null;
  if (below && (!atOne || below.logLikelihood > atOne.logLikelihood)) return { ...below, isLimitFree: true };
  return atOne && { ...atOne, isLimitFree: false };
}

function isTooFlat(shape: CurveShape, logSpread: number): boolean {
  const tenthToNinth = 2 * STANDARD_DISTRIBUTIONS[shape].quantile(0.9) * Math.exp(logSpread);
  return !(tenthToNinth <= Math.log(WIDEST_SPREAD));
}

const refuse = (reason: CurveRefusal['reason']): CurveRefusal => ({ ok: false, reason, message: MESSAGES[reason] });
