import clsx from 'clsx';
import Link from 'next/link';
import { Cautions } from '@/app/_components/cautions';
import { Facts } from '@/app/_components/facts';
import { benchPath } from '@/app/_format/bench-path';
import { formatCount } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import { nextCountInWords } from '@/app/_format/next-count-words';
import { packetPath } from '@/app/_format/store-path';
import { writePacketList } from '@/lib/domain/labels/packet-list';
import type { Scanned, ScannedLot, ScannedPacket, ScannedTray } from '@/lib/server/queries/scanned';

interface Props {
  scanned: Scanned;
  mayAct: boolean;
  stockTakes: readonly { number: string; storeName: string }[];
  /** calendar date */
  today: string;
}

const PATHS = { packet: packetPath, lot: lotPath, tray: testPath } as const;

/** What was scanned, and what can be done with it: large, for wet hands. */
export function ScannedCard({ scanned, mayAct, stockTakes, today }: Props) {
  const mayCount = mayAct && scanned.kind === 'tray' && scanned.status === 'open';
  return (
    <section className="sheet grid gap-4" aria-label={`Found ${scanned.kind} ${scanned.number}`}>
      <div>
        <p className="quiet text-sm">Found {scanned.kind}</p>
        <h2 className="figures text-xl">{scanned.number}</h2>
        <p>
          <span className="font-bold">{scanned.accessionName}</span> <span className="quiet">{scanned.cropName}</span>
        </p>
      </div>
      {scanned.kind === 'packet' && <PacketFacts packet={scanned} />}
      {scanned.kind === 'lot' && <LotFacts lot={scanned} />}
      {scanned.kind === 'tray' && <TrayFacts tray={scanned} today={today} />}
      {scanned.treatment !== null && <Cautions keys={['treated-seed']} />}
      <div className="grid grid-cols-2 gap-3">
        {mayCount && (
          <a href={benchPath(scanned.number)} className="button main min-h-14 justify-center">
            Count it
          </a>
        )}
        <Link
          href={PATHS[scanned.kind](scanned.number)}
          className={clsx('button min-h-14 justify-center', !mayCount && 'main')}
        >
          Open
        </Link>
        {scanned.kind === 'packet' && mayAct && <PacketActions packet={scanned} stockTakes={stockTakes} />}
        {scanned.kind === 'tray' && mayAct && (
          <Link href={`/germination/labels?trays=${scanned.number}`} className="button min-h-14 justify-center">
            Print labels
          </Link>
        )}
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

const STATUS_WORDS = { open: 'under way', closed: 'closed', 'given-up': 'given up' } as const;

function TrayFacts({ tray, today }: { tray: ScannedTray; today: string }) {
  const waits = tray.next ? nextCountInWords(tray.next, today) : 'every seed is classed: close it';
  return (
    <Facts
      facts={[
        ['Dish', tray.dish && `${tray.dish} of ${tray.dishes}`],
        ['Dishes', tray.dish ? null : formatCount(tray.dishes)],
        ['Next count', tray.status === 'open' ? waits : null],
        ['Test', tray.status === 'open' ? null : STATUS_WORDS[tray.status]],
        ['Stands in', tray.place],
        [
          'Lot',
          <Link key="lot" href={lotPath(tray.lotNumber)}>
            {tray.lotNumber}
          </Link>,
        ],
        ['Seeds set', formatCount(tray.seeds)],
      ]}
    />
  );
}
