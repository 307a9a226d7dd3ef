import Link from 'next/link';
import { HiddenField, SelectField } from '@/app/_components/form/fields';
import { balanceInWords, signedCount, spreadInWords } from '@/app/_format/balance-words';
import { formatCount } from '@/app/_format/figures';
import { packetPath } from '@/app/_format/store-path';
import { DECISION_LABELS } from '@/lib/domain/stock/stock-take-difference';
import type { ReviewLine } from '@/lib/server/queries/stock-take-review';
import { foundInWords } from '../../../_parts/found-words';

interface Props {
  lines: ReviewLine[];
  mayDecide: boolean;
}

/** What was found otherwise than the ledger says, the largest difference first, each with its decision. */
export function DifferenceTable({ lines, mayDecide }: Props) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <caption className="sr-only">Differences, the largest first</caption>
        <thead>
          <tr>
            <th scope="col">Packet</th>
            <th scope="col">Ledger, then</th>
            <th scope="col">Found</th>
            <th scope="col">Difference</th>
            {mayDecide && <th scope="col">Decision</th>}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.lineId}>
              <th scope="row" className="row-head wrap-anywhere">
                <Link
                  href={packetPath(line.number)}
                  className="figures font-bold text-ink underline decoration-rule underline-offset-3"
                >
                  {line.number}
                </Link>{' '}
                {line.accessionName} <span className="quiet figures font-normal">{line.lotNumber}</span>
              </th>
              <td data-label="ledger, then">
                {balanceInWords(line.expected)}
                {line.goneSince !== 0 && (
                  <span className="label block">
                    since then {signedCount(-line.goneSince)}: now {formatCount(line.seeds)}
                  </span>
                )}
              </td>
              <td data-label="found">
                {foundInWords({ ...line, seeds: line.foundSeeds })}
                {spreadInWords(line.foundSd) && <span className="label block">{spreadInWords(line.foundSd)}</span>}
                {!line.belongsHere && <b className="block text-ochre">belongs in {line.placeName || 'no store'}</b>}
                {line.byName && <span className="label block">{line.byName}</span>}
              </td>
              <td data-label="difference">
                <b className="figures">{line.difference === null ? '–' : signedCount(line.difference)}</b>
                {line.unexplained !== null && (
                  <span className={line.unexplained ? 'block text-sm font-semibold text-madder' : 'label block'}>
                    {line.unexplained
                      ? 'more than counting and weighing explain'
                      : 'counting and weighing may explain it'}
                  </span>
                )}
              </td>
              {mayDecide && (
                <td>
                  <HiddenField name={`decisions.${line.lineId}.version`} value={line.version} />
                  <SelectField
                    name={`decisions.${line.lineId}.decision`}
                    label={`What to do about ${line.number}`}
                    empty="Choose …"
                    options={line.choices.map((choice) => ({ value: choice, label: DECISION_LABELS[choice] }))}
                    defaultValue={
                      line.decision ?? (line.unexplained === false && line.choices.includes('correct') ? 'correct' : '')
                    }
                    className="min-w-56"
                  />
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
