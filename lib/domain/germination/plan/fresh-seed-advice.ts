/*
 * What the printed method says of pre-chilling: whether for every test or only for fresh or dormant seed, and for how long.
 */

export interface PrechillAdvice {
  /** 'always': part of the method; 'fresh': where fresh or dormant seed is expected */
  when: 'always' | 'fresh';
  days: number;
}

/**
 * Days of pre-chilling that a method names.
 *
 * @param preTreatment  words of the method; null: none
 * @returns null where they name no pre-chilling with its days
 * Checked in tests/domain/germination/plan/fresh-seed-advice.test.ts, over every method of the reference
 */
export function prechillAdvice(preTreatment: string | null): PrechillAdvice | null {
  if (preTreatment === null) return null;
  const found = /prechill[^.;]*? for (\d+) days/i.exec(preTreatment);
  if (!found) return null;
  const fresh = /fresh or dormant seed:/i.exec(preTreatment);
  const isForFresh = fresh !== null && fresh.index < found.index;
  return { when: isForFresh ? 'fresh' : 'always', days: Number(found[1]) };
}

/** Seed is taken to be fresh so long after harvest: most after-ripening is over by then. Common practice. */
const FRESH_DAYS = 180;
/** Share of fresh seed in the last test that makes dormancy likely again. Our own choice. */
const DORMANT_SHARE = 0.05;

/**
 * Whether fresh (dormant) seed is to be expected in a test.
 *
 * @param daysSinceHarvest  whole days, >= 0
 * @param lastTest          seeds and those found fresh in the latest test; null: never tested
 * @returns true for young seed, and where the last test found it
 * Checked in tests/domain/germination/plan/fresh-seed-advice.test.ts
 */
export function freshSeedExpected({
  daysSinceHarvest,
  lastTest,
}: {
  daysSinceHarvest: number;
  lastTest: { seeds: number; fresh: number } | null;
}): boolean {
  if (lastTest && lastTest.seeds > 0) return lastTest.fresh / lastTest.seeds >= DORMANT_SHARE;
  return daysSinceHarvest <= FRESH_DAYS;
}
