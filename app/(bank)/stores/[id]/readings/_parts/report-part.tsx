import { Facts } from '@/app/_components/facts';
import { Notice } from '@/app/_components/notice';
import { TableHead } from '@/app/_components/table-head';
import { formatCount } from '@/app/_format/figures';
import type { ReadingReport } from '@/lib/schemas/reading-import';
import { instantInWords, stretchInWords } from './instants';
import { PROBLEM_WORDS } from './problem-words';

interface Props {
  report: ReadingReport;
  /** false: what would come of it */
  imported: boolean;
  /** headings of the file's columns, to name them */
  headings?: readonly string[];
}

/** What was found in a logger's file: how much of it is new, gaps, and rows that were left out or mended. */
export function ReportPart({ report, imported, headings = [] }: Props) {
  const { gaps, problems } = report;
  return (
    <>
      <Facts
        facts={[
          [imported ? 'Readings added' : 'Readings to add', formatCount(report.added)],
          ['There already', formatCount(report.alreadyThere)],
          ['Rows in the file', formatCount(report.rows)],
          ['From', report.firstAt === null ? null : instantInWords(report.firstAt)],
          ['To', report.lastAt === null ? null : instantInWords(report.lastAt)],
          ['Usual interval', report.usualIntervalSeconds === null ? null : stretchInWords(report.usualIntervalSeconds)],
          [
            'Gaps',
            gaps.count === 0 ? 'none' : `${formatCount(gaps.count)}, ${stretchInWords(gaps.totalSeconds)} in all`,
          ],
        ]}
      />
      {report.saidOtherwise > 0 && (
        <Notice kind="caution">
          {formatCount(report.saidOtherwise)} of the readings that were there already say something else in this file.
          What was there stays. If the earlier file was wrong, take it back first.
        </Notice>
      )}
      {problems.length > 0 && (
        <section className="grid gap-2" aria-labelledby="found">
          <h2 id="found">What was found</h2>
          <div className="sheet overflow-x-auto p-0!">
            <table className="ledger stacked">
              <TableHead
                columns={['what', 'rows', 'first of them', 'what is done']}
                words={['what', 'first of them', 'what is done']}
              />
              <tbody>
                {problems.map(({ kind, count, rows }) => (
                  <tr key={kind}>
                    <th scope="row" className="row-head">
                      {PROBLEM_WORDS[kind].title}
                    </th>
                    <td className="number" data-label="rows">
                      {formatCount(count)}
                    </td>
                    <td data-label="first of them" className="figures text-sm">
                      {rows.slice(0, 3).map((row) => (
                        <span key={`${row.line} ${row.text}`} className="block wrap-anywhere">
                          line {row.line}
                          {row.column !== null && `, ${headings[row.column] || `column ${row.column + 1}`}`}: {row.text}
                        </span>
                      ))}
                    </td>
                    <td data-label="what is done">{PROBLEM_WORDS[kind].done}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </section>
      )}
      {gaps.count > 0 && (
        <section className="grid gap-2" aria-labelledby="gaps">
          <h2 id="gaps">Gaps</h2>
          <p className="quiet max-w-prose">
            Through a gap of up to two days the climate is taken to have gone on as before and after it; through a
            longer one the store's target counts.
          </p>
          <div className="sheet overflow-x-auto p-0!">
            <table className="ledger">
              <TableHead
                columns={['last reading', 'next reading', 'how long']}
                words={['last reading', 'next reading']}
              />
              <tbody>
                {gaps.longest.map(({ from, to }) => (
                  <tr key={from}>
                    <td>{instantInWords(from)}</td>
                    <td>{instantInWords(to)}</td>
                    <td className="number">{stretchInWords(to - from)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          {gaps.count > gaps.longest.length && <p className="quiet">The {gaps.longest.length} longest are shown.</p>}
        </section>
      )}
    </>
  );
}
