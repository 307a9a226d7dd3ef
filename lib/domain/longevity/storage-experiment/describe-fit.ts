/** What the fit of a storage experiment says, in plain sentences. */
import type { StorageCondition } from '../viability-equation';
import type { GoodnessOfFit, StorageExperimentFit } from './experiment-fit';
import { sigmaEstimate } from './sigma-estimate';

/** Fewer degrees of freedom than this judge a fit weakly. */
const FEW_DEGREES_OF_FREEDOM = 5;
/** Of the scatter, a share that counts before storage should not bring: they are one count in several. */
const LARGE_SHARE_BEFORE_STORAGE = 0.5;

/**
 * The finding: how many days one probit takes at a condition, with its interval.
 *
 * @param fit        from fitStorageExperiment
 * @param condition  percent of fresh weight, degrees C
 * @returns a sentence with the figure between ** for bold type
 * Checked in tests/domain/longevity/storage-experiment/describe-fit.test.ts
 */
export function describeSigma(fit: StorageExperimentFit, condition: StorageCondition): string {
  const { days, lower, upper, insideRange } = sigmaEstimate(fit, condition);
  const where = `At ${inDegrees(condition.temperatureC)} and ${inPercent(condition.moisturePercent)} moisture`;
  const range = `nineteen times in twenty, ${rangeInWords(lower, upper)}`;
  const outside = insideRange ? '' : ' The experiment did not cover this condition: it is carried on from the others.';
  return `${where} one probit is lost in **${daysInWords(days)}** (${range}).${outside}`;
}

/** What one probit means, for those who do not count in probits. */
export const PROBIT_IN_WORDS = 'One probit takes seed from 98 % to 84 %, or from 84 % to 50 %.';

/**
 * Whether one set of constants carries all counts.
 *
 * @param goodness  from goodnessOfFit
 * @returns one or two plain sentences
 * Checked in tests/domain/longevity/storage-experiment/describe-fit.test.ts
 */
export function describeGoodness(goodness: GoodnessOfFit): string {
  const { degreesOfFreedom, chance, heterogeneity, lacksFit, standardErrorFactor, shareBeforeStorage } = goodness;
  if (chance === null || heterogeneity === null) {
    return 'There are as many unknowns as counts, so the curves meet every count and nothing is left to judge them by.';
  }
  if (!lacksFit) {
    const weak = degreesOfFreedom < FEW_DEGREES_OF_FREEDOM ? ' With so few counts to spare this proves little.' : '';
    return `The counts scatter about the curves no more than chance allows.${weak}`;
  }
  const times = chance < 0.001 ? 'less than once in a thousand times' : `${Math.ceil(chance * 100)} in 100 times`;
  const start =
    shareBeforeStorage !== null && shareBeforeStorage > LARGE_SHARE_BEFORE_STORAGE
      ? ' Most of the scatter is in the counts before storage: some seed may have been dead, hard or dormant from the start, which a probit curve does not carry.'
      : '';
  return `The counts scatter ${factorInWords(heterogeneity)} as much as chance allows (it would do that ${times}): dishes differed, or the equation misses something. Every standard error was multiplied by ${standardErrorFactor.toFixed(2)}.${start}`;
}

/**
 * What to beware of in constants from this experiment.
 *
 * @param fit  from fitStorageExperiment
 * @returns plain sentences, most serious first; none where nothing stands out
 * Checked in tests/domain/longevity/storage-experiment/describe-fit.test.ts
 */
export function fitCautions(fit: StorageExperimentFit): string[] {
  const { constants, standardErrors, range, temperatureCoefficients } = fit;
  const cautions: string[] = [];
  if (constants.CW <= 0) {
    cautions.push('CW came out below 0: moister seed lived longer. Check that moistures were not exchanged.');
  } else if (constants.CW < 2 * standardErrors.CW) {
    cautions.push('CW is less than twice its standard error: these counts do not show that drying lengthens life.');
  }
  if (temperatureCoefficients === 'fitted') {
    for (const key of ['CH', 'CQ'] as const) {
      const error = standardErrors[key];
      if (constants[key] < 0) cautions.push(`${key} came out below 0: hold CH and CQ at the common ones.`);
      else if (error !== null && constants[key] < 2 * error) {
        cautions.push(`${key} is less than twice its standard error: the common coefficients are the safer choice.`);
      }
    }
  } else if (range.temperatureFromC === range.temperatureToC) {
    cautions.push(
      `All seed was stored at ${inDegrees(range.temperatureFromC)}: what the constants say of other temperatures rests on the common CH and CQ alone.`,
    );
  }
  if (range.moistureToPercent > 15) {
    cautions.push('Above about 15 % moisture the equation changes: leave those conditions out and compare.');
  }
  if (range.temperatureFromC > 0) {
    cautions.push(
      `Below ${inDegrees(range.temperatureFromC)} nothing was seen. The equation is known to promise too much in long cold storage.`,
    );
  }
  return cautions;
}

/** From two years on, years are said too. */
const YEARS_FROM_DAYS = 730.5;

/**
 * Days as a length of time: '9.4 days', '214 days', '6.2 years (2 260 days)'.
 *
 * @param days  > 0
 * @returns two or three figures
 * Checked in tests/domain/longevity/storage-experiment/describe-fit.test.ts
 */
export function daysInWords(days: number): string {
  if (days < 9.95) return `${Number(days.toPrecision(2))} days`;
  const whole = days < 1000 ? String(Math.round(days)) : withThousands(Number(days.toPrecision(3)));
  if (days < YEARS_FROM_DAYS) return `${whole} days`;
  const years = days / 365.25;
  const inYears = years < 99.5 ? String(Number(years.toPrecision(2))) : withThousands(Number(years.toPrecision(2)));
  return `${inYears} years (${whole} days)`;
}

/** Two lengths of time; days are said once where both are short. */
function rangeInWords(lower: number, upper: number): string {
  const [from, to] = [daysInWords(lower), daysInWords(upper)];
  return upper < YEARS_FROM_DAYS ? `${from.replace(' days', '')} to ${to}` : `${from} to ${to}`;
}

const withThousands = (value: number) => String(Math.round(value)).replace(/\B(?=(\d{3})+$)/g, '\u202f');
const factorInWords = (value: number) => `${value < 9.95 ? value.toFixed(1) : Math.round(value)} times`;
const inPercent = (value: number): string => `${Math.round(value * 100) / 100} %`;
const inDegrees = (value: number): string => `${Math.round(value * 10) / 10} °C`.replace('-', '\u2212');
