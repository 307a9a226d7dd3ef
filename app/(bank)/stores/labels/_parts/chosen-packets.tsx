import Link from 'next/link';
import { formatCount } from '@/app/_format/figures';
import { packetPath } from '@/app/_format/store-path';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import type { LabelContent } from '@/lib/domain/labels/label-content';
import { labelsHref } from './labels-address';

/** More than these are not listed one by one: whoever chose four hundred chose them together. */
const MOST_LISTED = 60;

/** The packets whose labels are to be printed. */
export function ChosenPackets({ address, contents }: { address: Address; contents: readonly LabelContent[] }) {
  const numbers = contents.map((content) => content.packetNumber);
  return (
    <details className="sheet">
      <summary className="cursor-pointer py-2.5 font-semibold">
        {formatCount(contents.length)} {contents.length === 1 ? 'packet' : 'packets'} chosen
      </summary>
      <ul className="divide-y divide-rule">
        {contents.slice(0, MOST_LISTED).map((content) => (
          <li key={content.packetNumber} className="flex min-h-11 items-center justify-between gap-3">
            <span>
              <Link href={packetPath(content.packetNumber)} prefetch={false} className="figures">
                {content.packetNumber}
              </Link>{' '}
              {content.accessionName}
            </span>
            <Link
              href={labelsHref(address, { packets: numbers.filter((number) => number !== content.packetNumber) })}
              prefetch={false}
              className="inline-flex min-h-11 items-center"
            >
              leave out<span className="sr-only"> {content.packetNumber}</span>
            </Link>
          </li>
        ))}
      </ul>
      {contents.length > MOST_LISTED && (
        <p className="quiet mt-2">and {formatCount(contents.length - MOST_LISTED)} more</p>
      )}
      <p className="mt-3">
        <Link href={labelsHref(address, { packets: [] })} className="button">
          Choose anew
        </Link>
      </p>
    </details>
  );
}
