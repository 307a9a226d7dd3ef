import type { ReactNode } from 'react';

/** A frame of its own: the bench has the whole screen of a phone, and works where the rest of Hilum does not. */
export default function BenchLayout({ children }: { children: ReactNode }) {
  return <main className="min-h-svh">{children}</main>;
}
