import Link from 'next/link';
import type { ReactNode } from 'react';

/** A page that cannot be shown: what happened, and where to go from here. */
export function DeadEnd({ title, children, action }: { title: string; children: ReactNode; action?: ReactNode }) {
  return (
    <div className="mx-auto grid w-full max-w-xl content-start gap-4 px-4 py-10 md:py-16">
      <h1>{title}</h1>
      <div className="say grid gap-2">{children}</div>
      <div className="flex flex-wrap gap-2">
        {action}
        <Link href="/" className="button">
          Back to Today
        </Link>
      </div>
    </div>
  );
}
