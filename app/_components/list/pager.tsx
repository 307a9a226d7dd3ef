import Link from 'next/link';
import { formatCount } from '@/app/_format/figures';

interface Props {
  label?: string;
  page: number;
  pages: number;
  /** the address of a page */
  href: (page: number) => string;
  back?: string;
  forth?: string;
}

/** From page to page of a list, with words for the two directions; nothing when there is one page. */
export function Pager({ label = 'Pages', page, pages, href, back = 'Earlier', forth = 'Further' }: Props) {
  if (pages < 2) return null;
  return (
    <nav aria-label={label} className="no-print flex flex-wrap items-center gap-3">
      {page > 1 && (
        <Link href={href(page - 1)} className="button" rel="prev">
          {back}
        </Link>
      )}
      <span className="quiet">
        page {formatCount(page)} of {formatCount(pages)}
      </span>
      {page < pages && (
        <Link href={href(page + 1)} className="button" rel="next">
          {forth}
        </Link>
      )}
    </nav>
  );
}
