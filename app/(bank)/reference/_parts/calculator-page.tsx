import Link from 'next/link';
import type { ReactNode } from 'react';
import { PageHead } from '@/app/_components/page-head';
import { calculator } from './calculators';

/** The frame of a calculator: its title, what it answers, and below that its forms, answers and fold-outs. */
export function CalculatorPage({ slug, children }: { slug: string; children: ReactNode }) {
  const { title, asks } = calculator(slug);
  return (
    <>
      <PageHead
        above={
          // Padding of text in a line widens what can be touched and moves nothing.
          <Link href="/reference" className="py-1.5 text-ink-2 underline underline-offset-3">
            Reference
          </Link>
        }
        title={title}
        below={asks}
      />
      {children}
    </>
  );
}
