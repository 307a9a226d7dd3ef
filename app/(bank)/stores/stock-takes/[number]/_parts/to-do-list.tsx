import Link from 'next/link';
import { formatCount } from '@/app/_format/figures';
import type { SoughtPacket } from '@/lib/server/queries/stock-take-work';
import { TickButtons } from './tick-buttons';

interface Props {
  packets: SoughtPacket[];
  take: { id: string; storeId: string; storeName: string };
  path: string;
  mayCount: boolean;
}

/** Packets that nobody has looked at, place by place. */
export function ToDoList({ packets, take, path, mayCount }: Props) {
  const places = [...new Set(packets.map(({ placeName }) => placeName))];
  return places.map((place) => (
    <div key={place} className="grid gap-1">
      <h3>{place || take.storeName}</h3>
      <ul className="sheet grid gap-0 p-0!">
        {packets
          .filter(({ placeName }) => placeName === place)
          .map((packet) => (
            <li
              key={packet.packetId}
              className="flex flex-wrap items-center justify-between gap-x-6 gap-y-2 border-b border-rule px-4 py-3 last:border-0"
            >
              <div className="min-w-0 wrap-anywhere">
                <b className="figures">{packet.number}</b> <b>{packet.accessionName}</b>{' '}
                <span className="quiet">
                  {packet.cropName} <span className="figures">{packet.lotNumber}</span>, about{' '}
                  {formatCount(packet.seeds)} seeds
                </span>
              </div>
              {mayCount && (
                <div className="flex flex-wrap gap-2">
                  <Link href={`${path}?packet=${encodeURIComponent(packet.number)}`} className="button">
                    Count<span className="sr-only"> {packet.number}</span>
                  </Link>
                  <TickButtons
                    stockTakeId={take.id}
                    storeId={take.storeId}
                    packetId={packet.packetId}
                    packetNumber={packet.number}
                    version={0}
                  />
                </div>
              )}
            </li>
          ))}
      </ul>
    </div>
  ));
}
