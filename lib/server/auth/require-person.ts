import 'server-only';
import { forbidden, redirect } from 'next/navigation';
import { currentPerson } from './current-person';
import { mayActAs, type Person, type Role } from './roles';

/** First line of every page: nobody goes to the sign-in page, the wrong role gets 'not allowed' (403). */
export async function requirePerson(needed: Role = 'visitor'): Promise<Person> {
  const person = await currentPerson();
  if (!person) redirect('/sign-in');
  if (!mayActAs(person, needed)) forbidden();
  return person;
}
