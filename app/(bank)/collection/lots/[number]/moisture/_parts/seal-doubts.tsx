import Link from 'next/link';
import { Emphasis } from '@/app/_components/caption';
import { Notice } from '@/app/_components/notice';
import { formatMoisture } from '@/app/_format/moisture';
import { packetPath } from '@/app/_format/store-path';
import type { PacketMoisture } from '@/lib/server/queries/lot-moisture';
import { doubtInWords } from './test-words';

/** Packets whose latest test contradicts what they were packed at, each with the way to reckon with what was measured. */
export function SealDoubts({ packets, mayRecord }: { packets: readonly PacketMoisture[]; mayRecord: boolean }) {
  return packets.map(({ number, doubt }) => {
    if (!doubt) return null;
    const { testedOn, moisturePercent } = doubt.test;
    return (
      <Notice key={number} kind="caution">
        <p className="max-w-prose">
          <Emphasis text={doubtInWords(number, doubt)} />
        </p>
        {mayRecord && (
          <Link
            href={`${packetPath(number)}/repack?moisture=${Number(moisturePercent.toFixed(1))}&from=${testedOn}`}
            className="button no-print mt-2"
          >
            Reckon with {formatMoisture(moisturePercent)} from that day
          </Link>
        )}
      </Notice>
    );
  });
}
