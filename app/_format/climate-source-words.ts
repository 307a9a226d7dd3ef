import type { ClimateSource } from '@/lib/server/queries/climate-source';
import { formatDate } from './figures';

/** Where a store's climate comes from, in a few words that stand by themselves. */
export function climateSourceWords(source: ClimateSource): string {
  if (source.kind === 'target') {
    return source.ofStore === null ? 'target, not logged' : `target as ${source.ofStore}, not logged`;
  }
  const where = source.inStore === null ? 'logged' : `logged in ${source.inStore}`;
  const until = `${where} until ${formatDate(source.lastOn)}`;
  return source.stopped ? `${until}, target since` : until;
}
