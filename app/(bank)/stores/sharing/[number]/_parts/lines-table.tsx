import Link from 'next/link';
import { formatCount, formatDate, formatGrams } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { packetPath } from '@/app/_format/store-path';
import type { RequestLine } from '@/lib/server/queries/request-lines';

/** The list of a request to be read: what went, out of which packet, and what was taken back since. */
export function LinesTable({ lines }: { lines: RequestLine[] }) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <thead>
          <tr>
            <th scope="col">Seed</th>
            <th scope="col">Lot</th>
            <th scope="col">Packet</th>
            <th scope="col" className="number">
              Seeds
            </th>
            <th scope="col">Ledger</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.id}>
              <th scope="row" className="row-head">
                {line.accession.name} <span className="label block font-normal">{line.accession.cropName}</span>
              </th>
              <td className="figures whitespace-nowrap" data-label="lot">
                {line.lot && <Link href={lotPath(line.lot.number)}>{line.lot.number}</Link>}
              </td>
              <td className="figures whitespace-nowrap" data-label="packet">
                {line.packet && <Link href={packetPath(line.packet.number)}>{line.packet.number}</Link>}
              </td>
              <td className="number" data-label="seeds">
                {formatCount(line.movement?.seeds ?? line.seeds ?? 0)}
                {line.movement?.grams != null && (
                  <span className="quiet block text-sm">{formatGrams(line.movement.grams)}</span>
                )}
              </td>
              <td data-label="ledger">
                {line.movement === null && <span className="quiet">not sent</span>}
                {line.movement?.takenBackOn && (
                  <b className="text-madder">taken back on {formatDate(line.movement.takenBackOn)}</b>
                )}
                {line.movement?.takenBackOn === null && `out on ${formatDate(line.movement.on)}`}
                {line.note && <span className="label block">{line.note}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
