import Link from 'next/link';
import { Notice } from '@/app/_components/notice';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { careDueInWords, containerLabel, pathInWords } from '@/app/_format/packet-words';
import { duplicateWarning, stockInWords } from '@/app/_format/stock-words';
import { packetPath } from '@/app/_format/store-path';
import { packetRoleLabel } from '@/lib/domain/stock/packet-roles';
import type { PacketForecast } from '@/lib/server/queries/packet-forecast';
import type { StockedPacket } from '@/lib/server/queries/stock';
import { PacketViability } from './packet-viability';

interface Props {
  lotNumber: string;
  packets: StockedPacket[];
  forecasts: ReadonlyMap<string, PacketForecast>;
  mayChange: boolean;
  today: string;
}

/** What of a lot is where, packet by packet: for what, how much, how alive, what it wants. */
export function LotPackets({ lotNumber, packets, forecasts, mayChange, today }: Props) {
  const filled = packets.filter(({ seeds }) => seeds > 0);
  const empty = packets.filter(({ seeds }) => seeds === 0);
  const warning = duplicateWarning(packets);
  return (
    <section className="grid gap-3" aria-labelledby="packets">
      <div className="flex flex-wrap items-center justify-between gap-3">
        <h2 id="packets">{filled.length === 1 ? 'Packet' : 'Packets'}</h2>
        <Link href={`${lotPath(lotNumber)}/ledger`} className="button no-print">
          Ledger of the lot
        </Link>
      </div>
      <p className="max-w-prose">{stockInWords(packets) ?? 'No packet of this lot holds seed.'}</p>
      {warning && <Notice kind="note">{warning}</Notice>}
      {filled.length > 0 && (
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked">
            <thead>
              <tr>
                <th scope="col">Packet</th>
                <th scope="col">Where</th>
                <th scope="col" className="number">
                  Seeds
                </th>
                <th scope="col" className="number">
                  Alive now
                </th>
                <th scope="col">Next</th>
                {mayChange && (
                  <th scope="col">
                    <span className="sr-only">Do</span>
                  </th>
                )}
              </tr>
            </thead>
            <tbody>
              {filled.map((packet) => (
                <PacketLine
                  key={packet.id}
                  packet={packet}
                  forecast={forecasts.get(packet.id)}
                  mayChange={mayChange}
                  today={today}
                />
              ))}
            </tbody>
          </table>
        </div>
      )}
      {empty.length > 0 && (
        <p className="label">
          Empty:{' '}
          {empty.map(({ id, number }, index) => (
            <span key={id}>
              {index > 0 && ', '}
              <Link href={packetPath(number)} className="figures">
                {number}
              </Link>
            </span>
          ))}
        </p>
      )}
    </section>
  );
}

interface LineProps {
  packet: StockedPacket;
  forecast: PacketForecast | undefined;
  mayChange: boolean;
  today: string;
}

function PacketLine({ packet, forecast, mayChange, today }: LineProps) {
  const { number, role, seeds, place, container, careDue, since } = packet;
  const due = careDueInWords(careDue);
  return (
    <tr>
      <th scope="row" className="row-head min-w-0!">
        <Link
          href={packetPath(number)}
          className="figures font-bold whitespace-nowrap text-ink underline decoration-rule underline-offset-3 hover:decoration-ink"
        >
          {number}
        </Link>
        <span className="quiet block text-sm font-normal">{packetRoleLabel(role)}</span>
      </th>
      <td data-label="where">
        {pathInWords(place)}
        <span className="label block">
          {[container && containerLabel(container), since && `since ${formatDate(since)}`].filter(Boolean).join(', ')}
        </span>
      </td>
      <td className="number" data-label="seeds">
        {formatCount(seeds)}
      </td>
      <td className="number" data-label="alive now">
        <PacketViability forecast={forecast} />
      </td>
      <td data-label="next">
        {due ? <span className={careDue && careDue.on <= today ? 'font-semibold text-ochre' : ''}>{due}</span> : '–'}
      </td>
      {mayChange && (
        <td className="text-right max-md:text-left">
          <div className="flex flex-wrap gap-2 md:justify-end">
            <Link href={`${packetPath(number)}/take`} className="button">
              Take<span className="sr-only"> seed out of {number}</span>
            </Link>
            <Link href={`${packetPath(number)}/move`} className="button">
              Move<span className="sr-only"> {number}</span>
            </Link>
            <Link href={`${packetPath(number)}/split`} className="button">
              Split<span className="sr-only"> {number}</span>
            </Link>
          </div>
        </td>
      )}
    </tr>
  );
}
