import Link from 'next/link';
import type { ReactNode } from 'react';
import { benchPath } from '@/app/_format/bench-path';
import { testPath } from '@/app/_format/links';

interface Props {
  /** of the tray */
  number: string;
  /** to the bench, to be counted now; otherwise to its test's page */
  atBench: boolean;
  className: string;
  children: ReactNode;
}

/** Where a tray in a list leads to: a person who may not count reads what was counted. */
export function TrayLink({ number, atBench, className, children }: Props) {
  return atBench ? (
    <a href={benchPath(number)} className={className}>
      {children}
    </a>
  ) : (
    <Link href={testPath(number)} prefetch={false} className={className}>
      {children}
    </Link>
  );
}
