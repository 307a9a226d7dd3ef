import Link from 'next/link';
import { formatCount } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';

interface Props {
  path: string;
  query: Record<string, string | number | undefined>;
  page: number;
  pages: number;
}

/** From page to page of a list; nothing when there is one page. */
export function Pager({ path, query, page, pages }: Props) {
  if (pages < 2) return null;
  const to = (target: number) => listHref(path, query, { page: target });
  return (
    <nav aria-label="Pages" className="no-print flex flex-wrap items-center gap-3">
      {page > 1 && (
        <Link href={to(page - 1)} className="button" rel="prev">
          Earlier
        </Link>
      )}
      <span className="quiet">
        page {formatCount(page)} of {formatCount(pages)}
      </span>
      {page < pages && (
        <Link href={to(page + 1)} className="button" rel="next">
          Further
        </Link>
      )}
    </nav>
  );
}
