import type { StoragePeriod } from '@/lib/domain/longevity/ageing';
import type { StorageGoal } from '@/lib/domain/longevity/reach-goal';
import type { SeedKind } from '@/lib/domain/longevity/seed-kind';
import { daysThroughHistory, viabilityAfterHistory } from '@/lib/domain/longevity/storage-history-life';
import { usableCondition } from '@/lib/domain/longevity/storage-life';
import type { StorageCondition } from '@/lib/domain/longevity/viability-equation';
import { yearsInWords } from '@/lib/domain/longevity/years-in-words';
import type { StorageLifeQuestion } from '@/lib/schemas/calculators/storage-life';
import { percentOf } from './words';

export const DAYS_PER_YEAR = 365.25;

export interface AskedStorage {
  ok: true;
  condition: StorageCondition;
  /** viability on coming into this store, the viability wanted, and for how many days */
  goal: StorageGoal;
  /** where it lay before, and the viability it had then */
  before: (StoragePeriod & { initialViability: number }) | null;
}

/** What was asked, in days and proportions; with what an earlier stay took from the seed first. */
export function askedStorage(input: StorageLifeQuestion, seed: SeedKind): AskedStorage | { ok: false; reason: string } {
  const condition = { moisturePercent: input.moisture, temperatureC: input.temperature };
  const goal = { initialViability: input.initial, wantedViability: input.wanted, days: input.years * DAYS_PER_YEAR };
  const { beforeYears, beforeMoisture, beforeTemperature } = input;
  // Seed that dies when dried has no answer in any store, so nothing is worth drawing.
  if (seed.storageBehaviour === 'recalcitrant') {
    const refusal = usableCondition(seed, condition);
    if (!refusal.ok) return refusal;
  }
  if (beforeYears === undefined || beforeMoisture === undefined || beforeTemperature === undefined) {
    return { ok: true, condition, goal, before: null };
  }
  const before = {
    days: beforeYears * DAYS_PER_YEAR,
    moisturePercent: beforeMoisture,
    temperatureC: beforeTemperature,
    initialViability: input.initial,
  };
  const after = viabilityAfterHistory(seed, [before], input.initial);
  if (!after.ok) return { ok: false, reason: `Of the storage before: ${after.reason}` };
  if (after.viability <= input.wanted) {
    const fall = daysThroughHistory(seed, [before], {
      initialViability: input.initial,
      wantedViability: Math.min(input.initial, input.wanted),
    });
    const when = fall.ok ? `, after ${yearsInWords(fall.days)}` : '';
    return {
      ok: false,
      reason: `The storage before leaves ${percentOf(after.viability)} alive: it is below ${percentOf(input.wanted)}${when}, before it comes into this store.`,
    };
  }
  return { ok: true, condition, goal: { ...goal, initialViability: after.viability }, before };
}
