import Link from 'next/link';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { CONTAINERS } from '@/lib/domain/stock/containers';
import type { StoredPacket } from '@/lib/server/queries/stores';

const containerLabel = (key: string) => CONTAINERS.find((container) => container.key === key)?.label ?? key;

/** What lies in a store now. */
export function StoredPackets({ rows }: { rows: StoredPacket[] }) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <thead>
          <tr>
            <th scope="col">Accession</th>
            <th scope="col">Lot</th>
            <th scope="col">Packet</th>
            <th scope="col">Container</th>
            <th scope="col" className="number">
              Moisture
            </th>
            <th scope="col" className="number">
              Seeds
            </th>
            <th scope="col">Since</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.packetNumber}>
              <th scope="row" className="row-head">
                <Link
                  href={lotPath(row.lotNumber)}
                  className="wrap-anywhere font-bold text-ink underline decoration-rule underline-offset-3 hover:decoration-ink"
                >
                  {row.accessionName}
                  <span className="sr-only"> {row.lotNumber}</span>
                </Link>{' '}
                <span className="quiet font-normal">{row.cropName}</span>
              </th>
              <td className="figures whitespace-nowrap" data-label="lot">
                {row.lotNumber}
              </td>
              <td className="figures whitespace-nowrap" data-label="packet">
                {row.packetNumber}
              </td>
              <td data-label="container">{containerLabel(row.container)}</td>
              <td className="number" data-label="moisture">
                {row.moisturePercent === null ? '–' : `${row.moisturePercent} %`}
              </td>
              <td className="number" data-label="seeds">
                {formatCount(row.seeds)}
              </td>
              <td className="whitespace-nowrap" data-label="since">
                {formatDate(row.from)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
