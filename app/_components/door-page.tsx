import type { ReactNode } from 'react';

/** A screen before the bank's door: one sheet in the middle, without the places to go. */
export function DoorPage({ title, say, children }: { title: string; say?: ReactNode; children: ReactNode }) {
  return (
    <main className="mx-auto grid min-h-dvh w-full max-w-md content-start gap-5 px-4 py-8 sm:content-center">
      <p className="text-lg font-bold">Hilum</p>
      <h1>{title}</h1>
      {say && <div className="say grid gap-2">{say}</div>}
      <div className="sheet grid gap-5">{children}</div>
    </main>
  );
}
