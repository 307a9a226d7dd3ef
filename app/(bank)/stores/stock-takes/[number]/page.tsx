import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { z } from 'zod';
import { Cautions } from '@/app/_components/cautions';
import { History } from '@/app/_components/history';
import { Pager } from '@/app/_components/list/pager';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatCount, formatDate } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { readParameter } from '@/app/_format/read-parameter';
import { stockTakePath } from '@/app/_format/stock-take-path';
import { storePath } from '@/app/_format/store-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findHistory } from '@/lib/server/queries/history';
import { findByCode } from '@/lib/server/queries/stock-take-packet';
import { getStockTakeWork } from '@/lib/server/queries/stock-take-work';
import { getStockTake } from '@/lib/server/queries/stock-takes';
import { getStore } from '@/lib/server/queries/stores';
import { CountingPlace } from './_parts/counting-place';
import { LookedAtList } from './_parts/looked-at-list';
import { Progress } from './_parts/progress';
import { ToDoList } from './_parts/to-do-list';

const PER_PAGE = 50;

const querySchema = z.object({
  packet: z.string().max(100).catch(''),
  todo: z.coerce.number().int().min(1).catch(1),
  done: z.coerce.number().int().min(1).catch(1),
});

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Stock-take ${readParameter((await params).number)}` };
}

export default async function StockTakePage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const take = await getStockTake(readParameter((await params).number));
  if (!take) notFound();
  const query = querySchema.parse(await searchParams);
  const [work, store, history] = await Promise.all([
    getStockTakeWork(take),
    getStore(take.storeId),
    findHistory([{ entity: 'stock-take', ids: [take.id] }], 10),
  ]);
  const open = take.status === 'open';
  const mayCount = open && mayActAs(person, 'volunteer');
  const chosen = mayCount && query.packet ? await findByCode(take, query.packet) : null;
  const path = stockTakePath(take.number);
  const todo = slice(work.toDo, query.todo);
  const done = slice(work.lines, query.done);
  const elsewhere = work.lines.filter(({ belongsHere, finding }) => !belongsHere && finding === 'here').length;
  return (
    <>
      <PageHead
        above={<Link href="/stores/stock-takes">Stock-take</Link>}
        title={
          <>
            {take.storeName} <span className="figures font-normal whitespace-nowrap">{take.number}</span>
          </>
        }
        below={
          <>
            Started {formatDate(take.startedOn)}
            {take.byName && ` by ${take.byName}`}. <Link href={storePath(take.storeId)}>To the store</Link>
          </>
        }
      >
        {open && mayActAs(person, 'volunteer') && (
          <Link href={`${path}/review`} className={work.toDo.length === 0 ? 'button main' : 'button'}>
            Review
          </Link>
        )}
      </PageHead>
      {open ? (
        <Progress done={work.done} total={work.total} elsewhere={elsewhere} />
      ) : (
        <Notice kind="note">
          {take.status === 'closed' ? 'Closed' : 'Given up'} {take.closedOn && `on ${formatDate(take.closedOn)}`}:{' '}
          {formatCount(work.lines.length)} packets were looked at.
          {take.status === 'given-up' && ' Nothing was changed in the ledger.'}
        </Notice>
      )}
      {take.notes && <p className="max-w-prose whitespace-pre-line">{take.notes}</p>}
      {mayCount && (
        <CountingPlace
          key={query.packet}
          stockTakeId={take.id}
          storeId={take.storeId}
          chosen={chosen?.ok ? chosen.packet : null}
        />
      )}
      {open && work.toDo.length > 0 && (
        <section className="grid gap-3" aria-labelledby="to-do">
          <h2 id="to-do">Still to look at ({formatCount(work.toDo.length)})</h2>
          <ToDoList packets={todo.rows} take={take} path={path} mayCount={mayCount} />
          <Pager
            label="Packets still to look at"
            href={(page) => listHref(path, {}, { todo: page })}
            page={todo.page}
            pages={todo.pages}
          />
        </section>
      )}
      {work.lines.length > 0 && (
        <section className="grid gap-3" aria-labelledby="looked-at">
          <h2 id="looked-at">Looked at ({formatCount(work.lines.length)})</h2>
          <LookedAtList lines={done.rows} take={take} mayCount={mayCount} />
          <Pager
            label="Packets looked at"
            href={(page) => listHref(path, {}, { done: page })}
            page={done.page}
            pages={done.pages}
          />
        </section>
      )}
      {open && (store?.targetTemperatureC ?? 0) < 0 && <Cautions keys={['warm-before-opening']} />}
      <History lines={history} />
    </>
  );
}

function slice<Row>(rows: Row[], asked: number): { rows: Row[]; page: number; pages: number } {
  const pages = Math.max(1, Math.ceil(rows.length / PER_PAGE));
  const page = Math.min(asked, pages);
  return { rows: rows.slice((page - 1) * PER_PAGE, page * PER_PAGE), page, pages };
}
