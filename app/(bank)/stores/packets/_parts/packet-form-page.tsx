import Link from 'next/link';
import type { ReactNode } from 'react';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { containerLabel, pathInWords } from '@/app/_format/packet-words';
import { packetPath } from '@/app/_format/store-path';
import type { getPacket } from '@/lib/server/queries/packet-page';

export type PacketOfForm = NonNullable<Awaited<ReturnType<typeof getPacket>>>;

interface Props {
  packet: PacketOfForm;
  /** what is done: 'Move', 'Seal or open' */
  title: string;
  /** a sentence about what it means */
  about?: ReactNode;
  children: ReactNode;
}

/** The page of one form about one packet: which, how much is in it, where it lies, then the form. */
export function PacketFormPage({ packet, title, about, children }: Props) {
  const { lot, number, place, container, seeds } = packet;
  return (
    <>
      <PageHead
        above={
          <Link href={packetPath(number)}>
            {lot.accession.name} · packet {number}
          </Link>
        }
        title={
          <>
            {title} <span className="figures font-normal whitespace-nowrap">{number}</span>
          </>
        }
        below={
          <>
            About {formatCount(seeds)} seeds of lot <span className="figures">{lot.number}</span>
            {place && `, in ${pathInWords(place)}`}
            {container && `, ${containerLabel(container)}`}.
          </>
        }
      />
      {about && <p className="-mt-2 max-w-prose">{about}</p>}
      {children}
    </>
  );
}

/** degrees C: out of anything colder, water condenses on seed that is opened at once */
const COLD_C = 10;

/** What to beware of with this packet in hand, by key. */
export function cautionsOf({ place, lot }: PacketOfForm): string[] {
  return [
    ...(place && place.targetTemperatureC < COLD_C ? ['warm-before-opening'] : []),
    ...(lot.treatment ? ['treated-seed'] : []),
  ];
}
