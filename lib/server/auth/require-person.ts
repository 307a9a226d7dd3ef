import 'server-only';
import { headers } from 'next/headers';
import { forbidden, redirect } from 'next/navigation';
import { signInPath } from '@/lib/schemas/way-back';
import { ADDRESS_HEADER } from './asked-address';
import { currentPerson } from './current-person';
import { mayActAs, type Person, type Role } from './roles';

/** First line of every page: nobody goes to the sign-in page and back, the wrong role gets 'not allowed' (403). */
export async function requirePerson(needed: Role = 'visitor'): Promise<Person> {
  const person = await currentPerson();
  if (!person) redirect(signInPath((await headers()).get(ADDRESS_HEADER)));
  if (!mayActAs(person, needed)) forbidden();
  return person;
}
