import Link from 'next/link';
import { RowLink } from '@/app/_components/list/row-link';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { packetPath } from '@/app/_format/store-path';
import { CONTAINERS } from '@/lib/domain/stock/containers';
import type { StoredPacket } from '@/lib/server/queries/stores';

const containerLabel = (key: string) => CONTAINERS.find((container) => container.key === key)?.label ?? key;

/** What lies in a store now. */
export function StoredPackets({ rows, showPlace }: { rows: StoredPacket[]; showPlace: boolean }) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <thead>
          <tr>
            <th scope="col">Accession</th>
            <th scope="col">Lot</th>
            <th scope="col">Packet</th>
            {showPlace && <th scope="col">Place</th>}
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
                <RowLink href={lotPath(row.lotNumber)}>
                  {row.accessionName}
                  <span className="sr-only"> {row.lotNumber}</span>
                </RowLink>{' '}
                <span className="quiet font-normal">{row.cropName}</span>
              </th>
              <td className="figures whitespace-nowrap" data-label="lot">
                {row.lotNumber}
              </td>
              <td className="figures whitespace-nowrap" data-label="packet">
                <Link href={packetPath(row.packetNumber)}>{row.packetNumber}</Link>
              </td>
              {showPlace && (
                <td className="wrap-anywhere" data-label="place">
                  {row.storeName}
                </td>
              )}
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
