import Link from 'next/link';
import type { ReactNode } from 'react';

/** What a row of a list is about, leading to its page. */
export function RowLink({ href, children }: { href: string; children: ReactNode }) {
  return (
    <Link
      href={href}
      className="wrap-anywhere font-bold text-ink underline decoration-rule underline-offset-3 hover:decoration-ink"
    >
      {children}
    </Link>
  );
}
