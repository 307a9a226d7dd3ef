import type { UncertainBalance } from '@/lib/domain/stock/balance-uncertainty';
import { formatCount } from './figures';

/**
 * What a packet holds, for reading: 'about 1 240 (1 150–1 330)', or '1 240' when it is known to the seed.
 *
 * Checked in tests/app/balance-words.test.ts
 */
export function balanceInWords({ seeds, lower, upper }: Pick<UncertainBalance, 'seeds' | 'lower' | 'upper'>): string {
  if (lower === seeds && upper === seeds) return formatCount(seeds);
  return `about ${formatCount(seeds)} (${formatCount(lower)}–${formatCount(upper)})`;
}

/** A line's amount with its sign: '+1 240', '−200', '0'. */
export const signedCount = (seeds: number): string => (seeds > 0 ? `+${formatCount(seeds)}` : formatCount(seeds));

/** How far an amount may be off, nine times in ten: '± 60'; nothing when it was counted or nobody knows. */
export function spreadInWords(seedsSd: number | null): string | null {
  const half = seedsSd === null ? 0 : Math.round(seedsSd * NINE_IN_TEN);
  return half === 0 ? null : `± ${formatCount(half)}`;
}

/** standard deviations to either side that hold nine in ten */
const NINE_IN_TEN = 1.6449;
