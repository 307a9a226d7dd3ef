import clsx from 'clsx';
import { ArrowDown, ArrowUp } from 'lucide-react';
import Link from 'next/link';
import type { ReactNode } from 'react';
import { listHref } from '@/app/_format/list-href';

interface Props {
  path: string;
  query: Record<string, string | number | undefined> & { sort: string };
  /** the sort parameter of this column: 'name' */
  sort: string;
  number?: boolean;
  /** the way round that is wanted first: most urgent, most seed */
  descendingFirst?: boolean;
  children: ReactNode;
}

/** A column's head that orders the list by it; pressed again, the other way round. */
export function SortHeader({ path, query, sort, number, descendingFirst, children }: Props) {
  const ascending = query.sort === sort;
  const descending = query.sort === `-${sort}`;
  const firstWay = descendingFirst ? `-${sort}` : sort;
  const otherWay = descendingFirst ? sort : `-${sort}`;
  return (
    <th
      scope="col"
      aria-sort={ascending ? 'ascending' : descending ? 'descending' : undefined}
      className={number ? 'number' : undefined}
    >
      <Link
        href={listHref(path, query, { sort: query.sort === firstWay ? otherWay : firstWay })}
        className={clsx(
          'inline-flex min-h-8 items-center gap-1 font-sans text-ink-2 no-underline hover:underline',
          (ascending || descending) && 'font-bold text-ink!',
        )}
      >
        {children}
        {ascending && <ArrowUp aria-hidden size={14} />}
        {descending && <ArrowDown aria-hidden size={14} />}
      </Link>
    </th>
  );
}
