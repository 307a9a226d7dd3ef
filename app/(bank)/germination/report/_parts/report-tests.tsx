import Link from 'next/link';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { formatCount, formatDate, formatPercent } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import { boundsOutwards } from '@/app/(bank)/germination/_parts/result-words';
import type { GerminationReport } from '@/lib/server/queries/germination-report';
import { againstBefore, type ReportTest } from '@/lib/server/queries/report-tests';
import { changeInWords } from './report-words';

const COLUMNS = ['test', 'lot', 'set, last count', 'normal', 'replicates', 'against the test before', 'what it led to'];

/** A line for each test, by crop. On paper the whole width is used. */
export function ReportTests({ report: { tests, sums, pages, page } }: { report: GerminationReport }) {
  return (
    <section className="grid gap-3" aria-labelledby="report-tests">
      <h2 id="report-tests">
        Tests <span className="figures font-normal text-ink-2">{formatCount(sums.tests)}</span>
        {pages > 1 && <span className="quiet font-normal">, page {page}</span>}
      </h2>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <thead>
            <tr>
              {COLUMNS.map((name) => (
                <th key={name} scope="col" className={name === 'normal' ? 'number' : undefined}>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          {byCrop(tests).map(([cropName, ofCrop]) => (
            <tbody key={cropName}>
              <tr>
                <th scope="rowgroup" colSpan={COLUMNS.length} className="row-head bg-sunk">
                  {cropName}
                </th>
              </tr>
              {ofCrop.map((test) => (
                <Line key={test.number} test={test} />
              ))}
            </tbody>
          ))}
        </table>
      </div>
    </section>
  );
}

/** Tests come in order of crops: those of one stand together. */
function byCrop(tests: readonly ReportTest[]): [string, ReportTest[]][] {
  const crops: [string, ReportTest[]][] = [];
  for (const test of tests) {
    const last = crops.at(-1);
    if (last?.[0] === test.cropName) last[1].push(test);
    else crops.push([test.cropName, [test]]);
  }
  return crops;
}

function Line({ test }: { test: ReportTest }) {
  const { lower, upper } = boundsOutwards(test);
  return (
    <tr>
      <th scope="row" className="row-head">
        <Link
          href={testPath(test.number)}
          prefetch={false}
          className="figures inline-block py-1 text-ink underline underline-offset-3"
        >
          {test.number}
        </Link>
      </th>
      <td data-label="lot">
        {test.accessionName}{' '}
        <Link href={lotPath(test.lotNumber)} prefetch={false} className="figures block w-fit text-sm text-ink">
          {test.lotNumber}
        </Link>
      </td>
      <td data-label="set, last count">
        <span className="whitespace-nowrap">{formatDate(test.setOn)}</span>
        <span className="block whitespace-nowrap">{formatDate(test.finishedOn)}</span>
      </td>
      <td className="number" data-label="normal">
        {formatPercent(test.normal / test.seeds)}{' '}
        <span className="quiet whitespace-nowrap">
          {lower}–{upper}
        </span>
        <span className="label block">of {formatCount(test.seeds)} seeds</span>
      </td>
      <td data-label="replicates">
        {test.replicates}
        {test.agreement ? test.agreement.within ? ', agree' : <b>, do not agree</b> : ', not compared'}
        {test.agreement && (
          <span className="label block">
            {Math.round(test.agreement.range)} points apart, {test.agreement.tolerated} tolerated
          </span>
        )}
      </td>
      <td data-label="against the test before">
        {test.before ? (
          <>
            {changeInWords(test, test.before, againstBefore(test)?.compatible !== false)}
            <span className="label block">
              {test.before.number}, {formatDate(test.before.finishedOn)}
            </span>
          </>
        ) : (
          <span className="quiet">first test</span>
        )}
      </td>
      <td data-label="what it led to">
        <Outcome test={test} />
      </td>
    </tr>
  );
}

/** What is judged of the lot today; a lot that was tested since is judged by that test as well. */
function Outcome({ test: { judged, testedSince } }: { test: ReportTest }) {
  if (!judged) return <span className="quiet">not judged</span>;
  return (
    <>
      <JudgementMark action={judged.action} />
      {judged.testDueOn && judged.action !== 'regrow' && (
        <span className="label block">
          next test <span className="whitespace-nowrap">{formatDate(judged.testDueOn)}</span>
        </span>
      )}
      {testedSince && <span className="label block">tested since: {testedSince}</span>}
    </>
  );
}
