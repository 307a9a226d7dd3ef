import Link from 'next/link';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { SortHeader } from '@/app/_components/list/sort-header';
import { Viability } from '@/app/_components/viability';
import { formatCount, formatDate, formatMonth } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import type { LotListQuery } from '@/lib/schemas/list-query';
import type { LotListRow } from '@/lib/server/queries/lots';

/** The list of lots; on a phone each row reads as a card. */
export function LotTable({ rows, path, query }: { rows: LotListRow[]; path: string; query: LotListQuery }) {
  const head = { path, query };
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <thead>
          <tr>
            <SortHeader {...head} sort="accession">
              Accession
            </SortHeader>
            <SortHeader {...head} sort="lot">
              Lot
            </SortHeader>
            <SortHeader {...head} sort="crop">
              Crop
            </SortHeader>
            <SortHeader {...head} sort="harvest" descendingFirst>
              Harvest
            </SortHeader>
            <SortHeader {...head} sort="store">
              Store
            </SortHeader>
            <SortHeader {...head} sort="seeds" number>
              Seed left
            </SortHeader>
            <SortHeader {...head} sort="alive" number>
              Alive
            </SortHeader>
            <SortHeader {...head} sort="due">
              Test due
            </SortHeader>
            <SortHeader {...head} sort="urgency" descendingFirst>
              Judgement
            </SortHeader>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.lotNumber}>
              <th scope="row" className="row-head">
                <Link
                  href={lotPath(row.lotNumber)}
                  className="wrap-anywhere font-bold text-ink underline decoration-rule underline-offset-3 hover:decoration-ink"
                >
                  {row.accessionName}
                  <span className="sr-only"> {row.lotNumber}</span>
                </Link>
                {/* On a phone, in place of columns of their own. */}
                <span className="block font-normal md:hidden" aria-hidden>
                  <span className="figures">{row.lotNumber}</span> <span className="quiet">{row.cropName}</span>
                </span>
              </th>
              <td className="figures whitespace-nowrap max-md:hidden!" data-label="lot">
                {row.lotNumber}
              </td>
              <td className="max-md:hidden!" data-label="crop">
                {row.cropName}
              </td>
              <td className="whitespace-nowrap" data-label="harvest">
                {formatMonth(row.harvestedOn)}
              </td>
              <td data-label="store">{row.storeName ?? '–'}</td>
              <td className="number" data-label="seed left">
                {formatCount(row.seedsLeft)}
              </td>
              <td className="number" data-label="alive">
                <Viability median={row.viabilityMedian} lower={row.viabilityLower} upper={row.viabilityUpper} />
              </td>
              <td className="whitespace-nowrap" data-label="test due">
                {row.testDueOn === null ? '–' : formatDate(row.testDueOn)}
              </td>
              <td data-label="judgement">
                <JudgementMark action={row.action} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
