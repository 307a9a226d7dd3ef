/**
 * How long seed keeps at one moisture and temperature: the viability equation with its limits respected.
 *
 *   days = sigma (K0 - K1),    viability after p days = Phi(K0 - p / sigma)
 *
 * K0 and K1 are the probits of the viability it begins with and of the one it may fall to. Steady storage only; a
 * history of several stretches is `storage-history-life.ts`, a lot with tests of its own is the lot model's.
 */
import { normalCdf, normalQuantile } from '../statistics/normal-distribution';
import { requireProportion } from '../statistics/require-proportion';
import { effectiveConditions, freezingWarning } from './equation-limits';
import { withLowMoistureLimit } from './low-moisture-limit';
import type { SeedKind } from './seed-kind';
import { type StorageCondition, sigmaDays } from './viability-equation';

/** A fall of viability: both proportions in (0, 1), the wanted one not above the initial one. */
export interface ViabilityFall {
  initialViability: number;
  wantedViability: number;
}

export type UsableCondition =
  | {
      ok: true;
      /** days to lose one probit */
      daysPerProbit: number;
      /** percent of fresh weight, held at the low-moisture limit */
      moistureUsedPercent: number;
      heldAtLowLimit: boolean;
      outsideFittedRange: boolean;
      /** what the equation's limits ask to be said */
      notes: string[];
      /** a warning for seed too moist to freeze, or null */
      freezing: string | null;
    }
  | { ok: false; reason: string };

export type StorageLife = (Extract<UsableCondition, { ok: true }> & { days: number }) | { ok: false; reason: string };

/**
 * Days to lose one probit at one moisture and temperature, within the equation's limits.
 *
 * @param seed       constants with their range, storage behaviour and oil
 * @param condition  percent of fresh weight, 0 < m < 100, and degrees C, -273.15 to 150
 * @returns the pace with what must be said of it, or `{ ok: false, reason }` above 15 % moisture and for seed that dies when dried
 * @throws RangeError when moisture or temperature is outside the range above
 * @see Ellis & Roberts (1980), Ann. Bot. 45:13-30 (form: from memory)
 * Checked against R: tests/golden/storage-life.json
 */
export function usableCondition(seed: SeedKind, condition: StorageCondition): UsableCondition {
  const { constantsRange, constants, storageBehaviour } = withLowMoistureLimit(seed);
  const conditions = effectiveConditions({ constantsRange, storageBehaviour, ...condition });
  if (!conditions.ok) return conditions;
  return {
    ok: true,
    daysPerProbit: sigmaDays(constants, conditions),
    moistureUsedPercent: conditions.moisturePercent,
    heldAtLowLimit: conditions.heldAtLowLimit,
    outsideFittedRange: conditions.outsideFittedRange,
    notes: conditions.notes,
    freezing: freezingWarning(condition),
  };
}

/**
 * Days until viability has fallen from one level to another.
 *
 * @param seed       constants with their range, storage behaviour and oil
 * @param condition  moisture, percent of fresh weight, and temperature, degrees C
 * @param fall       proportions in (0, 1), wanted <= initial
 * @returns days, >= 0, with what must be said, or `{ ok: false, reason }` where the equation gives no forecast
 * @throws RangeError when an argument is outside its range
 * @see Ellis & Roberts (1980), Ann. Bot. 45:13-30 (form: from memory)
 * Checked against R, and 114 derived values: tests/domain/longevity/storage-life.test.ts
 */
export function storageLife(seed: SeedKind, condition: StorageCondition, fall: ViabilityFall): StorageLife {
  const probits = probitsToLose(fall);
  const usable = usableCondition(seed, condition);
  return usable.ok ? { ...usable, days: usable.daysPerProbit * probits } : usable;
}

/**
 * Viability after some days at one moisture and temperature.
 *
 * @param seed              constants with their range, storage behaviour and oil
 * @param condition         moisture, percent of fresh weight, and temperature, degrees C
 * @param initialViability  proportion in (0, 1)
 * @param days              >= 0, finite
 * @returns a proportion, with what must be said, or `{ ok: false, reason }` where the equation gives no forecast
 * @throws RangeError when an argument is outside its range
 * @see Ellis & Roberts (1980), Ann. Bot. 45:13-30 (form: from memory)
 * Checked against R: tests/golden/storage-life.json
 */
export function viabilityAfter(
  seed: SeedKind,
  condition: StorageCondition,
  { initialViability, days }: { initialViability: number; days: number },
): (Extract<UsableCondition, { ok: true }> & { viability: number }) | { ok: false; reason: string } {
  requireProportion('viabilityAfter', 'initialViability', initialViability, true);
  if (!(days >= 0 && Number.isFinite(days))) {
    throw new RangeError(`viabilityAfter: days must be finite and not negative, got ${days}`);
  }
  const usable = usableCondition(seed, condition);
  if (!usable.ok) return usable;
  return { ...usable, viability: normalCdf(normalQuantile(initialViability) - days / usable.daysPerProbit) };
}

/**
 * Probits between two viabilities.
 *
 * @param fall  proportions in (0, 1); the wanted one may not be above the initial one, for seed in store never gains
 * @returns probits, >= 0
 * @throws RangeError when a proportion is outside (0, 1) or the wanted one is above the initial one
 * Checked against R `qnorm`: tests/golden/storage-life.json
 */
export function probitsToLose({ initialViability, wantedViability }: ViabilityFall): number {
  requireProportion('probitsToLose', 'initialViability', initialViability, true);
  requireProportion('probitsToLose', 'wantedViability', wantedViability, true);
  if (wantedViability > initialViability) {
    throw new RangeError(
      `probitsToLose: wantedViability must not be above initialViability (${initialViability}), got ${wantedViability}`,
    );
  }
  return normalQuantile(initialViability) - normalQuantile(wantedViability);
}
