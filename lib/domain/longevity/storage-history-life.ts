/**
 * Viability through a history of several stretches, each at its own moisture and temperature: the losses in probits add.
 * Each stretch is held to the equation's limits; one that lies outside them leaves the whole history without a forecast.
 */
import { normalCdf, normalQuantile } from '../statistics/normal-distribution';
import type { StoragePeriod } from './ageing';
import type { SeedKind } from './seed-kind';
import { probitsToLose, usableCondition, type ViabilityFall } from './storage-life';

export type HistoryAnswer<Answer> = ({ ok: true; notes: string[] } & Answer) | { ok: false; reason: string };

/**
 * Viability after a history.
 *
 * @param seed              constants with their range, storage behaviour and oil
 * @param periods           stretches in order; days >= 0 and finite, percent of fresh weight, degrees C
 * @param initialViability  proportion in (0, 1)
 * @returns a proportion and the probits lost, or `{ ok: false, reason }` where a stretch has no forecast
 * @throws RangeError when an argument is outside its range
 * Checked against R, and split at any day: tests/domain/longevity/storage-history-life.test.ts
 */
export function viabilityAfterHistory(
  seed: SeedKind,
  periods: readonly StoragePeriod[],
  initialViability: number,
): HistoryAnswer<{ viability: number; probitsLost: number }> {
  if (!(initialViability > 0 && initialViability < 1)) {
    throw new RangeError(`viabilityAfterHistory: initialViability must be between 0 and 1, got ${initialViability}`);
  }
  let probitsLost = 0;
  const notes = new Set<string>();
  for (const period of periods) {
    requireDays('viabilityAfterHistory', period.days);
    const usable = usableCondition(seed, period);
    if (!usable.ok) return usable;
    for (const note of usable.notes) notes.add(note);
    probitsLost += period.days / usable.daysPerProbit;
  }
  return {
    ok: true,
    viability: normalCdf(normalQuantile(initialViability) - probitsLost),
    probitsLost,
    notes: [...notes],
  };
}

/**
 * Days from the beginning of a history until viability has fallen to a level. The last stretch is taken to go on.
 *
 * @param seed     constants with their range, storage behaviour and oil
 * @param periods  stretches in order, at least one; the days of the last do not matter
 * @param fall     proportions in (0, 1), wanted <= initial
 * @returns days, >= 0, or `{ ok: false, reason }` where a stretch up to then has no forecast
 * @throws RangeError when there is no stretch or an argument is outside its range
 * Checked against R `uniroot`: tests/golden/storage-life.json
 */
export function daysThroughHistory(
  seed: SeedKind,
  periods: readonly StoragePeriod[],
  fall: ViabilityFall,
): HistoryAnswer<{ days: number }> {
  if (periods.length === 0) throw new RangeError('daysThroughHistory: periods must not be empty');
  let toLose = probitsToLose(fall);
  let days = 0;
  const notes = new Set<string>();
  for (const [index, period] of periods.entries()) {
    requireDays('daysThroughHistory', period.days);
    const usable = usableCondition(seed, period);
    if (!usable.ok) return usable;
    for (const note of usable.notes) notes.add(note);
    const lost = period.days / usable.daysPerProbit;
    if (index === periods.length - 1 || lost >= toLose) {
      days += toLose * usable.daysPerProbit;
      break;
    }
    toLose -= lost;
    days += period.days;
  }
  return { ok: true, days, notes: [...notes] };
}

function requireDays(caller: string, days: number): void {
  if (!(days >= 0 && Number.isFinite(days))) {
    throw new RangeError(`${caller}: days must be finite and not negative, got ${days}`);
  }
}
