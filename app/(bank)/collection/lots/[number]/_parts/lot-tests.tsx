import Link from 'next/link';
import { Caption } from '@/app/_components/caption';
import { formatDate, formatPercent } from '@/app/_format/figures';
import { setTestPath, testPath } from '@/app/_format/links';
import { TEST_LEVEL } from '@/app/(bank)/germination/_parts/result-words';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { combineTests } from '@/lib/domain/germination/combined-tests';
import type { EvaluatedTest } from '@/lib/server/judging/age-tests';
import { combinedInWords, leftOutInWords } from './combined-words';

interface Props {
  tests: EvaluatedTest[];
  lotNumber: string;
  mayRecord: boolean;
}

/** The lot's germination tests, latest first; corrected ones are left out, their corrections stand for them. */
export function LotTests({ tests, lotNumber, mayRecord }: Props) {
  return (
    <section className="grid gap-3" aria-labelledby="tests">
      <h2 id="tests">Germination tests</h2>
      <Together tests={tests} />
      {tests.length === 0 ? (
        <p className="sheet">
          Never tested.{' '}
          {mayRecord && (
            <>
              <Link href={setTestPath(lotNumber)}>Set the first test</Link>, or{' '}
              <Link href={`/germination/new?lot=${encodeURIComponent(lotNumber)}`}>record one that is finished</Link>.
            </>
          )}
        </p>
      ) : (
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked">
            <thead>
              <tr>
                <th scope="col">test</th>
                <th scope="col">set on</th>
                <th scope="col" className="number">
                  seeds
                </th>
                <th scope="col" className="number">
                  germinated
                </th>
                <th scope="col" className="number">
                  hard or fresh
                </th>
                <th scope="col" className="number">
                  alive
                </th>
              </tr>
            </thead>
            <tbody>
              {tests.toReversed().map((test) => {
                const normal = test.replicates.reduce((sum, replicate) => sum + replicate.normal, 0);
                return (
                  <tr key={test.id}>
                    <th scope="row" className="row-head">
                      <Link href={testPath(test.number)} className="figures text-leaf underline underline-offset-3">
                        {test.number}
                      </Link>
                    </th>
                    <td data-label="set on">{formatDate(test.setOn)}</td>
                    <td className="number" data-label="seeds">
                      {test.sown}
                    </td>
                    <td className="number" data-label="germinated">
                      {formatPercent(normal / test.sown)}
                    </td>
                    <td className="number" data-label="hard or fresh">
                      {test.alive - normal}
                    </td>
                    <td className="number" data-label="alive">
                      {formatPercent(test.alive / test.sown)}
                    </td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        </div>
      )}
    </section>
  );
}

/** What two or more tests say as one, where they can be taken for one. */
function Together({ tests }: { tests: EvaluatedTest[] }) {
  if (tests.length < 2) return null;
  const combined = combineTests({
    level: TEST_LEVEL,
    tests: tests.map(({ number, setOn, replicates, probitsLost }) => ({
      name: number,
      setOnDay: toEpochDay(setOn),
      replicates,
      probitsLost,
    })),
  });
  const sentence = combinedInWords(combined);
  const leftOut = leftOutInWords(combined);
  if (sentence === null && leftOut === null) return null;
  return (
    <div className="sheet grid gap-2">
      {sentence && <Caption text={sentence} />}
      {leftOut && <p className="max-w-prose">{leftOut}</p>}
    </div>
  );
}
