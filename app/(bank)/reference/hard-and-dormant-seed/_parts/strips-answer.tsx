import type { ReactNode } from 'react';
import { IntervalStrips, type Strip } from '@/app/_components/interval-strips';

interface Props {
  /** names the answer for who does not see it */
  label: string;
  /** the finding in a sentence */
  says: ReactNode;
  strips: Strip[];
  children?: ReactNode;
}

/** An answer with its picture: two shares of seed beside each other. */
export function StripsAnswer({ label, says, strips, children }: Props) {
  return (
    <section className="sheet grid gap-4" aria-label={label}>
      <p className="say">{says}</p>
      <IntervalStrips strips={strips} standard={null} />
      {children}
    </section>
  );
}
