import type { ReactNode } from 'react';

/** In place of an empty list: why it is empty, and what to do next. */
export function EmptyState({ children }: { children: ReactNode }) {
  return <div className="sheet grid justify-items-start gap-3">{children}</div>;
}
