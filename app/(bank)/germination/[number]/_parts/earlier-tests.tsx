import Link from 'next/link';
import { IntervalStrips } from '@/app/_components/interval-strips';
import { ScrollBox } from '@/app/_components/scroll-box';
import { formatDate } from '@/app/_format/figures';
import { testPath } from '@/app/_format/links';
import { compareTwoResults } from '@/lib/domain/germination/two-results';
import { binomialInterval } from '@/lib/domain/statistics/binomial-interval';
import type { GerminationTestDetail } from '@/lib/server/queries/germination-test-detail';
import { boundsOutwards, LEVEL_IN_WORDS, TEST_LEVEL } from '../../_parts/result-words';

/** This test beside the lot's earlier ones: picture, table, and whether each agrees with it. */
export function EarlierTests({ test }: { test: GerminationTestDetail }) {
  if (test.earlier.length === 0) return null;
  const sum = (of: 'seeds' | 'normal') => test.replicates.reduce((total, replicate) => total + replicate[of], 0);
  const now = { number: test.number, setOn: test.setOn, seeds: sum('seeds'), normal: sum('normal') };
  const all = [now, ...test.earlier].map((one) => ({
    ...one,
    proportion: one.normal / one.seeds,
    interval: binomialInterval({ successes: one.normal, trials: one.seeds, level: TEST_LEVEL }),
  }));
  return (
    <section className="sheet grid gap-4" aria-labelledby="earlier-title">
      <h2 id="earlier-title">Beside the lot's earlier tests</h2>
      <IntervalStrips
        strips={all.map((one) => ({ ...one, name: one.number, quiet: one.number !== test.number }))}
        standard={null}
      />
      <p className="label">Germination; lines show where the truth lies {LEVEL_IN_WORDS}.</p>
      <ScrollBox label="The lot's tests">
        <table className="ledger tight">
          <thead>
            <tr>
              <th scope="col">test</th>
              <th scope="col">set on</th>
              <th scope="col" className="number">
                germinated
              </th>
              <th scope="col" className="number">
                {LEVEL_IN_WORDS}
              </th>
              <th scope="col">beside this test</th>
            </tr>
          </thead>
          <tbody>
            {all.map((one) => {
              const { lower, upper } = boundsOutwards(one);
              return (
                <tr key={one.number}>
                  <td className="py-2! whitespace-nowrap">
                    {one.number === test.number ? (
                      <b className="figures">{one.number}</b>
                    ) : (
                      <Link href={testPath(one.number)} className="figures text-ink underline underline-offset-3">
                        {one.number}
                      </Link>
                    )}
                  </td>
                  <td className="py-2! whitespace-nowrap">{formatDate(one.setOn)}</td>
                  <td className="number py-2!">
                    {one.normal} of {one.seeds}
                  </td>
                  <td className="number py-2!">
                    {lower}–{upper} %
                  </td>
                  <td className="py-2!">{one.number === test.number ? 'this test' : agreement(now, one)}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollBox>
      <p className="label max-w-prose">
        Two tests agree when they lie no further apart than the rule for two tests allows (7 CFR 201.63; below 200 seeds
        an exact test at 1 in 20). Years apart, a lower germination is ageing, not a fault.
      </p>
    </section>
  );
}

interface Counted {
  seeds: number;
  normal: number;
}

function agreement(now: Counted, earlier: Counted): string {
  const count = ({ normal, seeds }: Counted) => ({ germinated: normal, seeds });
  if (compareTwoResults(count(now), count(earlier)).compatible) return 'agrees';
  return earlier.normal / earlier.seeds > now.normal / now.seeds ? 'was higher' : 'was lower';
}
