import Link from 'next/link';
import { signedCount } from '@/app/_format/balance-words';
import { formatCount } from '@/app/_format/figures';
import { packetPath } from '@/app/_format/store-path';
import { DECISION_LABELS, differenceOf, type StockTakeDecision } from '@/lib/domain/stock/stock-take-difference';
import type { StockTakeLine } from '@/lib/server/queries/stock-take-work';
import { foundInWords } from '../../_parts/found-words';
import { TickButtons } from './tick-buttons';

interface Props {
  lines: StockTakeLine[];
  take: { id: string; storeId: string };
  mayCount: boolean;
}

/** What was written down, the latest first. */
export function LookedAtList({ lines, take, mayCount }: Props) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <caption className="sr-only">Packets looked at, the latest first</caption>
        <thead>
          <tr>
            <th scope="col">Packet</th>
            <th scope="col">Found</th>
            <th scope="col" className="number">
              Ledger
            </th>
            <th scope="col" className="number">
              Difference
            </th>
            {mayCount && (
              <th scope="col">
                <span className="sr-only">Undo</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Row key={line.lineId} line={line} take={take} mayCount={mayCount} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Row({ line, take, mayCount }: { line: StockTakeLine; take: Props['take']; mayCount: boolean }) {
  const difference = differenceOf({ ...line, seeds: line.foundSeeds });
  return (
    <tr>
      <th scope="row" className="row-head wrap-anywhere">
        <Link
          href={packetPath(line.number)}
          className="figures font-bold text-ink underline decoration-rule underline-offset-3"
        >
          {line.number}
        </Link>{' '}
        {line.accessionName} <span className="quiet figures font-normal">{line.lotNumber}</span>
      </th>
      <td data-label="found">
        {foundInWords({ ...line, seeds: line.foundSeeds })}
        {!line.belongsHere && line.finding === 'here' && (
          <b className="block text-ochre">belongs in {line.placeName || 'no store'}</b>
        )}
        {line.decision && (
          <span className="label block">{DECISION_LABELS[line.decision as StockTakeDecision] ?? line.decision}</span>
        )}
        {line.byName && <span className="label block">{line.byName}</span>}
      </td>
      <td className="number" data-label="ledger">
        {formatCount(line.expectedSeeds)}
      </td>
      <td className="number" data-label="difference">
        {difference === null ? '–' : signedCount(difference)}
      </td>
      {mayCount && (
        <td className="text-right">
          <TickButtons
            stockTakeId={take.id}
            storeId={take.storeId}
            packetId={line.packetId}
            packetNumber={line.number}
            version={line.version}
          />
        </td>
      )}
    </tr>
  );
}
