import { formatDate, formatPercent } from '@/app/_format/figures';
import type { LastGermination } from '@/lib/server/queries/last-germination';

/** The last count of a lot as a pack list says it: '92 % of 200 seeds, 4 Mar 2024'. */
export function germinationInWords(last: LastGermination | null | undefined): string {
  if (!last || last.seeds === 0) return 'never tested';
  const asleep = last.alive > last.normal ? `, ${formatPercent(last.alive / last.seeds)} alive` : '';
  return `${formatPercent(last.normal / last.seeds)} of ${last.seeds} seeds${asleep}, ${formatDate(last.finishedOn)}`;
}
