import Link from 'next/link';
import { Cautions } from '@/app/_components/cautions';
import { Facts } from '@/app/_components/facts';
import { formatCount } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { packetPath } from '@/app/_format/store-path';
import { writePacketList } from '@/lib/domain/labels/packet-list';
import type { Scanned, ScannedLot, ScannedPacket } from '@/lib/server/queries/scanned';

interface Props {
  scanned: Scanned;
  mayAct: boolean;
  stockTakes: readonly { number: string; storeName: string }[];
}

/** What was scanned, and what can be done with it: large, for wet hands. */
export function ScannedCard({ scanned, mayAct, stockTakes }: Props) {
  return (
    <section className="sheet grid gap-4" aria-label={`Found ${scanned.kind} ${scanned.number}`}>
      <div>
        <p className="quiet text-sm">Found {scanned.kind}</p>
        <h2 className="figures text-xl">{scanned.number}</h2>
        <p>
          <span className="font-bold">{scanned.accessionName}</span> <span className="quiet">{scanned.cropName}</span>
        </p>
      </div>
      {scanned.kind === 'packet' ? <PacketFacts packet={scanned} /> : <LotFacts lot={scanned} />}
      {scanned.treatment !== null && <Cautions keys={['treated-seed']} />}
      <div className="grid grid-cols-2 gap-3">
        <Link
          href={scanned.kind === 'packet' ? packetPath(scanned.number) : lotPath(scanned.number)}
          className="button main min-h-14 justify-center"
        >
          Open
        </Link>
        {scanned.kind === 'packet' && mayAct && <PacketActions packet={scanned} stockTakes={stockTakes} />}
        {scanned.kind === 'lot' && mayAct && scanned.packets.length > 0 && (
          <Link
            href={`/stores/labels?packets=${writePacketList(scanned.packets.map(({ number }) => number))}`}
            className="button min-h-14 justify-center"
          >
            Print labels
          </Link>
        )}
        <Link href="/stores/scan" className="button min-h-14 justify-center">
          Scan the next
        </Link>
      </div>
    </section>
  );
}

function PacketActions({ packet, stockTakes }: { packet: ScannedPacket; stockTakes: Props['stockTakes'] }) {
  const path = packetPath(packet.number);
  const actions: [string, string][] = [
    ...(packet.seeds > 0 ? ([['Take seed out', `${path}/take`]] as [string, string][]) : []),
    ['Move', `${path}/move`],
    ...stockTakes.map(({ number, storeName }): [string, string] => [
      stockTakes.length === 1 ? 'Add to the stock-take' : `Add to the stock-take of ${storeName}`,
      `/stores/stock-takes/${encodeURIComponent(number)}?packet=${packet.number}`,
    ]),
    ['Print label', `/stores/labels?packets=${writePacketList([packet.number])}`],
  ];
  return actions.map(([label, href]) => (
    <Link key={href} href={href} className="button min-h-14 justify-center text-center">
      {label}
    </Link>
  ));
}

function PacketFacts({ packet }: { packet: ScannedPacket }) {
  return (
    <Facts
      facts={[
        ['Seeds left', formatCount(packet.seeds)],
        ['Lies in', packet.place ?? 'nowhere yet'],
        [
          'Lot',
          <Link key="lot" href={lotPath(packet.lotNumber)}>
            {packet.lotNumber}
          </Link>,
        ],
        ['Harvest', packet.harvestedOn.slice(0, 4)],
      ]}
    />
  );
}

function LotFacts({ lot }: { lot: ScannedLot }) {
  return (
    <>
      <Facts facts={[['Seeds left', formatCount(lot.seeds)]]} />
      <ul className="divide-y divide-rule">
        {lot.packets.map(({ number, seeds, place }) => (
          <li key={number} className="flex min-h-11 flex-wrap items-center justify-between gap-x-3">
            <Link href={packetPath(number)} className="figures inline-flex min-h-11 items-center">
              {number}
            </Link>
            <span className="quiet">
              {place ?? 'nowhere yet'}, {formatCount(seeds)} seeds
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
