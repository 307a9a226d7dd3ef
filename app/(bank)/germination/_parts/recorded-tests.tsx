import Link from 'next/link';
import { Pager } from '@/app/_components/list/pager';
import { CropFilter } from '@/app/_components/list/usual-filters';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import type { GerminationQuery } from '@/lib/schemas/germination-query';
import type { findGerminationTests, GerminationTestRow } from '@/lib/server/queries/germination-tests';
import { listAddress } from './list-address';

interface Props {
  tests: Awaited<ReturnType<typeof findGerminationTests>>;
  crops: { id: string; name: string }[];
  query: GerminationQuery;
}

/** All tests ever recorded, newest first, to be searched. */
export function RecordedTests({ tests, crops, query }: Props) {
  const filtered = Boolean(query.q || query.crop);
  return (
    <section className="grid gap-3" aria-labelledby="recorded-title">
      <h2 id="recorded-title">
        Recorded <span className="figures font-normal text-ink-2">{formatCount(tests.total)}</span>
      </h2>
      {(filtered || tests.total > 0) && <Filters crops={crops} query={query} />}
      {tests.rows.length === 0 ? (
        <p className="sheet">
          {filtered ? (
            <>
              Nothing matches. <Link href="/germination">Show every test</Link>.
            </>
          ) : (
            <span className="quiet">No test is recorded yet.</span>
          )}
        </p>
      ) : (
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked">
            <thead>
              <tr>
                <th scope="col">Test</th>
                <th scope="col">Lot</th>
                <th scope="col">finished</th>
                <th scope="col" className="number">
                  germinated
                </th>
                <th scope="col" className="number">
                  alive
                </th>
                <th scope="col" className="number">
                  seeds
                </th>
              </tr>
            </thead>
            <tbody>
              {tests.rows.map((row) => (
                <TestRow key={row.number} row={row} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      <Pager
        label="Pages of recorded tests"
        page={tests.page}
        pages={tests.pages}
        href={(page) => listAddress(query, { page })}
        back="Newer"
        forth="Older"
      />
    </section>
  );
}

function TestRow({ row }: { row: GerminationTestRow }) {
  const corrected = row.correctedByNumber !== null;
  return (
    <tr className={corrected ? 'text-ink-2' : undefined}>
      <th scope="row" className="row-head min-w-0!">
        <Link href={testPath(row.number)} className="figures inline-block py-1 text-ink underline underline-offset-3">
          {row.number}
        </Link>
        {row.correctedByNumber && <span className="label block font-normal">corrected by {row.correctedByNumber}</span>}
      </th>
      <td>
        <b>{row.accessionName}</b> <span className="quiet">{row.cropName}</span>
        <Link href={lotPath(row.lotNumber)} className="figures block w-fit text-sm text-ink">
          {row.lotNumber}
        </Link>
      </td>
      <td data-label="finished" className="whitespace-nowrap">
        {formatDate(row.finishedOn)}
      </td>
      <td className="number" data-label="germinated">
        {percentOf(row.normal, row.seeds)}
      </td>
      <td className="number" data-label="alive">
        {percentOf(row.alive, row.seeds)}
      </td>
      <td className="number" data-label="seeds">
        {formatCount(row.seeds)} <span className="quiet">in {row.replicateCount}</span>
      </td>
    </tr>
  );
}

const percentOf = (count: number, seeds: number) => (seeds > 0 ? `${Math.round((100 * count) / seeds)} %` : '–');

function Filters({ crops, query }: { crops: Props['crops']; query: GerminationQuery }) {
  return (
    <search className="no-print">
      <form action="/germination" key={`${query.q} ${query.crop}`} className="flex flex-wrap items-end gap-3">
        <label className="grid grow gap-1 sm:grow-0">
          <span className="label">Find</span>
          <input
            name="q"
            type="search"
            defaultValue={query.q}
            placeholder="test, lot or variety"
            className="field sm:w-56!"
          />
        </label>
        <CropFilter crops={crops} chosen={query.crop} />
        <button type="submit" className="button">
          Show
        </button>
      </form>
    </search>
  );
}
