import { FieldMessage } from '@/app/_components/form/field-message';
import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { RowLink } from '@/app/_components/list/row-link';
import { Viability } from '@/app/_components/viability';
import { formatCount, formatMonth } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { sharingLabel } from '@/lib/domain/stock/sharing-terms';
import type { LotsToShareQuery } from '@/lib/schemas/sharing-query';
import type { LotToShare } from '@/lib/server/queries/lots-to-share';
import { germinationInWords } from '../../_parts/germination-words';
import { addLine } from '../../actions';

interface Props {
  rows: LotToShare[];
  requestId: string;
  query: LotsToShareQuery;
}

/** Lots to choose from: how much can go, how well it grew, and what to heed. */
export function LotsToShare({ rows, requestId, query }: Props) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <thead>
          <tr>
            <th scope="col">Lot</th>
            <th scope="col" className="number">
              To spare
            </th>
            <th scope="col">Germination</th>
            <th scope="col">Alive now</th>
            <th scope="col">Heed</th>
            <th scope="col">
              <span className="sr-only">Put on the list</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.lotId}>
              <th scope="row" className="row-head">
                <RowLink href={lotPath(row.lotNumber)}>{row.accessionName}</RowLink>
                <span className="block font-normal">
                  <span className="figures whitespace-nowrap">{row.lotNumber}</span>{' '}
                  <span className="quiet">
                    {row.cropName}, {formatMonth(row.harvestedOn)}
                  </span>
                </span>
              </th>
              <td className="number" data-label="to spare">
                <ToSpare row={row} />
              </td>
              <td data-label="germination">{germinationInWords(row.germination)}</td>
              <td data-label="alive now">
                <Viability median={row.viabilityMedian} lower={row.viabilityLower} upper={row.viabilityUpper} />
              </td>
              <td data-label="heed">
                <Heed row={row} />
              </td>
              <td className="text-right max-md:text-left">
                {row.onList ? (
                  <span className="quiet">on the list</span>
                ) : (
                  row.sharing !== 'not' &&
                  row.active > 0 && (
                    <Form action={addLine} className="grid justify-items-end gap-2 max-md:justify-items-start">
                      <HiddenField name="requestId" value={requestId} />
                      <HiddenField name="lot" value={row.lotNumber} />
                      <HiddenField name="q" value={query.q} />
                      <HiddenField name="show" value={query.show} />
                      <HiddenField name="page" value={query.page} />
                      <SubmitButton quiet busy="Adding …">
                        Add<span className="sr-only"> {row.lotNumber}</span>
                      </SubmitButton>
                      <FieldMessage name="lot" />
                    </Form>
                  )
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function ToSpare({ row: { toSpare, promised } }: { row: LotToShare }) {
  if (!toSpare.ok) return <span className="quiet">not known</span>;
  return (
    <>
      {formatCount(toSpare.spare)}
      {promised > 0 && <span className="quiet block text-sm">{formatCount(promised)} on other requests</span>}
    </>
  );
}

function Heed({ row }: { row: LotToShare }) {
  const lines: string[] = [];
  if (row.sharing !== 'may')
    lines.push(`${sharingLabel(row.sharing)}${row.sharingTerms ? `: ${row.sharingTerms}` : ''}`);
  if (row.treatment) lines.push(`treated seed (${row.treatment}): never food or feed`);
  if (row.belowTheLine) lines.push('below the line: it may come up poorly');
  if (row.active === 0) lines.push('no active stock');
  else if (!row.toSpare.ok) {
    lines.push(row.toSpare.reason === 'no-forecast' ? 'no forecast: a steward decides' : 'may be dead: test it first');
  } else if (row.toSpare.spare === 0) {
    lines.push(`${formatCount(row.toSpare.kept)} seeds must stay`);
  }
  if (lines.length === 0) return <span className="quiet">–</span>;
  return (
    <ul>
      {lines.map((line) => (
        <li key={line} className="wrap-anywhere">
          {line}
        </li>
      ))}
    </ul>
  );
}
