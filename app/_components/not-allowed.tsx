import { currentPerson } from '@/lib/server/auth/current-person';
import { DeadEnd } from './dead-end';

/** 403: who is asking is known, but this is not for their role. */
export async function NotAllowed() {
  const person = await currentPerson();
  return (
    <DeadEnd title="Not for your role">
      <p>
        {person ? `You are signed in as ${person.name}, ${person.role}. ` : ''}
        This page is for another role. A steward can do it for you, or change your role.
      </p>
    </DeadEnd>
  );
}
