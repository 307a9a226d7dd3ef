import type { ReactNode } from 'react';

/** One thing that a test says, under its name; stands in a list of definitions. */
export function Finding({ term, children }: { term: string; children: ReactNode }) {
  return (
    <div className="max-w-prose">
      <dt className="label">{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}
