import Link from 'next/link';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { SortHeader } from '@/app/_components/list/sort-header';
import { Viability } from '@/app/_components/viability';
import { formatCount } from '@/app/_format/figures';
import { accessionPath } from '@/app/_format/links';
import type { AccessionListQuery } from '@/lib/schemas/list-query';
import type { AccessionListRow } from '@/lib/server/queries/accessions';

/** The list of accessions; on a phone each row reads as a card. */
export function AccessionTable({
  rows,
  path,
  query,
}: {
  rows: AccessionListRow[];
  path: string;
  query: AccessionListQuery;
}) {
  const head = { path, query };
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <thead>
          <tr>
            <SortHeader {...head} sort="accession">
              Accession
            </SortHeader>
            <SortHeader {...head} sort="number">
              Number
            </SortHeader>
            <SortHeader {...head} sort="crop">
              Crop
            </SortHeader>
            <SortHeader {...head} sort="lots" number descendingFirst>
              Lots
            </SortHeader>
            <SortHeader {...head} sort="seeds" number>
              Seed left
            </SortHeader>
            <SortHeader {...head} sort="alive" number>
              Alive
            </SortHeader>
            <SortHeader {...head} sort="urgency" descendingFirst>
              Judgement
            </SortHeader>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.accessionNumber}>
              <th scope="row" className="row-head">
                <Link
                  href={accessionPath(row.accessionNumber)}
                  className="wrap-anywhere font-bold text-ink underline decoration-rule underline-offset-3 hover:decoration-ink"
                >
                  {row.accessionName}
                </Link>
                {/* On a phone, in place of columns of their own. */}
                <span className="block font-normal md:hidden">
                  <span className="figures">{row.accessionNumber}</span> <span className="quiet">{row.cropName}</span>
                </span>
              </th>
              <td className="figures whitespace-nowrap max-md:hidden!" data-label="number">
                {row.accessionNumber}
              </td>
              <td className="max-md:hidden!" data-label="crop">
                {row.cropName}
              </td>
              <td className="number" data-label="lots">
                {formatCount(row.lots)}
              </td>
              <td className="number" data-label="seed left">
                {formatCount(row.seedsLeft)}
              </td>
              <td className="number" data-label="alive">
                {row.lots === 0 ? (
                  '–'
                ) : (
                  <Viability median={row.viabilityMedian} lower={row.viabilityLower} upper={row.viabilityUpper} />
                )}
              </td>
              <td data-label="judgement">
                {row.lots === 0 ? (
                  <span className="quiet">no seed yet</span>
                ) : (
                  <JudgementMark
                    action={row.action}
                    label={row.action === 'regrow' && row.season !== null ? `Regrow ${row.season}` : undefined}
                  />
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
