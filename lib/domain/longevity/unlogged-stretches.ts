/** Where a store's target stands in because nothing was logged: before the first reading, in long gaps, after the last. */
import type { StoreClimate } from './store-climate';

export interface TimeStretch {
  fromEpochSeconds: number;
  toEpochSeconds: number;
}

/**
 * @param climate           from `storeClimate`
 * @param fromEpochSeconds  seconds since 1970-01-01 UTC
 * @param toEpochSeconds    the same, >= fromEpochSeconds
 * @returns stretches in order of time, cut to the one asked about; the rest of it is within reach of readings
 * @throws RangeError when the stretch runs backwards
 * Checked against `climateCoverage` in tests/domain/longevity/unlogged-stretches.test.ts
 */
export function unloggedStretches(
  climate: StoreClimate,
  fromEpochSeconds: number,
  toEpochSeconds: number,
): TimeStretch[] {
  if (!(toEpochSeconds >= fromEpochSeconds)) {
    throw new RangeError(`unloggedStretches: the stretch runs backwards, got ${fromEpochSeconds} to ${toEpochSeconds}`);
  }
  const { epochSeconds } = climate.readings;
  const first = epochSeconds[0] ?? Infinity;
  const last = epochSeconds.at(-1) ?? Infinity;
  return [
    { fromEpochSeconds: -Infinity, toEpochSeconds: first },
    ...climate.gaps,
    { fromEpochSeconds: last, toEpochSeconds: Infinity },
  ].flatMap((gap) => {
    const from = Math.max(fromEpochSeconds, gap.fromEpochSeconds);
    const to = Math.min(toEpochSeconds, gap.toEpochSeconds);
    return to > from ? [{ fromEpochSeconds: from, toEpochSeconds: to }] : [];
  });
}
