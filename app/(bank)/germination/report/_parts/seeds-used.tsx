import Link from 'next/link';
import type { ReactNode } from 'react';
import { signedCount } from '@/app/_format/balance-words';
import { formatCount } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import type { Period } from '@/lib/schemas/germination-report-query';
import type { ReportSeeds, SeedUse } from '@/lib/server/queries/report-seeds';
import { agreeInWords } from './report-words';

const USE_WORDS: Record<SeedUse, string> = {
  'these tests': 'for the tests of this report',
  'other germination tests': 'for germination tests still being counted, or finished outside this time',
  'trays given up': 'for tests that were given up',
  'viability tests': 'for tetrazolium and cut tests',
  'moisture tests': 'for moisture tests',
  'no test named': 'for tests that nobody named',
};

/** Seeds used up, told by the tests and by the ledger, and what explains the difference. */
export function SeedsUsed({ seeds, period }: { seeds: ReportSeeds; period: Period }) {
  if (seeds.set === 0 && seeds.ledgerTotal === 0) return null;
  const { notInLedger } = seeds;
  return (
    <section className="grid gap-3" aria-labelledby="seeds-used">
      <h2 id="seeds-used">Seeds used up</h2>
      <p className="max-w-prose">{agreeInWords(seeds)}</p>
      <div className="grid items-start gap-4 lg:grid-cols-2">
        <Sum title="By the tests of this report" total={seeds.set}>
          <Line words="taken out of a packet in this time" seeds={seeds.takenInPeriod} />
          {seeds.takenOutside > 0 && <Line words="taken out on a day outside this time" seeds={seeds.takenOutside} />}
          {notInLedger.tests > 0 && (
            <Line
              words={`in no ledger: ${notInLedger.tests === 1 ? 'one test was' : `${formatCount(notInLedger.tests)} tests were`} written down without taking seed out`}
              seeds={notInLedger.seeds}
            />
          )}
          {seeds.beyondSet !== 0 && (
            <Line
              words={seeds.beyondSet > 0 ? 'taken out, and not set' : 'set beyond what was taken out'}
              seeds={-seeds.beyondSet}
            />
          )}
        </Sum>
        <Sum title="By the ledger, for tests in this time" total={seeds.ledgerTotal}>
          {seeds.ledger.map(({ use, seeds: taken }) => (
            <Line key={use} words={USE_WORDS[use]} seeds={taken} />
          ))}
        </Sum>
      </div>
      <p className="label max-w-prose">
        Lines that were taken back are left out.{' '}
        <Link href={listHref('/stores/ledger', { reason: 'test', ...period }, {})}>These lines in the ledger</Link>
      </p>
    </section>
  );
}

function Sum({ title, total, children }: { title: string; total: number; children: ReactNode }) {
  return (
    <table className="ledger sheet p-0!">
      <caption className="px-4 pt-3 text-left font-semibold">{title}</caption>
      <tbody>{children}</tbody>
      <tfoot>
        <tr>
          <th scope="row" className="row-head">
            together
          </th>
          <td className="number">
            <b>{formatCount(total)}</b>
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

function Line({ words, seeds }: { words: string; seeds: number }) {
  return (
    <tr>
      <th scope="row" className="row-head font-normal!">
        {words}
      </th>
      <td className="number">{seeds < 0 ? signedCount(seeds) : formatCount(seeds)}</td>
    </tr>
  );
}
