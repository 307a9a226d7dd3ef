/**
 * Drying by weight: only water leaves, so the dry matter before and after is the same. A jar on a balance is then
 * enough to know when seed has reached its target, without spending a sample in the oven.
 */

/**
 * Weight at which seed has reached its target moisture: Wf = Wi (100 - mi) / (100 - mf).
 *
 * @param weight                 weight now, any unit, > 0
 * @param moisturePercent        moisture now, percent of fresh weight, in [0, 100)
 * @param targetMoisturePercent  moisture wanted, percent of fresh weight, in [0, 100); higher than now means taking up
 *                               water, for which the same balance holds
 * @returns weight at the target, in the unit of `weight`
 * @throws RangeError when an argument is outside its range
 * @see rule from memory (genebank manuals); it follows from constant dry matter
 * Checked in tests/domain/moisture/drying.test.ts
 */
export function targetWeight({
  weight,
  moisturePercent,
  targetMoisturePercent,
}: {
  weight: number;
  moisturePercent: number;
  targetMoisturePercent: number;
}): number {
  requirePositive('targetWeight', 'weight', weight);
  requireMoisture('targetWeight', 'moisturePercent', moisturePercent);
  requireMoisture('targetWeight', 'targetMoisturePercent', targetMoisturePercent);
  return (weight * (100 - moisturePercent)) / (100 - targetMoisturePercent);
}

/**
 * Moisture that seed has reached, from its weight at a known moisture and its weight now.
 *
 * @param weightBefore           weight when the moisture was known, any unit, > 0
 * @param moisturePercentBefore  moisture then, percent of fresh weight, in [0, 100)
 * @param weightNow              weight now, same unit, > 0
 * @returns percent of fresh weight now; or `{ ok: false, reason: 'lighter-than-its-dry-matter' }` when the seed weighs
 *          less than its own dry matter: some was spilled, or the first moisture was wrong
 * @throws RangeError when an argument is outside its range
 * @see the inverse of targetWeight
 * Checked in tests/domain/moisture/drying.test.ts
 */
export function moistureByWeight({
  weightBefore,
  moisturePercentBefore,
  weightNow,
}: {
  weightBefore: number;
  moisturePercentBefore: number;
  weightNow: number;
}): { ok: true; moisturePercent: number } | { ok: false; reason: 'lighter-than-its-dry-matter' } {
  requirePositive('moistureByWeight', 'weightBefore', weightBefore);
  requireMoisture('moistureByWeight', 'moisturePercentBefore', moisturePercentBefore);
  requirePositive('moistureByWeight', 'weightNow', weightNow);
  const dryMatter = (weightBefore * (100 - moisturePercentBefore)) / 100;
  const moisturePercent = (100 * (weightNow - dryMatter)) / weightNow;
  return moisturePercent < 0 ? { ok: false, reason: 'lighter-than-its-dry-matter' } : { ok: true, moisturePercent };
}

function requirePositive(caller: string, name: string, value: number): void {
  if (!Number.isFinite(value) || value <= 0) {
    throw new RangeError(`${caller}: ${name} must be a finite number > 0, got ${value}`);
  }
}

function requireMoisture(caller: string, name: string, value: number): void {
  if (!(value >= 0 && value < 100)) throw new RangeError(`${caller}: ${name} must be in [0, 100), got ${value}`);
}
