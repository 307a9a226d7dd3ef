import Link from 'next/link';

interface Props {
  label: string;
  page: number;
  pages: number;
  /** the address of a page */
  href: (page: number) => string;
  back: string;
  forth: string;
}

/** Page by page, with words for the two directions. Nothing where there is one page. */
export function Pager({ label, page, pages, href, back, forth }: Props) {
  if (pages <= 1) return null;
  return (
    <nav aria-label={label} className="no-print flex flex-wrap items-center gap-3">
      {page > 1 && (
        <Link href={href(page - 1)} className="button" rel="prev">
          {back}
        </Link>
      )}
      <span className="quiet">
        page {page} of {pages}
      </span>
      {page < pages && (
        <Link href={href(page + 1)} className="button" rel="next">
          {forth}
        </Link>
      )}
    </nav>
  );
}
