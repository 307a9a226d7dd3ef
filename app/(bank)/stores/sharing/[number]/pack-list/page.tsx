import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { PrintButton } from '@/app/_components/print-button';
import { formatDate } from '@/app/_format/figures';
import { readParameter } from '@/app/_format/read-parameter';
import { bagLabelsPath, requestPath } from '@/app/_format/request-path';
import { recipientKindLabel } from '@/lib/domain/stock/recipient-kinds';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getPackList } from '@/lib/server/queries/sharing-requests';
import { today } from '@/lib/server/today';
import { PackLine } from '../_parts/pack-line';

export const metadata: Metadata = { title: 'Pack list' };

interface Props {
  params: Promise<{ number: string }>;
}

/** A sheet to pack by, and to lay into the parcel. */
export default async function PackListPage({ params }: Props) {
  await requirePerson('volunteer');
  const list = await getPackList(readParameter((await params).number));
  if (!list) notFound();
  const { request, germinations, bankName } = list;
  return (
    <>
      <PageHead
        above={
          <>
            {bankName} · <Link href={requestPath(request.number)}>request {request.number}</Link>
          </>
        }
        title={`Pack list for ${request.recipient}`}
        below={[
          recipientKindLabel(request.recipientKind),
          request.purpose,
          `asked on ${formatDate(request.askedOn)}`,
          request.settledOn
            ? `${request.status} on ${formatDate(request.settledOn)}`
            : `printed ${formatDate(today())}`,
        ]
          .filter(Boolean)
          .join(', ')}
      >
        {request.lines.some((line) => line.packet) && (
          <>
            <Link href={bagLabelsPath(request.number)} className="button">
              Labels
            </Link>
            <PrintButton />
          </>
        )}
      </PageHead>
      {request.lines.length === 0 ? (
        <EmptyState>
          <p>
            Nothing is on the list yet. <Link href={`${requestPath(request.number)}/choose`}>Choose lots</Link>
          </p>
        </EmptyState>
      ) : (
        <>
          <ol className="grid gap-3 print:gap-0">
            {request.lines.map((line) => (
              <PackLine key={line.id} line={line} germination={line.lot ? germinations.get(line.lot.id) : undefined} />
            ))}
          </ol>
          <p className="max-w-prose">
            Local seed law, variety protection and plant-health rules apply; ask your authority before seed crosses a
            border. This is not a certificate. Germination was measured on the day given and may have fallen since.
          </p>
          <div className="mt-8 grid max-w-prose grid-cols-2 gap-8">
            <p className="border-t border-ink pt-1 text-sm">Packed by, date</p>
            <p className="border-t border-ink pt-1 text-sm">Received by, date</p>
          </div>
        </>
      )}
    </>
  );
}
