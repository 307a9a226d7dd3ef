/** What drying or cooling gains: the storage life in one condition against that in another. */
import type { SeedKind } from './seed-kind';
import { type StorageLife, storageLife, type ViabilityFall } from './storage-life';
import type { StorageCondition } from './viability-equation';

export type LifeGained =
  | {
      ok: true;
      /** days more in the second condition; below 0 where it is the worse */
      daysGained: number;
      /** how many times as long in the second condition, > 0; the same whatever the viabilities */
      timesAsLong: number;
      from: Extract<StorageLife, { ok: true }>;
      to: Extract<StorageLife, { ok: true }>;
    }
  | { ok: false; reason: string };

/**
 * Days gained by keeping seed in one condition rather than another.
 *
 * @param seed  constants with their range, storage behaviour and oil
 * @param from  the condition it is compared with: percent of fresh weight and degrees C
 * @param to    the other condition
 * @param fall  proportions in (0, 1), wanted <= initial
 * @returns difference and ratio, or the reason why one of the two has no forecast
 * @throws RangeError when an argument is outside its range
 * Checked in tests/domain/longevity/years-gained.test.ts: to and fro undo each other; against R: tests/golden/storage-life.json
 */
export function lifeGained(
  seed: SeedKind,
  from: StorageCondition,
  to: StorageCondition,
  fall: ViabilityFall,
): LifeGained {
  const before = storageLife(seed, from, fall);
  if (!before.ok) return before;
  const after = storageLife(seed, to, fall);
  if (!after.ok) return after;
  return {
    ok: true,
    daysGained: after.days - before.days,
    timesAsLong: after.daysPerProbit / before.daysPerProbit,
    from: before,
    to: after,
  };
}
