import Link from 'next/link';
import { formatCount, formatDate } from '@/app/_format/figures';
import { requestPath } from '@/app/_format/request-path';
import { findShared } from '@/lib/server/queries/sharing-requests';

/** What of some lots went to others, and to whom of late; nothing where none did. */
export async function SharedSeed({ lotIds }: { lotIds: string[] }) {
  const { seeds, latest } = await findShared(lotIds);
  if (seeds === 0) return null;
  return (
    <section className="grid gap-2" aria-labelledby="shared">
      <h2 id="shared">Shared: {formatCount(seeds)} seeds</h2>
      <ul className="grid gap-1">
        {latest.map((line) => (
          <li key={line.id} className="wrap-anywhere">
            {formatDate(line.on)}: {formatCount(line.seeds)} seeds
            {lotIds.length > 1 && (
              <>
                {' '}
                of <span className="figures whitespace-nowrap">{line.lotNumber}</span>
              </>
            )}
            {line.request ? (
              <>
                , <Link href={requestPath(line.request.number)}>{line.request.recipient}</Link>
              </>
            ) : (
              line.note && `, ${line.note}`
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
