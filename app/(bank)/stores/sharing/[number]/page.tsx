import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { Facts } from '@/app/_components/facts';
import { History } from '@/app/_components/history';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatCount, formatDate } from '@/app/_format/figures';
import { readParameter } from '@/app/_format/read-parameter';
import { bagLabelsPath, requestPath } from '@/app/_format/request-path';
import { recipientKindLabel } from '@/lib/domain/stock/recipient-kinds';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findHistory } from '@/lib/server/queries/history';
import { getRequest, type RequestPage } from '@/lib/server/queries/sharing-requests';
import { RequestMark } from '../_parts/request-mark';
import { LinesForm } from './_parts/lines-form';
import { LinesTable } from './_parts/lines-table';
import { TurnDownForm } from './_parts/turn-down-form';

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<{ saved?: string; sent?: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Request ${readParameter((await params).number)}` };
}

export default async function RequestDetailPage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const request = await getRequest(readParameter((await params).number));
  if (!request) notFound();
  const { saved, sent } = await searchParams;
  const mayPrepare = mayActAs(person, 'volunteer');
  const isOpen = request.status === 'open';
  const changing = isOpen && mayPrepare;
  const history = mayPrepare ? await findHistory([{ entity: 'sharing request', ids: [request.id] }]) : [];
  return (
    <>
      <PageHead
        above={<Link href="/stores/sharing">Sharing</Link>}
        title={
          <>
            {request.recipient} <span className="figures font-normal whitespace-nowrap">{request.number}</span>
          </>
        }
        below={`${recipientKindLabel(request.recipientKind)}, asked on ${formatDate(request.askedOn)}`}
      >
        {mayPrepare && <Actions request={request} maySend={mayActAs(person, 'steward')} />}
      </PageHead>
      {sent && request.status === 'sent' && (
        <Notice kind="done">
          Sent: {countOf(request.lines.length, 'packet')} drawn from, and written in the ledger.
        </Notice>
      )}
      {saved && isOpen && <Notice kind="done">The list is saved.</Notice>}
      <Facts
        facts={[
          ['State', <RequestMark key="state" state={request.status} />],
          ['Settled on', request.settledOn && formatDate(request.settledOn)],
          ['What for', request.purpose],
          ['Contact', mayPrepare && request.contact],
          ['Lots', formatCount(request.lines.length)],
          ['Seeds', formatCount(request.lines.reduce((sum, line) => sum + (line.seeds ?? 0), 0))],
        ]}
      />
      {mayPrepare && request.notes && <p className="max-w-prose whitespace-pre-line">{request.notes}</p>}
      <section className="grid gap-3" aria-labelledby="list">
        <h2 id="list">{request.status === 'sent' ? 'What went' : 'What is to go'}</h2>
        {request.lines.length === 0 ? (
          <EmptyState>
            <p className="quiet">Nothing is on the list{isOpen ? ' yet' : ''}.</p>
          </EmptyState>
        ) : changing ? (
          <>
            <LinesForm request={request} />
            {!mayActAs(person, 'steward') && <p className="label">A steward looks it over and sends it.</p>}
          </>
        ) : (
          <LinesTable lines={request.lines} />
        )}
      </section>
      <Cautions keys={['local-law']} />
      {isOpen && mayActAs(person, 'steward') && <TurnDownForm id={request.id} version={request.version} />}
      <History lines={history} />
    </>
  );
}

function Actions({ request, maySend }: { request: RequestPage; maySend: boolean }) {
  const path = requestPath(request.number);
  const isOpen = request.status === 'open';
  const packets = request.lines.flatMap((line) => (line.packet ? [line.packet.number] : []));
  return (
    <>
      {isOpen && (
        <Link href={`${path}/edit`} className="button">
          Change
        </Link>
      )}
      {packets.length > 0 && (
        <>
          <Link href={`${path}/pack-list`} className="button">
            Pack list
          </Link>
          <Link href={bagLabelsPath(request.number)} className="button">
            Labels
          </Link>
        </>
      )}
      {isOpen && (
        <Link href={`${path}/choose`} className={packets.length === 0 ? 'button main' : 'button'}>
          Choose lots
        </Link>
      )}
      {isOpen && maySend && packets.length > 0 && (
        <Link href={`${path}/send`} className="button main">
          Send
        </Link>
      )}
    </>
  );
}

const countOf = (count: number, thing: string) => `${count} ${thing}${count === 1 ? '' : 's'}`;
