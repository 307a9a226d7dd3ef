/**
 * How a planting's seed was kept true, and how far that can be trusted. Status of the order: common practice. Which one a
 * crop needs depends on who carries its pollen: a selfing crop stays true in the open, an insect- or wind-pollinated one
 * does not.
 */
import type { Pollination } from '../reference/crop-facts';

/** `rank` 1 keeps seed truest; equal ranks are equally good. */
export const ISOLATIONS = [
  { key: 'hand pollination', label: 'hand pollination', rank: 1, isolated: true },
  { key: 'bagged flowers', label: 'bagged flowers', rank: 1, isolated: true },
  { key: 'cage', label: 'cage', rank: 2, isolated: true },
  { key: 'distance', label: 'distance', rank: 3, isolated: true },
  // Flowering times overlap in some years, so time is trusted less than distance.
  { key: 'time', label: 'flowering time', rank: 4, isolated: true },
  // Seed from elsewhere whose growing nobody recorded.
  { key: 'unknown', label: 'not known', rank: 5, isolated: false },
  { key: 'none', label: 'none (open-pollinated)', rank: 6, isolated: false },
] as const satisfies readonly { key: string; label: string; rank: number; isolated: boolean }[];

export type Isolation = (typeof ISOLATIONS)[number]['key'];

/** The keys alone, for input rules and the database. */
export const ISOLATION_KEYS = ISOLATIONS.map((isolation) => isolation.key) as [Isolation, ...Isolation[]];

/**
 * How true an isolation keeps seed of a crop with this pollination: 1 is truest, 6 least.
 *
 * @param isolation    a key of ISOLATIONS
 * @param pollination  of the crop; a crop that is wholly self-pollinated counts as 1 whatever was done (common practice:
 *                     its seed only has to be kept from mixing), a mostly selfing one gains a single step
 * @returns integer from 1 to 6
 * @throws RangeError when there is no such isolation
 * Checked in tests/domain/pollination/isolation.test.ts
 */
export function truenessRank(isolation: string, pollination: Pollination): number {
  const { rank } = findIsolation('truenessRank', isolation);
  if (pollination === 'self') return 1;
  return pollination === 'mostly self' ? Math.max(1, rank - 1) : rank;
}

/**
 * Whether seed grown this way may be taken as true to its accession.
 *
 * @param isolation    a key of ISOLATIONS
 * @param pollination  of the crop
 * @returns true when it was isolated, or when the crop is wholly self-pollinated
 * @throws RangeError when there is no such isolation
 * Checked in tests/domain/pollination/isolation.test.ts
 */
export function isKeptTrue(isolation: string, pollination: Pollination): boolean {
  return findIsolation('isKeptTrue', isolation).isolated || pollination === 'self';
}

function findIsolation(caller: string, key: string) {
  const found = ISOLATIONS.find((isolation) => isolation.key === key);
  if (found === undefined) throw new RangeError(`${caller}: isolation must be one of ${ISOLATION_KEYS}, got ${key}`);
  return found;
}
