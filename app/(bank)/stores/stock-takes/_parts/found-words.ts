import { formatCount, formatGrams } from '@/app/_format/figures';

/** What was found, for reading: 'not here', 'here', '1 240 seeds', '1 190 seeds (3.1 g)'. */
export function foundInWords(line: { finding: string; seeds: number | null; grams: number | null }): string {
  if (line.finding === 'not-here') return 'not here';
  if (line.seeds === null) return 'here';
  const grams = line.grams === null ? '' : ` (${formatGrams(line.grams)})`;
  return `${formatCount(line.seeds)} ${line.seeds === 1 ? 'seed' : 'seeds'}${grams}`;
}
