import type { DayCount } from '@/lib/domain/germination/bench/day-counts';
import { NOTHING_FOUND, sayTheSame, seedsFound } from '@/lib/domain/germination/bench/tray-count';
import { type ClassCounts, SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import type { BenchCount, TappedPlaces } from '@/lib/schemas/bench-wire';
import { findingInWords } from './tally-words';

export interface WayToSettle {
  said: string;
  found: ClassCounts | null;
  places: TappedPlaces | null;
}

/**
 * 'Ann counted 7, Ben counted 5'; who counted the same is named together.
 *
 * Checked in tests/app/bench/disagreement-options.test.ts
 */
export function disagreementInWords({ standing }: DayCount<BenchCount>): string {
  const different = findings(standing).map(({ found, names }) => ({ found, who: [...new Set(names)].join(' and ') }));
  return different
    .map(({ found, who }, index) => {
      const alike = different.filter((other) => other.who === who);
      // One person who counted twice did so on two phones, each without knowing of the other.
      const where = alike.length < 2 ? '' : different[index] === alike[0] ? ' on one phone' : ' on another';
      return found === null ? `${who} took the count back${where}` : `${who} counted ${findingInWords(found)}${where}`;
    })
    .join(', ');
}

/**
 * The ways to settle it: each finding, and all of them together where one counted after the other had taken seed out.
 *
 * @param day       the day whose counts disagree
 * @param mostLeft  seeds that may have been found that day at most
 * Checked in tests/app/bench/disagreement-options.test.ts
 */
export function waysToSettle({ standing }: DayCount<BenchCount>, mostLeft: number): WayToSettle[] {
  const different = findings(standing);
  const ways: WayToSettle[] = different.map(({ found, places }) => ({
    said: found === null ? 'not counted' : findingInWords(found),
    found,
    places,
  }));
  const counted = different.filter(({ found }) => found !== null && seedsFound(found) > 0);
  if (counted.length < 2) return ways;
  const sum = { ...NOTHING_FOUND };
  for (const { found } of counted) for (const seedClass of SEED_CLASSES) sum[seedClass] += found?.[seedClass] ?? 0;
  if (seedsFound(sum) > mostLeft) return ways;
  const all = counted.length === 2 ? 'both' : 'all';
  return [...ways, { said: `${findingInWords(sum)}: ${all}, one after the other`, found: sum, places: null }];
}

interface Different {
  found: ClassCounts | null;
  places: TappedPlaces | null;
  names: string[];
}

function findings(standing: readonly BenchCount[]): Different[] {
  const different: Different[] = [];
  for (const { found, places, byName } of standing) {
    const same = different.find((other) => sayTheSame(other.found, found));
    if (same) same.names.push(byName);
    else different.push({ found, places, names: [byName] });
  }
  return different;
}
