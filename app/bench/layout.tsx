import type { ReactNode } from 'react';

/** A frame of its own: the bench has the whole screen of a phone, and works where the rest of Hilum does not. */
export default function BenchLayout({ children }: { children: ReactNode }) {
  // With the largest letters of a phone a button is two lines high rather than wider than the screen.
  return <main className="min-h-svh [&_.button]:py-1 [&_.button]:whitespace-normal">{children}</main>;
}
