import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound, redirect } from 'next/navigation';
import { HiddenField, NumberField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { readParameter } from '@/app/_format/read-parameter';
import { requestPath } from '@/app/_format/request-path';
import { REGROWINGS_KEPT, SEEDS_KEPT_FOR_TESTS } from '@/lib/domain/stock/seed-to-spare';
import { lotsToShareQuery } from '@/lib/schemas/sharing-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { SEEDS_OFFERED } from '@/lib/server/commands/add-request-line';
import { findLotsToShare } from '@/lib/server/queries/lots-to-share';
import { getRequest } from '@/lib/server/queries/sharing-requests';
import { addLine } from '../../actions';
import { LotsToShare } from '../_parts/lots-to-share';

export const metadata: Metadata = { title: 'Choose lots' };

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function ChooseLotsPage({ params, searchParams }: Props) {
  await requirePerson('volunteer');
  const asked = await searchParams;
  const query = lotsToShareQuery.parse(asked);
  const request = await getRequest(readParameter((await params).number));
  if (!request) notFound();
  const path = requestPath(request.number);
  if (request.status !== 'open') redirect(path);
  const list = await findLotsToShare(query, request.id);
  const added = request.lines.find((line) => line.lot?.number === asked.added);
  return (
    <>
      <PageHead
        above={
          <Link href={path}>
            {request.recipient} {request.number}
          </Link>
        }
        title="Choose lots"
        below={`To spare is what is left when seed for ${REGROWINGS_KEPT} regrowings and ${SEEDS_KEPT_FOR_TESTS} seeds for tests stay in the bank.`}
      >
        <Link href={path} className="button">
          To the list ({request.lines.length})
        </Link>
      </PageHead>
      {added && (
        <Notice kind="done">
          {added.accession.name} <span className="figures">{added.lot?.number}</span> is on the list, with{' '}
          {formatCount(added.seeds ?? 0)} seeds.
        </Notice>
      )}
      <Form action={addLine} className="sheet grid max-w-2xl gap-4">
        <HiddenField name="requestId" value={request.id} />
        <div className="grid items-start gap-4 sm:grid-cols-[1fr_9rem]">
          <TextField name="lot" label="Lot number" hint="Typed or scanned from the jar." />
          <NumberField name="seeds" label="Seeds" hint={`Empty: ${SEEDS_OFFERED}.`} whole optional />
        </div>
        <div>
          <SubmitButton quiet>Put on the list</SubmitButton>
        </div>
      </Form>
      <section className="grid gap-3" aria-labelledby="found">
        <h2 id="found">Or look it up</h2>
        <search>
          <form
            action={`${path}/choose`}
            key={JSON.stringify(query)}
            className="grid items-end gap-3 sm:flex sm:flex-wrap"
          >
            <label className="grid gap-1">
              <span className="label">Find by name, number or crop</span>
              <input name="q" type="search" defaultValue={query.q} autoComplete="off" className="field sm:w-64!" />
            </label>
            <label className="grid gap-1">
              <span className="label">Show</span>
              <select name="show" defaultValue={query.show} className="field sm:w-auto!">
                <option value="">lots with seed to spare</option>
                <option value="all">all lots, and why not</option>
              </select>
            </label>
            <button type="submit" className="button">
              Show
            </button>
          </form>
        </search>
        {list.rows.length > 0 ? (
          <LotsToShare rows={list.rows} requestId={request.id} query={query} />
        ) : (
          <EmptyState>
            <p>
              {query.q ? 'No lot with seed to spare matches.' : 'No lot has seed to spare.'}{' '}
              {query.show === '' && (
                <Link href={listHref(`${path}/choose`, query, { show: 'all' })}>Look among all lots</Link>
              )}
            </p>
          </EmptyState>
        )}
        <Pager href={(page) => listHref(`${path}/choose`, query, { page })} page={list.page} pages={list.pages} />
      </section>
    </>
  );
}
