import Link from 'next/link';
import { labelsHref } from '@/app/_components/labels/labels-address';
import { formatCount } from '@/app/_format/figures';
import { packetPath } from '@/app/_format/store-path';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import type { LabelledPacket } from '@/lib/domain/labels/packet-label';

/** More than these are not listed one by one: whoever chose four hundred chose them together. */
const MOST_LISTED = 60;

/** The packets whose labels are to be printed. */
export function ChosenPackets({ address, packets }: { address: Address; packets: readonly LabelledPacket[] }) {
  const numbers = packets.map((packet) => packet.packetNumber);
  return (
    <details className="sheet">
      <summary className="cursor-pointer py-2.5 font-semibold">
        {formatCount(packets.length)} {packets.length === 1 ? 'packet' : 'packets'} chosen
      </summary>
      <ul className="divide-y divide-rule">
        {packets.slice(0, MOST_LISTED).map((packet) => (
          <li key={packet.packetNumber} className="flex min-h-11 items-center justify-between gap-3">
            <span>
              <Link href={packetPath(packet.packetNumber)} prefetch={false} className="figures">
                {packet.packetNumber}
              </Link>{' '}
              {packet.accessionName}
            </span>
            <Link
              href={labelsHref(address, { packets: numbers.filter((number) => number !== packet.packetNumber) })}
              prefetch={false}
              className="inline-flex min-h-11 items-center"
            >
              leave out<span className="sr-only"> {packet.packetNumber}</span>
            </Link>
          </li>
        ))}
      </ul>
      {packets.length > MOST_LISTED && (
        <p className="quiet mt-2">and {formatCount(packets.length - MOST_LISTED)} more</p>
      )}
      <p className="mt-3">
        <Link href={labelsHref(address, { packets: [] })} className="button">
          Choose anew
        </Link>
      </p>
    </details>
  );
}
