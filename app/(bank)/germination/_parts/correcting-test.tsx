import Link from 'next/link';
import type { ReactNode } from 'react';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';

interface Props {
  test: { number: string; correctedByNumber: string | null };
  path: (number: string) => string;
  /** the form; not shown where a correction was written already */
  children: ReactNode;
}

/** The page on which a test is corrected by a further one, or the way to the one that took its place. */
export function CorrectingTest({ test, path, children }: Props) {
  return (
    <>
      <PageHead
        above={
          <Link href={path(test.number)} className="text-ink underline underline-offset-3">
            Back to {test.number}
          </Link>
        }
        title={
          <>
            Correct <span className="figures font-medium">{test.number}</span>
          </>
        }
        below="The test stays as it was written; what you save here is a new test that takes its place."
      />
      {test.correctedByNumber ? (
        <Notice kind="caution">
          {test.number} has been corrected already. If that is wrong too, correct{' '}
          <Link href={`${path(test.correctedByNumber)}/correct`}>{test.correctedByNumber}</Link>.
        </Notice>
      ) : (
        children
      )}
    </>
  );
}
