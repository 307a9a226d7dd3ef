import { JudgementMark } from '@/app/_components/judgement-mark';
import { ListHead } from '@/app/_components/list/list-head';
import { RowLink } from '@/app/_components/list/row-link';
import { Viability } from '@/app/_components/viability';
import { formatCount } from '@/app/_format/figures';
import { accessionPath } from '@/app/_format/links';
import type { AccessionListQuery } from '@/lib/schemas/list-query';
import type { AccessionListRow } from '@/lib/server/queries/accessions';

const COLUMNS = [
  { title: 'Accession', sort: 'accession' },
  { title: 'Number', sort: 'number' },
  { title: 'Crop', sort: 'crop' },
  { title: 'Lots', sort: 'lots', number: true, descendingFirst: true },
  { title: 'Seed left', sort: 'seeds', number: true },
  { title: 'Alive', sort: 'alive', number: true },
  { title: 'Judgement', sort: 'urgency', descendingFirst: true },
] as const;

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
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <ListHead path={path} query={query} columns={COLUMNS} />
        <tbody>
          {rows.map((row) => (
            <tr key={row.accessionNumber}>
              <th scope="row" className="row-head">
                <RowLink href={accessionPath(row.accessionNumber)}>{row.accessionName}</RowLink>
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
