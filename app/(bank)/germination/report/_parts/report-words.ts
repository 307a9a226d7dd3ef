import { formatCount } from '@/app/_format/figures';
import type { GerminationReport } from '@/lib/server/queries/germination-report';
import type { ReportSeeds } from '@/lib/server/queries/report-seeds';

const counted = (count: number, one: string, many: string) => `${formatCount(count)} ${count === 1 ? one : many}`;

/** '3 of 41 (7 %)'; nothing can be said of none. */
export function shareInWords(part: number, whole: number): string {
  if (whole === 0) return 'none could be compared';
  const percent = Math.round((100 * part) / whole);
  const said = percent === 0 && part > 0 ? 'under 1' : percent === 100 && part < whole ? 'over 99' : String(percent);
  return `${formatCount(part)} of ${formatCount(whole)} (${said} %)`;
}

/**
 * The report in a sentence, the main figures between **.
 *
 * Checked in tests/app/report-words.test.ts
 */
export function reportInWords({ sums }: Pick<GerminationReport, 'sums'>): string {
  const { tests, lots, seeds, outside, comparable, lotsBelow } = sums;
  const below =
    lotsBelow === 0
      ? 'None of these lots is more likely below its line than above it today.'
      : `**${counted(lotsBelow, 'lot is', 'lots are')}** more likely below ${lotsBelow === 1 ? 'its' : 'their'} line than above it today.`;
  const apart =
    comparable === 0
      ? ''
      : outside === 0
        ? ' All replicates that could be compared agreed.'
        : ` In **${counted(outside, 'test', 'tests')}** the replicates lay further apart than is tolerated.`;
  return `**${counted(tests, 'test', 'tests')}** of ${counted(lots, 'lot', 'lots')} with ${counted(seeds, 'seed', 'seeds')}.${apart} ${below}`;
}

/**
 * How a test stands beside the lot's test before: '−12 points: agrees'.
 *
 * Checked in tests/app/report-words.test.ts
 */
export function changeInWords(
  now: { normal: number; seeds: number },
  before: { normal: number; seeds: number },
  agrees: boolean,
): string {
  const points = Math.round(100 * (now.normal / now.seeds - before.normal / before.seeds));
  const sign = points < 0 ? '−' : points > 0 ? '+' : '';
  const said = `${sign}${Math.abs(points)} ${Math.abs(points) === 1 ? 'point' : 'points'}`;
  return `${said}: ${agrees ? 'agrees' : 'differs by more than chance'}`;
}

/**
 * Whether the tests and the ledger tell the same of the seed that these tests used up.
 *
 * Checked in tests/app/report-words.test.ts
 */
export function agreeInWords({
  set,
  notInLedger,
  beyondSet,
}: Pick<ReportSeeds, 'set' | 'notInLedger' | 'beyondSet'>): string {
  if (set === 0) return 'No germination test was finished; the ledger took out seed for others.';
  const missing =
    notInLedger.tests === 0
      ? ''
      : `${counted(notInLedger.seeds, 'seed', 'seeds')} of ${counted(notInLedger.tests, 'test', 'tests')} never went out of the ledger: these tests were written down without taking seed out.`;
  const beyond =
    beyondSet === 0
      ? ''
      : beyondSet > 0
        ? `${counted(beyondSet, 'seed more', 'seeds more')} went out than was set.`
        : `${counted(-beyondSet, 'seed more', 'seeds more')} was set than went out.`;
  if (missing === '' && beyond === '') return 'Tests and ledger agree: every seed that was set went out of the ledger.';
  return `Tests and ledger differ. ${[missing, beyond].filter(Boolean).join(' ')}`;
}
