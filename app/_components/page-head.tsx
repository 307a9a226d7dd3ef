import type { ReactNode } from 'react';

interface Props {
  /** A quiet line above the title: where this belongs. */
  above?: ReactNode;
  title: ReactNode;
  /** A quiet line below it. */
  below?: ReactNode;
  /** Actions: at most one main one. */
  children?: ReactNode;
}

export function PageHead({ above, title, below, children }: Props) {
  return (
    <div className="flex flex-wrap items-end justify-between gap-x-6 gap-y-3">
      <div className="min-w-0">
        {above && <p className="quiet text-sm">{above}</p>}
        <h1>{title}</h1>
        {below && <p className="quiet mt-1">{below}</p>}
      </div>
      {children && <div className="no-print flex flex-wrap gap-2">{children}</div>}
    </div>
  );
}
