/**
 * How far an amount of seed may be off: 0 when it was counted seed by seed, more when it was weighed.
 *
 * Seeds from grams are off for three reasons, as in seeds-by-weight.ts:
 *   - the thousand-seed weight T is off by a share c, and with it every amount that it turned into seeds, all the same way;
 *   - single seeds differ by a share v of their weight, so that N of them vary by v sqrt(N) seeds;
 *   - the balance shows whole steps d, which hide up to half a step: d / sqrt(12) grams.
 * The first belongs to the lot, the other two to this one weighing. Nothing of c, v and d is written down at the bench,
 * so the values below are our own choice and wide rather than narrow.
 */

/** Coefficient of variation of single seeds, v. Own choice: hundreds then vary by 3 %; the replicate rule bears 4 %. */
export const SINGLE_SEED_VARIATION = 0.3;

/** Seeds weighed for a thousand-seed weight at the least: one count of a hundred, times ten. Own choice. */
const SEEDS_WEIGHED_FOR_IT = 100;

/** Relative standard deviation of a thousand-seed weight that was measured on the lot, c. */
export const OWN_SEED_WEIGHT_ERROR = SINGLE_SEED_VARIATION / Math.sqrt(SEEDS_WEIGHED_FOR_IT);

/** The same where only the crop's usual seed is known: varieties and years differ so much at the least. Own choice. */
export const USUAL_SEED_WEIGHT_ERROR = 0.25;

/** Finer steps than this are rounding of the computer, not of a balance. */
const FINEST_DECIMALS = 5;

/**
 * Relative standard deviation of the crop's usual seed weight, given what sources say.
 *
 * @param lower, upper  seeds per gram, lowest and highest figure of the sources, 0 < lower <= upper; null where none says
 * @returns a rectangular distribution over the range, on the log scale; USUAL_SEED_WEIGHT_ERROR where that is less
 * @throws RangeError when the range is not as above
 * @see half width over sqrt(3): JCGM 100:2008 (GUM), 4.3.7
 * Checked in tests/domain/stock/spread-of-amount.test.ts
 */
export function usualSeedWeightError(lower: number | null, upper: number | null): number {
  if (lower === null || upper === null) return USUAL_SEED_WEIGHT_ERROR;
  if (!(lower > 0 && upper >= lower && Number.isFinite(upper))) {
    throw new RangeError(`usualSeedWeightError: need 0 < lower <= upper, got ${lower} and ${upper}`);
  }
  return Math.max(USUAL_SEED_WEIGHT_ERROR, Math.log(upper / lower) / 2 / Math.sqrt(3));
}

/**
 * The step of the balance, as far as the figure tells it: its last decimal. A zero at the end is lost in a number, so
 * 2.50 counts as read to 0.1 g: wider than it was, never narrower.
 *
 * @param grams  as read, either sign
 * @returns grams: 1 for a whole number, 0.1 for 12.5, at the least 0.00001
 * Checked in tests/domain/stock/spread-of-amount.test.ts
 */
export function readabilityG(grams: number): number {
  for (let decimals = 0; decimals < FINEST_DECIMALS; decimals += 1) {
    if (Number(grams.toFixed(decimals)) === grams) return 10 ** -decimals;
  }
  return 10 ** -FINEST_DECIMALS;
}

/**
 * Variance of one weighing by itself: its seeds' own variation and the balance's step.
 *
 * @param seeds  that the grams were turned into, either sign
 * @param grams  as read, same sign
 * @returns seeds squared
 * Checked in tests/domain/stock/spread-of-amount.test.ts
 */
export function weighingVariance(seeds: number, grams: number): number {
  if (seeds === 0 || grams === 0) return 0;
  const stepInSeeds = (readabilityG(grams) * seeds) / grams;
  return SINGLE_SEED_VARIATION ** 2 * Math.abs(seeds) + stepInSeeds ** 2 / 12;
}

/**
 * Standard deviation of an amount of seed as it goes into the ledger.
 *
 * @param seeds            whole seeds, either sign
 * @param weighedG         grams they were worked out from, same sign; null when they were counted seed by seed
 * @param seedWeightError  relative standard deviation of the thousand-seed weight that was used, in [0, 1]
 * @returns seeds; 0 when counted
 * @throws RangeError when an argument is outside its range
 * @see law of propagation of uncertainty: JCGM 100:2008 (GUM), 5.1
 * Checked against R by covariance matrices, and by simulated packets: tests/golden/balance-uncertainty.json
 */
export function spreadOfAmount({
  seeds,
  weighedG,
  seedWeightError = OWN_SEED_WEIGHT_ERROR,
}: {
  seeds: number;
  weighedG: number | null;
  seedWeightError?: number;
}): number {
  if (!Number.isInteger(seeds)) throw new RangeError(`spreadOfAmount: seeds must be whole, got ${seeds}`);
  if (weighedG === null) return 0;
  if (!Number.isFinite(weighedG) || weighedG * seeds < 0) {
    throw new RangeError(`spreadOfAmount: weighedG must be finite and of the sign of ${seeds}, got ${weighedG}`);
  }
  if (!(seedWeightError >= 0 && seedWeightError <= 1)) {
    throw new RangeError(`spreadOfAmount: seedWeightError must be in [0, 1], got ${seedWeightError}`);
  }
  return Math.sqrt((seedWeightError * seeds) ** 2 + weighingVariance(seeds, weighedG));
}

/**
 * The part of a weighing's spread that comes from the thousand-seed weight, got back from what the ledger keeps.
 *
 * @param seeds, grams  of the line
 * @param seedsSd       as spreadOfAmount gave it, >= 0
 * @returns seeds; 0 when the weighing alone explains the spread
 * Checked in tests/domain/stock/spread-of-amount.test.ts
 */
export function seedWeightPart(seeds: number, grams: number, seedsSd: number): number {
  return Math.sqrt(Math.max(0, seedsSd ** 2 - weighingVariance(seeds, grams)));
}
