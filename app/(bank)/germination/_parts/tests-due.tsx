import Link from 'next/link';
import { Pager } from '@/app/_components/list/pager';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath, setTestPath } from '@/app/_format/links';
import type { GerminationQuery } from '@/lib/schemas/germination-query';
import type { findTestsDueOrComing, TestDueRow } from '@/lib/server/queries/germination-tests';
import { listAddress } from './list-address';

interface Props {
  due: Awaited<ReturnType<typeof findTestsDueOrComing>>;
  query: GerminationQuery;
  today: string;
  mayRecord: boolean;
}

/** Lots to be tested: which, why, by when. */
export function TestsDue({ due, query, today, mayRecord }: Props) {
  return (
    <section className="grid gap-3" aria-labelledby="due-title">
      <h2 id="due-title">
        Tests due <span className="figures font-normal text-ink-2">{formatCount(due.dueNow)}</span>
      </h2>
      {due.rows.length === 0 ? (
        <p className="sheet quiet">No lot needs a test in the next two months.</p>
      ) : (
        <ul className="sheet p-0!">
          {due.rows.map((row) => (
            <DueRow key={row.lotNumber} row={row} today={today} mayRecord={mayRecord} />
          ))}
        </ul>
      )}
      <Pager
        label="Pages of tests due"
        page={due.page}
        pages={due.pages}
        href={(page) => listAddress(query, { due: page })}
        back="Due sooner"
        forth="Due later"
      />
    </section>
  );
}

function DueRow({ row, today, mayRecord }: { row: TestDueRow; today: string; mayRecord: boolean }) {
  return (
    <li className="grid gap-x-6 gap-y-2 border-b border-rule px-5 py-3 last:border-0 md:grid-cols-[15rem_1fr_auto] md:items-center">
      <Link href={lotPath(row.lotNumber)} className="text-ink no-underline hover:underline">
        <b>{row.accessionName}</b> <span className="quiet">{row.cropName}</span>
        <span className="figures block text-sm">{row.lotNumber}</span>
      </Link>
      <div>
        <p>{row.reason}</p>
        <p className="text-sm">
          {row.testDueOn <= today ? (
            <span className="font-semibold text-ochre">due since {formatDate(row.testDueOn)}</span>
          ) : (
            <span className="text-ink-2">due {formatDate(row.testDueOn)}</span>
          )}
          <span className="text-ink-2">
            {' '}
            · {row.lastTestedOn ? `last tested ${formatDate(row.lastTestedOn)}` : 'never tested'} ·{' '}
            {formatCount(row.seedsLeft)} seeds left
          </span>
        </p>
      </div>
      {mayRecord && (
        <Link href={setTestPath(row.lotNumber)} className="button justify-self-start">
          Set a test<span className="sr-only"> of {row.lotNumber}</span>
        </Link>
      )}
    </li>
  );
}
