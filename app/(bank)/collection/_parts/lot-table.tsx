import { JudgementMark } from '@/app/_components/judgement-mark';
import { ListHead } from '@/app/_components/list/list-head';
import { RowLink } from '@/app/_components/list/row-link';
import { Viability } from '@/app/_components/viability';
import { formatCount, formatDate, formatMonth } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import type { LotListQuery } from '@/lib/schemas/list-query';
import type { LotListRow } from '@/lib/server/queries/lots';

const COLUMNS = [
  { title: 'Accession', sort: 'accession' },
  { title: 'Lot', sort: 'lot' },
  { title: 'Crop', sort: 'crop' },
  { title: 'Harvest', sort: 'harvest', descendingFirst: true },
  { title: 'Store', sort: 'store' },
  { title: 'Seed left', sort: 'seeds', number: true },
  { title: 'Alive', sort: 'alive', number: true },
  { title: 'Test due', sort: 'due' },
  { title: 'Judgement', sort: 'urgency', descendingFirst: true },
] as const;

/** The list of lots; on a phone each row reads as a card. */
export function LotTable({ rows, path, query }: { rows: LotListRow[]; path: string; query: LotListQuery }) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <ListHead path={path} query={query} columns={COLUMNS} />
        <tbody>
          {rows.map((row) => (
            <tr key={row.lotNumber}>
              <th scope="row" className="row-head">
                <RowLink href={lotPath(row.lotNumber)}>
                  {row.accessionName}
                  <span className="sr-only"> {row.lotNumber}</span>
                </RowLink>
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
