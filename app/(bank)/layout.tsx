import type { ReactNode } from 'react';
import { Navigation } from '@/app/_components/navigation';
import { currentPerson } from '@/lib/server/auth/current-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { SINGLE_STEWARD } from '@/lib/server/auth/single-steward';
import { countOpenWork } from '@/lib/server/queries/open-work';

/** The frame round every screen of the bank: places to go at the left (below on a phone), the screen beside it. */
export default async function BankLayout({ children }: { children: ReactNode }) {
  const person = await currentPerson();
  const open = person ? await countOpenWork() : null;
  return (
    <div className="min-h-dvh md:grid md:grid-cols-[11.5rem_1fr] print:block!">
      <a href="#main" className="button sr-only focus:not-sr-only focus:absolute focus:left-2 focus:top-2 focus:z-20">
        To the page
      </a>
      <Navigation
        counts={open}
        person={person}
        hasAccount={person !== null && person.id !== SINGLE_STEWARD.id}
        mayCount={person !== null && mayActAs(person, 'volunteer')}
      />
      <main
        id="main"
        className="grid min-w-0 grid-cols-[minmax(0,1fr)] content-start gap-6 px-4 pt-5 pb-28 md:px-8 md:pt-6 md:pb-12 print:p-0"
      >
        {children}
      </main>
    </div>
  );
}
