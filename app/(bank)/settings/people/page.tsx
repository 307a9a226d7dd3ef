import type { Metadata } from 'next';
import Link from 'next/link';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { isLoopbackOnly } from '@/lib/server/env';
import { findPeople, type PersonRow } from '@/lib/server/queries/people';
import { AddPersonForm } from './_parts/add-person-form';

export const metadata: Metadata = { title: 'People' };

export default async function PeoplePage() {
  const steward = await requirePerson('steward');
  const people = await findPeople();
  return (
    <>
      <PageHead
        above={<Link href="/settings">Settings</Link>}
        title="People"
        below="Who may sign in, and what they may do."
      />
      {isLoopbackOnly() && <LoopbackNotice hasAccounts={people.length > 0} />}
      {people.length > 0 && <PeopleList people={people} ownId={steward.id} />}
      {people.length > 0 && <AddPersonForm />}
    </>
  );
}

function LoopbackNotice({ hasAccounts }: { hasAccounts: boolean }) {
  return (
    <Notice kind="note">
      <p>Only this computer can reach the bank as it runs now, so nobody signs in: whoever sits here is its steward.</p>
      <p className="mt-2">
        {hasAccounts
          ? 'The accounts below count when the bank is started for other devices. A steward who lost their password can be given a code here.'
          : 'To let a phone or another computer in, stop Hilum and start it with the variable HOST set to the address to listen on, for example '}
        {!hasAccounts && <code className="figures">HOST=0.0.0.0 npm run up</code>}
        {!hasAccounts && '. The first visit then makes a steward’s account, and that steward adds the others.'}
      </p>
    </Notice>
  );
}

function PeopleList({ people, ownId }: { people: PersonRow[]; ownId: string }) {
  return (
    <ul className="grid max-w-3xl gap-2">
      {people.map((person) => (
        <li key={person.id}>
          <Link
            href={`/settings/people/${person.id}`}
            className="sheet flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1 text-ink no-underline hover:bg-sunk"
          >
            <span>
              <strong>{person.name}</strong>
              {person.id === ownId && <span className="quiet"> (you)</span>}{' '}
              <span className="figures quiet">{person.signInName}</span>
            </span>
            <span>
              {person.role}
              {person.blocked && <strong className="text-madder"> · blocked</strong>}
              {person.codeUntil && <span className="quiet"> · code not used yet</span>}
              <span className="quiet"> · {devices(person.sessions)}</span>
            </span>
          </Link>
        </li>
      ))}
    </ul>
  );
}

function devices(sessions: number): string {
  if (sessions === 0) return 'not signed in';
  return sessions === 1 ? 'signed in on 1 device' : `signed in on ${sessions} devices`;
}
